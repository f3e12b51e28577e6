import { plural } from './plural.ts';

export const exit = {
  damperIn: (leg: string) => `A backdraught damper stands in ${leg}.`,
  flapHolds: 'The flap of the cap keeps cold air out.',
  nothingHolds: (hood: string) =>
    `Nothing keeps cold air from coming back to ${hood}: the run has no backdraught damper, and its cap no flap.`,
  noRun: 'No run leads from a hood to an exit yet.',
  screenIn: (leg: string) => `A screen stands in ${leg}, where grease and lint close it.`,
  noScreen: 'No screen stands in the run or at its end.',
  and: ' and ',
  share: (hoods: string) => `${hoods} share a duct.`,
  ownDuct:
    'As drawn, each hood has its own duct; a dryer or a bath fan joined to it on site is not seen here.',
};

export const kitchen = {
  unsolved: (hood: string) => `What ${hood} moves is not solved.`,
  moves: (hood: string, most: string, least: string) =>
    `${hood} moves ${most} at most; the least is ${least}.`,
  noHood: 'No hood stands on the sheets yet.',
  noHoodWidth: 'The width of the hood is not entered.',
  enterIt: 'Enter it in the Kitchen tab.',
  noHeight: 'The height of the hood above the cooktop is not entered.',
  noCooktopWidth: 'The width of the cooktop is not entered.',
  fallsShort: (hood: string, by: string, advised: string) =>
    `${hood} falls ${by} short of the cooktop on each side; ${advised} is advised.`,
  reaches: (hood: string, by: string, advised: string) =>
    `${hood} reaches ${by} beyond the cooktop on each side; ${advised} is advised.`,
  short: (by: string) => `−${by}`,
  hangsLeast: (height: string, advised: string) =>
    `The hood hangs ${height} above the cooktop; at least ${advised} is advised, and the hood's instructions decide.`,
  hangsMost: (height: string, advised: string) =>
    `The hood hangs ${height} above the cooktop; at most ${advised} is advised, and the hood's instructions decide.`,
};

export const run = {
  noRun: 'No run leads from a hood to an exit yet.',
  times: (count: number) => `${count} times`,
  noTwoTurns: 'No two turns follow each other on the run.',
  diameters: (count: string) => `${count} diameters`,
  neverReaches: 'The fan never reaches 0.25 in. w.g., where the table is rated.',
  tableEnds: (fan: string, most: string) =>
    `The fan gives ${fan}: the table ends at ${most}, and the hood's instructions or a measured flow take its place.`,
  noLimit: (fan: string) => `The table sets no limit for ${fan}.`,
  notAllowed: (fan: string) => `The table does not allow ${fan} at any length.`,
  allows: (what: string, most: string, fan: string) => `${what}; the table allows ${most} for ${fan}.`,
  tooLong: (hood: string, length: string, advised: string) =>
    `The run of ${hood} is ${length} long, more than the ${advised} advised.`,
  within: (hood: string, length: string, advised: string) =>
    `The run of ${hood} is ${length} long, within the ${advised} advised.`,
  turnsMore: (hood: string, times: string, advised: string) =>
    `The run of ${hood} turns ${times}; more than ${advised} is advised.`,
  turnsAtMost: (hood: string, times: string, advised: string) =>
    `The run of ${hood} turns ${times}; at most ${advised} is advised.`,
  never: 'nowhere',
  once: 'once',
  straightWanted: (leg: string, straight: string, wanted: string) =>
    `${leg} has ${straight} of straight duct between its bends; ${wanted} are wanted.`,
  straightTooShort: (leg: string, straight: string, wanted: string) =>
    `${leg} has ${straight} of straight duct between its bends; ${wanted} are wanted, and published bend losses count on them.`,
  flexible: (flow: string, diameter: string) => `${flow} at 0.25 in. w.g. through ${diameter} flexible duct`,
  smooth: (flow: string, diameter: string) => `${flow} at 0.25 in. w.g. through ${diameter} smooth duct`,
  counts: (length: string, bends: number, counted: string) =>
    `${length} with ${bends} ${plural(bends, { one: 'turn', other: 'turns' })} counts as ${counted}`,
};

export const check = {
  noRun: 'No run leads from a hood to an exit yet.',
  range: ' to ',
  plain: (limit: string, unit: string) => `${limit} ${unit}`.trim(),
};

export const combined = {
  together: (speed: string, from: string, to: string, alone: string) =>
    `Together they take ${speed} from ${from} to ${to}; the best of them alone reaches ${alone}.`,
  label: (count: number) => `Make ${count} changes together`,
};
