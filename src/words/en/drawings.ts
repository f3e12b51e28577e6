/** Drawings that leave the desk: their layers, levels and titles. */
export const floorLevel = 'floor';
export const ceilingLevel = 'ceiling';

export const layer = {
  exits: 'Exit faces',
  blocks: 'Blocks of the room',
  hatch: 'Hatching',
  room: 'Floor, ceiling and cooktop',
  fill: 'Fills',
  hood: 'Hood',
  cap: 'Cap',
  duct: 'Duct walls',
  fittings: 'Bends and transitions',
  parts: 'Parts in line',
  centre: 'Centre lines',
  flow: 'Flow arrows',
  names: 'Names',
  labels: 'Sizes and values',
  dimensions: 'Dimensions',
  notes: 'Notes',
};

export const heading = {
  sheet: (name: string, looking: string, scale: number) => `${name}, ${looking}, 1 : ${scale}`,
  isometric: (scale: number) => `Isometric, each axis at 0.82 of 1 : ${scale}`,
  space: 'Run in space',
};

/** Under every drawing that leaves the desk. */
export const footer = {
  title: (job: string, scheme: string) => `${job}: ${scheme}`,
  measure: (scale: number) => `1 : ${scale} when printed at full size. Lengths are from node to node.`,
  caution:
    'For planning. Local codes, the hood’s installation instructions and a licensed practitioner decide.',
};

export const untitled = 'Kitchen';
