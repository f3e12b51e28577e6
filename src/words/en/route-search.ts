import { strong } from '../strong.ts';

export const panel = {
  heading: 'Find a route',
  search: 'Search',
  hood: 'From the hood',
  calledOff: (what: string) => `Called off: ${what}`,
  examined: (steps: string) => `${steps} steps tried`,
  searching: 'Searching',
  changed: 'The room has changed since this search. Search again before relying on it.',
  caution:
    'Each route was drawn, solved and measured against the blocks. What is not drawn is not known: look for wiring, pipes and framing before anything is cut, and keep the clearances that the hood’s instructions and the local code ask for. Nothing that carries the house is cut without whoever answers for it.',
  noExit: 'Choose at least one exit.',
  hint: 'Looks for the ways of least loss that keep clear of every block, turn square with the chosen bend, and never dip below the collar. Chases may be used.',
  start: {
    heading: 'A search goes from a hood to an exit',
    hood: `Pick the ${strong('hood')} tool (H) and click on the floor sheet where its middle is.`,
    exit: `Pick the ${strong('exit')} tool (X) and draw the outside wall or the roof that the duct may go through.`,
    blocks: 'Draw what is in the way with the block tool: joists, beams, cabinets.',
    placeHood: 'Place a hood',
    drawExit: 'Draw an exit face',
  },
  found: (routes: string) => `${routes} found.`,
  saidCalledOff: 'The search was called off.',
};

export const form = {
  exits: 'Leave by',
  duct: 'Duct',
  collarPoints: 'Collar points',
  bend: 'Bend',
  ratio: 'Radius over diameter',
  material: 'Material',
  clearance: 'Clearance',
  clearanceRange: 'A clearance',
  grid: 'Turns every',
  where: 'Where to look',
  wholeSpace: 'Whole space',
  oneHeight: 'One height',
  height: 'Height of the centre line',
  heightRange: 'A height',
};

export const results = {
  label: 'Routes found',
  route: (speed: string, length: string, turns: string) => `${speed}: ${length} long, ${turns}`,
  against: (change: string) => `${change} against what is drawn`,
  isScheme: 'Is a scheme now',
  makeScheme: 'Make it a scheme',
};

export const ways = {
  /** As they stand within a sentence. */
  within: {
    up: 'up',
    down: 'down',
    north: 'north',
    south: 'south',
    east: 'east',
    west: 'west',
  },
  up: 'Up',
  north: 'North',
  east: 'East',
  south: 'South',
  west: 'West',
};
