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
  block: 'chase cabinet joist beam wall obstacle window door intake lot line box',
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
  window: 'Window or door',
  intake: 'Air intake',
  lotLine: 'Lot line',
  roof: 'Roof',
  outsideWall: 'Outside wall',
};

export const box = {
  high: (sizes: string) => `${sizes} high`,
  deep: (sizes: string) => `${sizes} deep`,
  typeSizes: 'Drag or type a size across and a size up.',
  drawn: (what: string) => `${what} drawn.`,
  firstCorner: (what: string) => `${what}: first corner`,
  tooSmall: 'A size is more than nothing.',
  tooLarge: 'A size of more than a kilometre is no kitchen.',
};

export const repeat = {
  more: (count: string, spacing: string) => `${count} more at ${spacing} o.c.`,
  howMany: (most: number) => `Type how many more, 1 to ${most}.`,
  done: (count: number) => `${count} more drawn.`,
};

export const cap = {
  hasCap: 'has a cap',
  here: 'cap here',
  openEnd: 'A cap goes on the open end of a run.',
  saidHasCap: 'This end has a cap.',
};

export const dimension = {
  clickLine: 'click where its line stands',
  added: 'Dimension added; click the next point of a chain, or Escape.',
  fromNode: 'dimension from this node',
  twoPlaces: 'A dimension needs two places.',
};

export const draw = {
  up: 'up',
  down: 'down',
  at: 'at',
  drawn: (length: string) => `Leg of ${length} drawn.`,
  changedSince: 'Something else has changed since; undo takes that back.',
  aimLast: 'Aim the last leg, then end it with a cap.',
  joins: 'joins',
  joinsWithBranch: 'joins with a branch',
  endsWithCap: 'ends with a cap',
  howFarUp: 'Type how far up.',
  howFarDown: 'Type how far down.',
  pointTheWay: 'Point the way, or type an angle.',
  moveOn: 'Move on, or type a length.',
  fromHere: 'draw from here',
  branchFromHere: 'branch from here',
  startRun: 'start a run',
  elsewhere: 'A leg must end somewhere else.',
  joinedAlready: 'There is a leg between these two already.',
  turn: (angle: string) => `turn ${angle}`,
  legTooShort: 'A leg must be longer than nothing.',
  legTooLong: 'A leg of more than a kilometre is no kitchen duct.',
};

export const hood = {
  here: 'hood, collar up',
};

export const insert = {
  onLeg: 'A node goes on a leg.',
};

export const join = {
  fromHere: 'join from here',
  openEnd: 'Click on the open end of a run, then on what it joins.',
  second: 'Click on the node that this end joins.',
  refused: 'These two cannot be joined.',
};

export const keys = {
  menu: 'Menu of what is selected',
  pan: 'Pan with the pointer',
  free: 'Suspend snapping',
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  cancel: 'Cancel',
  delete: 'Delete and heal the run',
  edit: 'Type the length, the words or the name',
  move: 'Move by a typed distance',
  radius: 'Type the radius of a bend',
  repeat: 'Repeat a block at a spacing',
  join: 'Join the two ends selected',
  split: 'Split the run at the turn selected',
  cycle: 'Select what else is under the pointer',
  cycleBack: 'Select what was under the pointer before',
  selectAll: 'Select everything',
  nudge: {
    left: 'Nudge left',
    right: 'Nudge right',
    up: 'Nudge up',
    down: 'Nudge down',
  },
  nudgeFar: {
    left: 'Nudge left ten steps',
    right: 'Nudge right ten steps',
    up: 'Nudge up ten steps',
    down: 'Nudge down ten steps',
  },
  leg: {
    commit: 'Draw the typed leg, or end the run',
    field: 'Type the length or the angle',
    back: 'Erase, or take back the last leg',
    up: 'Go up by a typed height',
    down: 'Go down by a typed height',
    cap: 'End the run with a cap',
  },
  type: {
    commit: 'Take what is typed',
    cancel: 'Leave it',
    erase: 'Erase',
    next: 'Type the next number',
    back: 'Go back to the number before',
  },
  kind: {
    next: 'Take the next kind',
    back: 'Take the kind before',
    take: 'Take a kind by its number',
  },
  aim: {
    right: 'Aim right',
    left: 'Aim left',
    up: 'Aim up the sheet',
    down: 'Aim down the sheet',
  },
};

export const measure = {
  across: (across: string, up: string, angle: string) => `${across} across  ${up} up  ${angle}`,
  inSpace: (full: string) => `${full} in space`,
};

export const note = {
  pin: 'pin a note',
  text: 'Words of the note',
  tooLong: 'A note has room for 10,000 characters.',
  empty: 'A note needs words; Delete takes the note away.',
};

export const part = {
  unnamed: 'part in line',
  onLeg: 'A part goes on a leg.',
  placed: (part: string) => `${part} placed; drag it along, or see its numbers beside the sheets.`,
  chosen: (part: string) => `Part: ${part}.`,
};

export const bending = {
  noStraight: 'largest that fits: no straight left',
  noStraightOn: (leg: string) => `largest that fits: no straight left on ${leg}`,
  radius: (radius: string) => `r ${radius}`,
  ratio: (radiusRatio: string) => `${radiusRatio} D`,
  loses: (loss: string) => `loses ${loss}`,
  tightest: 'half a diameter is the tightest: the inside would fold over',
  largest: 'ten diameters is the largest',
  ratioRefused: 'Type how many diameters: 1.5D.',
  radiusRefused: 'A radius is more than nothing.',
};

/** What a block or an exit face is called within a sentence where it has no name. */
export const kinds = {
  chase: 'chase',
  obstacle: 'obstacle',
  cabinet: 'cabinet',
  joist: 'joist',
  beam: 'beam',
  wall: 'wall',
  window: 'window',
  intake: 'air intake',
  'lot line': 'lot line',
  roof: 'roof',
};

export const select = {
  selected: (things: string) => `${things} selected.`,
  names: {
    node: 'node',
    hood: 'hood',
    cap: 'cap',
    fan: 'fan',
    turn: 'turn',
    junction: 'junction',
    duct: 'duct',
    riser: 'riser',
    block: 'block',
    note: 'note',
    dimension: 'dimension',
    openEnd: 'open end',
    exit: 'exit face',
  },
  oneOfSeveral: (what: string, place: number, count: number) => `${what}, ${place} of ${count} here`,
  choseOf: (what: string, place: number, count: number) =>
    `${what}, ${place} of ${count} here; click again or press Tab for the next.`,
  noRadius: 'A radius belongs to one bend, seen on this sheet; a mitre has none.',
  selectTwoEnds: 'Select two ends to join them.',
  selectOneTurn: 'Select one turn or junction to split the run there.',
  nothingRunsOn: 'Nothing runs on from here.',
  split: 'Split: drag the end away.',
};

export const editing = {
  length: (leg: string) => `Length of ${leg}`,
  lengthSet: (length: string) => `Length ${length}.`,
  measuresOnly: 'This dimension measures; only one along a whole leg changes it.',
  blockName: 'Name of the block',
  exitName: 'Name of the exit face',
  gone: 'This is no longer on the drawing.',
};

export const moving = {
  move: (how: string) => `move ${how}`,
  howFar: 'type how far; an arrow or Tab says which way',
  aim: 'Type how far and aim with the pointer or an arrow key.',
  moved: (what: string, by: string) => `Moved ${what} by ${by}.`,
};

export const split = {
  here: 'split here',
  openLeg: 'Click on a leg, or on a turn or junction where legs meet.',
  done: 'Split: the new end is selected; drag or nudge it away.',
};

export const underlay = {
  unlockFirst: (name: string) => `${name} is locked. Unlock it in the list of underlays to move it.`,
  locked: (name: string) => `${name} is locked`,
  move: (name: string) => `move ${name}`,
  none: 'no underlay here',
  moved: (name: string, by: string) => `Moved ${name} by ${by}.`,
  firstPoint: (name: string) => `first point on ${name}`,
  placeFirst: 'There is no underlay here. Place one from the File menu.',
  secondPoint: 'Now click a second point whose distance from the first you know.',
  tooClose: 'The two points are too close for a scale. Choose points far apart.',
  typeDistance: 'type the real distance',
  scaled: (distance: string) => `The two points are now ${distance} apart.`,
  typeThenEnter: 'Type the real distance between the two points, then press Enter.',
  distance: 'Real distance between the two points',
  distanceExample: "Type the real distance, such as 10' or 3.2 m.",
  distanceRefused: 'The distance must be more than nothing.',
  distanceTooLong: 'A kilometre or more is no distance in a kitchen.',
};
