/** An airflow that a person puts in the place of what the rules ask for. */
export const own = {
  name: 'Set in this job',
  source: 'set in this job',
  formula: 'Q_own, in the place of the rules',
};

export const form = {
  open: 'Overrule…',
  heading: 'Another airflow in this job',
  flow: 'Airflow to go by',
  flowRefused: 'The airflow to go by is above 0.',
  reason: 'Reason, which is printed',
  reasonHint: 'The hood’s instructions ask for it, a code of the place, what was agreed…',
  reasonNeeded: 'Give a reason: whoever checks this will ask for one.',
  set: 'Go by this',
  takeBack: 'Go by the rules again',
  cancel: 'Cancel',
  because: (reason: string) => `Reason: ${reason}`,
  below: (flow: string, rule: string, source: string) =>
    `That is less than the ${flow} of “${rule}” (${source}). The local code decides whether it may be.`,
};

export const edits = {
  set: 'overrule the airflow needed',
  takeBack: 'go by the rules for air',
};

export const rules = {
  guide: 'Home Ventilating Institute recommendation as quoted by a home-repair monthly, May 2020',
  codeMinimum: 'Code minimum, intermittent kitchen exhaust',
  codeMinimumWhy: 'A kitchen exhaust that runs on demand moves at least 100 cfm.',
  codeMinimumSource: 'IRC Table M1505.4.4 (M1507.4 in earlier editions)',
  width: 'Cooktop width, recommended',
  leastWidth: 'Cooktop width, least',
  leastWidthSource: 'Home Ventilating Institute range hood guide',
  heat: 'Burner heat input',
  heatSource: 'Rule of thumb of the trade for gas, as printed in a home-building magazine',
  title: 'Airflow that the cooktop asks for',
  governed: (rule: string, why: string) => `Governed by: ${rule}. ${why}`,
  against: (perFoot: number, feet: string) =>
    `${perFoot} cfm a foot of width for a cooktop against a wall, ${feet} ft.`,
  open: (perFoot: number, feet: string) =>
    `${perFoot} cfm a foot of width for a cooktop with open sides, ${feet} ft.`,
  heatWhy: (input: string) => `1 cfm for every 100 Btu/h of burners, ${input} Btu/h.`,
  formula: (flows: string) => `the largest of ${flows}`,
};
