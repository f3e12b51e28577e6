export const titles = {
  select: 'Select and move',
  pan: 'Pan',
  hood: 'Place hood',
  draw: 'Draw duct',
  cap: 'Place cap',
  insert: 'Insert a node',
  part: 'Place a part in line',
  split: 'Split a run',
  join: 'Join two ends',
  block: 'Draw a block',
  exit: 'Draw an exit face',
  dimension: 'Dimension',
  note: 'Pin a note',
  measure: 'Measure',
};

export const also = {
  select: 'pointer arrow drag',
  pan: 'hand scroll',
  hood: 'fan add',
  draw: 'route leg pipe riser',
  cap: 'exit wall roof outside',
  insert: 'turn split point',
  part: 'damper silencer screen filter fitting',
  split: 'cut part break disconnect',
  join: 'connect weld close gap',
  block: 'chase cabinet joist beam wall obstacle box',
  exit: 'outside wall roof',
  dimension: 'chain length figure',
  note: 'text words label comment',
  measure: 'distance ruler tape',
};

export const boxes = {
  chase: 'Chase',
  obstacle: 'Obstacle',
  cabinet: 'Cabinet',
  joist: 'Joist',
  beam: 'Beam',
  wall: 'Wall',
  roof: 'Roof',
};
