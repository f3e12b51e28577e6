export const extend = {
  noRow: 'Choose a row to draw from.',
  noDuct: 'No duct arrives here: choose a direction.',
  noLength: 'A leg needs a length.',
  drew: (length: string, way: string) => `Drew ${length} ${way}.`,
  draw: 'Draw a leg',
  branchFrom: 'Branch from',
  goOnFrom: 'Go on from',
  direction: 'Direction',
  length: 'Length',
  drawLeg: 'Draw leg',
  hoodPlaced: 'Hood placed.',
  placeTheHood: 'Place the hood',
  east: 'East',
  north: 'North',
  collarHeight: 'Collar height',
  placeHood: 'Place hood',
};

export const grid = {
  none: (column: string) => `${column}: none`,
  workedOut: 'This is worked out and cannot be typed.',
  heading: 'Route table',
  close: 'Close the route table',
  empty: 'Nothing is drawn yet. Place the hood here or on a sheet, then draw from it.',
  label: 'Route, in the direction of the air',
};

export const cells = {
  columns: {
    place: 'Place',
    way: 'Way, turn',
    length: 'Length',
    east: 'East',
    north: 'North',
    height: 'Height',
    size: 'Size, r/D',
    made: 'Material, fitting',
    flow: 'Flow',
    velocity: 'Velocity',
    loss: 'Loss',
  },
  turn: (angle: string) => `${angle} turn`,
  bend: 'Bend',
  noCap: 'No cap',
  cap: 'Cap',
  size: 'Size',
  material: 'Material',
};

export const ways = {
  up: 'Up',
  down: 'Down',
  east: 'East',
  north: 'North',
  west: 'West',
  south: 'South',
  northeast: 'Northeast',
  northwest: 'Northwest',
  southwest: 'Southwest',
  southeast: 'Southeast',
  on: 'Straight on',
};
