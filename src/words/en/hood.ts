export const curve = {
  pointsTaken: (points: number) => `It takes ${points} points.`,
  flow: 'Flow',
  cell: (column: string, point: number) => `${column}, point ${point}`,
  flowIn: (unit: string) => `Flow, ${unit}`,
  takeOut: 'Take out',
  takeOutPoint: (point: number) => `Take out point ${point}`,
  addPoint: 'Add a point',
  pasteHint: 'Two columns can be pasted from a spreadsheet into any cell.',
  flowMissing: 'The flow at this pressure is missing.',
  pressureMissing: 'The pressure at this flow is missing.',
  sameFlow: 'Two points have this flow: a curve has one pressure at each.',
  twoPoints: 'A curve needs two points or more.',
  noPressure: 'A fan gives pressure somewhere: one of the points is above 0.',
};

export const fanData = {
  flowRefused: 'A fan moves more than 0.',
  pressureRefused: 'A fan gives more than 0.',
  staticPressure: 'Static pressure',
  totalPressure: 'Total pressure',
  freeFlow: 'Flow in free air',
  shutOff: 'Pressure at shut-off',
  advertised: 'Advertised flow',
  assumedShutOff: 'Shut-off pressure, assumed',
  scaledFrom: 'Scaled from',
  speedRatio: 'Speed of rotation, times',
  speedRatioRange: 'A speed ratio',
};

export const editor = {
  missing: 'The hood of this node is not in the job.',
  name: 'Name of the hood',
  width: 'Width',
  widthRange: 'A hood',
  collar: 'Collar',
  fan: 'Fan',
  speed: 'Speed',
  addSpeed: 'Add a speed',
};

export const speed = {
  kinds: {
    curve: 'Full curve',
    curveMeans: 'Pressure at several flows, from the data sheet. The best there is.',
    points: 'Two certified points',
    pointsMean: 'Two flows, each at a pressure, from a certified label.',
    ends: 'Free air and shut-off',
    endsMean: 'The flow against no pressure, and the pressure at no flow.',
    single: 'One number',
    singleMeans: 'An advertised flow; the pressure behind it is assumed.',
    law: 'Fan law from another speed',
    lawMeans: 'The same fan turning faster or slower than at a speed that is known.',
  },
  staticMeans:
    'What a standard airflow test reports: total pressure less the velocity pressure in the collar, which is given back before the run is charged.',
  totalMeans: 'Velocity pressure is already in the figures: nothing is added to them.',
  name: 'Name of this speed',
  nameTaken: 'Another speed has this name.',
  takeOut: (name: string) => `Take out speed ${name}`,
  known: 'How the fan is known',
  assumed: 'Assumed.',
  basis: 'Pressures are',
  rated: 'Rated flow, by the label',
  ratedRefused: 'A rated flow is more than 0.',
  density: 'Rated in air of',
  densityRange: 'Air',
  sound: 'Rated sound',
  soundHint: 'dBA or sones, if known.',
};

export const sound = {
  sonesRange: 'Loudness in sones',
  decibelRange: 'Rated sound, in dBA,',
  decibels: (level: string) => `${level} dBA`,
  alsoSones: (sones: string) => `About ${sones} sones.`,
};
