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
