import { strong } from '../strong.ts';

export const surroundings = {
  propertyLine: 'To the property line',
  opening: 'To a window or door',
  intake: 'To an air intake',
  aboveIntake: 'Above that intake',
  around: (cap: string) => `Around ${cap}, measured on site`,
};

export const results = {
  lead: (unmet: number, open: number, met: number) =>
    `${strong(`${unmet} not met, ${open} open, ${met} met.`)} Model codes and practice, not your local code: the local authority and the hood's instructions decide.`,
  leadWithOff: (unmet: number, open: number, met: number, off: number) =>
    `${strong(`${unmet} not met, ${open} open, ${met} met, ${off} switched off.`)} Model codes and practice, not your local code: the local authority and the hood's instructions decide.`,
  limit: (limit: string) => `Limit: ${limit}`,
  ownLimit: (limit: string) => `Limit: ${limit} (set in this job)`,
  groups: {
    fails: 'Does not meet',
    open: 'Cannot be told yet',
    meets: 'Meets',
    notApplicable: 'Does not apply',
  },
  rules: 'Rules and limits…',
  found: (measured: string) => `Found: ${measured}`,
  source: (source: string, kind: string, edition: string) => `${source} (${kind}). Edition: ${edition}.`,
};

export const rules = {
  limitOf: (rule: string) => `Limit of ${rule}`,
  leastOf: (rule: string) => `Least of ${rule}`,
  mostOf: (rule: string) => `Most of ${rule}`,
  heading: 'Rules and limits of this job',
  hint: 'Set them to what your local authority has adopted. A limit that differs from its source is shown as set in this job wherever it is used.',
  list: 'Rules',
  resetAll: 'Reset all',
  ownLimit: (printed: string) => `Set in this job; the source says ${printed}.`,
  takeBack: 'Take back',
  leastBelowMost: 'The least lies below the most.',
  below0: 'A limit is not below 0.',
  turnsRange: 'The number of turns',
  diametersRange: 'A number of diameters',
};
