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
