import { counted } from './plural.ts';

export const catching = {
  wouldWin: (changes: string, flow: string, speed: string, cost: string) =>
    `would win with ${changes}: ${flow} at ${speed}, parts ${cost}.`,
  wouldNotWin: (changes: string, flow: string, speed: string, cost: string) =>
    `would not win even with ${changes}: ${flow} at ${speed}, parts ${cost}.`,
  trying: (scheme: string) => `${scheme}: trying changes…`,
  nothing: ': no change on the list brings it nearer.',
  doIt: (scheme: string) => `Apply it to ${scheme}`,
};

export const sheet = {
  below: (need: string) => `below ${need}`,
  beyondLimit: 'beyond the limit',
  label: 'Comparison',
  at: (speed: string, flow: string) => `at ${speed}; the cooktop asks for ${flow}.`,
  recommended: 'recommended',
  best: 'best:',
  drawn: 'Drawn',
  oneScale: 'every scheme at the same scale',
  pressure: 'Where the pressure goes',
  findings: 'Findings',
  more: (findings: number) => `and ${findings} more on the desk`,
  none: 'none',
  winner: (scheme: string) => `Recommended: ${scheme}`,
  noWinner: 'No recommendation',
  another: 'What would make another win',
  cutShort: 'Findings are cut short here; the desk has them in full.',
  foot: (prices: string) =>
    `✓ marks the best of a row where the schemes differ. ${prices} A planning estimate: local code, the hood's instructions and a licensed installer decide.`,
};

export const view = {
  heading: 'Compare schemes',
  schemes: 'Schemes to compare',
  print: 'Print',
  back: 'Back to the desk',
  chooseTwo: 'Choose at least two schemes.',
};

export const figures = {
  noAir: 'No air gets out at this speed.',
};

export const recommend = {
  more: (flow: string, speed: string, by: string, other: string) =>
    `It delivers ${flow} at ${speed}, ${by} more than ${other}.`,
  less: (flow: string, speed: string, by: string, other: string) =>
    `It delivers ${flow} at ${speed}, ${by} less than ${other}.`,
  quieter: (decibels: string) => `At the cook it is ${decibels} dB quieter, by estimate.`,
  louder: (decibels: string) => `At the cook it is ${decibels} dB louder, by estimate.`,
  cheaper: (cost: string) => `Its parts cost ${cost} less, by the price list.`,
  dearer: (cost: string) => `Its parts cost ${cost} more, by the price list.`,
  moreDangers: (dangers: number) => `Its findings name ${dangers} more of this kind.`,
  noneDelivers: 'None of them delivers air yet: finish a route first.',
  alike: (one: string, other: string) =>
    `${one} and ${other} come out alike; choose by what is easier to build.`,
  deliversNone: (scheme: string, reason: string) => `${scheme} delivers no air: ${reason}`,
  errors: (errors: number, other: string, others: number) =>
    `It has ${counted(errors, { one: 'error', other: 'errors' })} where ${other} has ${others}.`,
  dangers: (dangers: number, other: string, others: number) =>
    `It has ${counted(dangers, { one: 'danger', other: 'dangers' })} where ${other} has ${others}.`,
  preferred: (goal: string) => `Preferred for: ${goal}; what is in error or dangerous counts before that.`,
  doesNotReach: (need: string, speed: string) =>
    `It does not reach the ${need} that the cooktop asks for at ${speed}.`,
  danger: (message: string, remedy: string) => `Danger, to be put right first: ${message} ${remedy}`,
};

export const rows = {
  airAt: (speed: string) => `Air at ${speed}`,
  fanPressure: 'Fan pressure',
  sound: 'Sound at the cook',
  decibels: (level: string) => `${level} dBA`,
  uncertainty: (decibels: string) => `± ${decibels} dB`,
  house: 'House pressure',
  limit: (pressure: string) => `limit −${pressure}`,
  fastest: 'Fastest air',
  length: 'Length',
  turns: 'Turns',
  parts: 'Parts',
  errors: 'Dangers, errors',
  warnings: 'Warnings',
  unpriced: (parts: number) => `${parts} without a price`,
  duct: (length: string) => `${length} of duct`,
};

export const winning = {
  label: (changes: number) => `Make ${changes} changes together`,
};

/** Between the names of speeds, where schemes are compared at several. */
export const or = ' or ';
