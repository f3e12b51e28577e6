import { strong } from '../strong.ts';

export const list = {
  longRun: (turns: number, tried: number) =>
    `A long run: of its ${turns} turns the ${tried} whose bends cost most were tried.`,
  longRunAlone: (turns: number, tried: number) =>
    `A long run: of its ${turns} turns the ${tried} whose bends cost most were tried, one at a time.`,
  computing: 'Computing…',
  none: 'Nothing on the list lets noticeably more air out. This route is about as good as its fan allows.',
  topSpeed: 'the top speed',
  lead: (speed: string) => `Air gained at ${speed}. Point at one to see it on the sheets; press to do it.`,
  oneAtATime: 'One change at a time',
  remedies: 'For the house and the duct',
};

export const start = {
  finish: 'Finish the route',
  draw: 'Draw a route',
  hood: `Pick the ${strong('hood')} tool (H) and click on the floor sheet.`,
  duct: `Pick the ${strong('duct')} tool (D), click on the hood and then at each turn. Type a number for an exact length.`,
  section: `Work on the ${strong('section')} sheet for what rises.`,
  cap: `Pick the ${strong('cap')} tool (C) and click on the end that is outdoors.`,
  done: '(done)',
  reached: 'As soon as the duct reaches a cap, the air at each speed and what would improve it stand here.',
};

export const card = {
  fits: 'fits the room as drawn',
  calls: (change: string) => `then also: ${change}`,
};

export const combinations = {
  best: 'Best together',
  trying: 'Trying pairs and triples of changes…',
  others: 'Other combinations',
};

export const goal = {
  label: 'Goal',
};

export const effects = {
  sound: (change: string) => `${change} dB at the cook`,
  house: (change: string) => `house ${change}`,
  parts: (cost: string) => `parts ${cost}`,
  nothingToOpen: 'nothing to open up',
  toOpen: (length: string) => `${length} to open up`,
  doesNotFit: 'It does not fit its room.',
  houseDanger: (below: string) =>
    `The house then stands ${below} below outdoors, beyond its limit: bring in make-up air, and have every flue tested for spillage.`,
  settles: {
    house: 'house within its limit',
    condensation: 'no condensation',
    flexible: 'no flexible duct',
    collar: 'full size from the collar',
    velocity: 'velocity within the band',
  },
};

export const reasons = {
  /** "an adjustable bend", "a smooth bend". */
  withArticle: (what: string) => `${/^[aeiou8]/i.test(what) ? 'an' : 'a'} ${what}`,
  loss: (loss: string, share: string) => `${loss}, ${share} % of the pressure`,
};

export const cap = {
  fullOpening: (cap: string) => `${cap} with its full opening`,
  title: (cap: string) => `${cap} instead of this cap`,
  label: (cap: string) => `Fit ${cap}`,
  reason: (place: string, loss: string, cap: string, then: string) =>
    `${place} costs ${loss}; ${cap} costs ${then}`,
};

export const diameter = {
  title: (size: string) => `${size} for the whole run`,
  label: (size: string) => `Make the run ${size}`,
  reason: (velocity: string, loss: string, size: string, thenVelocity: string, thenLoss: string) =>
    `The air moves at up to ${velocity} and the run costs ${loss}; at ${size} the same air moves at up to ${thenVelocity} and costs ${thenLoss}`,
  carryOn: (size: string) => `Carry ${size} on to the end`,
  carryOnReason: (node: string, small: string, loss: string, size: string, then: string) =>
    `From ${node} on, the ${small} duct with its fittings costs ${loss}; at ${size} the same air costs ${then}`,
};

export const straight = {
  title: (start: string, end: string) => `Straight from ${start} to ${end}`,
  label: (start: string, end: string) => `Run straight from ${start} to ${end}`,
  reason: (place: string, loss: string, start: string, end: string, saved: string) =>
    `${place} costs ${loss}; one straight leg from ${start} to ${end} does without it and saves ${saved} of duct`,
};

export const bend = {
  ofRadius: (bend: string, ratio: string) => `${bend} of r/D ${ratio}`,
  title: (bend: string, place: string) => `${bend} at ${place}`,
  label: (place: string) => `Make ${place} gentler`,
  reason: (where: string, loss: string, bend: string, then: string) =>
    `${where}, costs ${loss}; ${bend} costs ${then}`,
  everyTitle: (turns: number) => `The gentlest bend that fits at ${turns} turns`,
  everyLabel: 'Make every turn gentler',
  everyReason: (turns: number, loss: string, then: string) =>
    `The bends at ${turns} turns cost ${loss}; the gentlest that fit cost ${then}`,
};

export const moved = {
  title: (place: string, far: string) => `Move ${place} by ${far} and make it a smooth bend of r/D 1.5`,
  label: (place: string) => `Move ${place} for a gentler bend`,
  reason: (turn: string, loss: string, far: string, then: string) =>
    `${turn}, costs ${loss} and its leg is too short for a gentler one; ${far} more gives room for r/D 1.5, which costs ${then}`,
};

export const remedies = {
  coldLegs: (legs: number) => `${legs} cold legs`,
  wrapTitle: (legs: string, thickness: string) => `Wrap ${legs} with ${thickness} of insulation`,
  wrapLabel: (legs: string) => `Wrap ${legs}`,
  wrapReason: (leg: string, wall: string, dewPoint: string, thickness: string) =>
    `The inside of ${leg} falls to ${wall}, below the kitchen air's dew point of ${dewPoint}; ${thickness} keeps every leg above it`,
  fan: (flow: string) => `a fan for ${flow}`,
  opening: (area: string) => `an opening of ${area} free area`,
  makeUpTitle: (what: string) => `Make-up air: ${what}`,
  makeUpLabel: 'Bring in make-up air',
  makeUpReason: (below: string, limit: string, what: string, flow: string) =>
    `The house falls ${below} below outdoors, where its limit is ${limit}; ${what} lets in the ${flow} that hold it there`,
};

export const duct = {
  legs: (legs: number) => `${legs} legs of the run`,
  smoothTitle: (metal: string, present: string) => `${metal} instead of ${present}`,
  smoothLabel: (metal: string) => `Use ${metal}`,
  corrugated: (where: string) => `${where}, of corrugated duct,`,
  asMetal: (metal: string) => `as ${metal} duct it loses`,
  stretchTitle: 'Pull the flexible duct to its full length',
  stretchLabel: 'Pull the flexible duct tight',
  slack: (leg: string, slack: string) => `${leg}, left ${slack} % slack,`,
  pulledTight: 'pulled tight it loses',
  loses: (subject: string, rate: string, then: string, thenRate: string) =>
    `${subject} loses ${rate}; ${then} ${thenRate}`,
};

export const two45s = {
  title: (half: string, place: string) => `Two ${half} bends instead of one at ${place}`,
  label: (place: string) => `Share ${place} between two bends`,
  reason: (turn: string, loss: string, half: string, kind: string, apart: string, then: string) =>
    `${turn}, costs ${loss}; two of ${half} of the same make (${kind}), ${apart} apart across the corner, cost ${then}`,
};
