/** Drawings that leave the desk: their layers, levels and titles. */
export const floorLevel = 'floor';
export const ceilingLevel = 'ceiling';

export const layer = {
  exits: 'Exit faces',
  blocks: 'Blocks of the room',
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
