import { strong } from '../strong.ts';

export const air = {
  imperial: 'Feet, inches, cfm, in w.g.',
  metric: 'Millimetres, m³/h, Pa',
  label: 'Air and units',
  elevation: 'Above the sea',
  elevationRange: 'The height above the sea',
  humidity: 'Relative humidity',
  inDuct: 'Air in the duct',
  inDuctRange: 'Air in a kitchen duct',
  outdoors: 'Outdoors',
  outdoorsRange: 'Outdoor air',
  units: 'Units of the job',
  density: (density: string, standard: string) =>
    `Density ${density}; fans are rated in standard air of ${standard}.`,
};

export const appliances = {
  spillage: `Tick what burns in this house, for ${strong('back-draughting')} to be watched for. What is not ticked is not.`,
  label: 'Burning appliances that take air from the house',
  limit: (what: string, limit: string) => `${what} Limit ${limit}.`,
  unknown: (name: string) => `“${name}” is not in the catalogue, so no limit is known for it.`,
  takeOut: (name: string) => `Take out ${name}`,
};

export const cooktop = {
  fuels: {
    gas: 'Gas',
    electric: 'Electric',
    induction: 'Induction',
    solid: 'Solid fuel',
  },
  placements: {
    wall: 'Against a wall',
    island: 'Island or peninsula',
    outdoor: 'Outdoors',
  },
  label: 'Cooktop',
  fuel: 'Fuel',
  placement: 'Placement',
  width: 'Width',
  widthRange: 'A cooktop',
  heatInput: 'Burners in all',
  heatInputRange: 'A home cooktop',
  hoodAbove: 'Hood above it',
  hoodAboveRange: 'The height from cooktop to hood',
  ceiling: 'Ceiling height',
  ceilingRange: 'A ceiling height',
  solidFuel:
    'Solid fuel throws sparks and soot: codes ask for an exhaust of its own, and none of it is computed here (common practice). Ask the local authority.',
  tooLow: (what: string, limit: string, source: string, kind: string) =>
    `${what} It is ${limit}: ${source} (${kind}). The hood's instructions decide.`,
};

export const hoods = {
  several: 'Hoods',
  one: 'Hood',
};

export const house = {
  label: 'House',
  fourStoreys: '4 or more',
  airChanges: 'Air changes at 50 Pa',
  volume: 'Volume',
  volumeRange: 'A home',
  floorArea: 'or floor area',
  floorAreaRange: 'A floor area',
  flow: 'or flow at 50 Pa',
  flowRefused: 'Every house leaks: a flow above 0.',
  exponent: 'Leakage exponent',
  exponentRange: 'A leakage exponent',
  storeys: 'Storeys',
  hint: 'A floor area, of all storeys, sets the volume: area × ceiling height. The figure at 50 Pa is a blower-door reading; 0.65 is the usual exponent.',
  takeAway: 'Leave the house out of the reckoning',
  undescribed:
    'No house is described, so the kitchen is taken to stand at outdoor pressure and the hood to get all the air it asks for. A tight house gives less, and may draw flue gas back in. Two figures are enough:',
};

export const housePressure = {
  spills: (caution: string) =>
    `The house stands below what the appliance bears. ${caution} Let in make-up air, or choose sealed appliances.`,
  furtherBelow: 'The house stands further below outdoors than is advised even where nothing can spill.',
  withinLimit: (caution: string) => `Within the limit by this estimate. ${caution}`,
  label: 'House pressure',
  heading: (speed: string) => `House pressure at ${speed}`,
  againstOutdoors: 'Against outdoors',
  limit: (pascals: string) => `limit −${pascals} Pa`,
  byHood: 'Out by the hood',
  byOtherFans: 'Out by other fans',
  byLeaks: 'In by the leaks',
  asMakeUp: 'In as make-up air',
  toHoldLimit: 'Make-up air to hold the limit',
  opening: (area: string) => `a free opening of ${area}`,
  noLimit: (caution: string) => `No limit is known for what burns in this house. ${caution}`,
  carbonMonoxide: 'Carbon monoxide.',
};

export const makeUp = {
  kinds: {
    none: 'None',
    noneMeans: 'Air comes in by the leaks of the house alone.',
    opening: 'Opening',
    openingMeans: 'A free opening or a passive damper to outdoors.',
    fan: 'Fan',
    fanMeans: 'A fan that blows air in while the hood runs.',
  },
  label: 'Make-up air',
  freeArea: 'Free area',
  freeAreaRefused: 'An opening is more than 0.',
  c: 'C on the free area',
  cRange: 'A loss coefficient',
  fanFlow: 'Air blown in',
  fanFlowRefused: 'A make-up fan moves more than 0.',
};

export const reading = {
  nameNeeded: 'It needs a name.',
  choose: 'Choose',
  range: (what: string, low: string, high: string) => `${what} is a number from ${low} to ${high}.`,
  wholeRange: (what: string, low: string, high: string) =>
    `${what} is a whole number from ${low} to ${high}.`,
  unclear: (typed: string, range: string) => `“${typed}” is not clear. ${range}`,
  inPercent: (what: string) => `${what}, in percent,`,
  percentOrShare: (what: string, hundredfold: string, value: string) =>
    `Write ${what} in percent: ${hundredfold} % or ${value} %?`,
  between: (what: string, low: string, high: string) => `${what} is between ${low} and ${high}.`,
  pascals: (value: string) => `${value} Pa`,
};

export const otherExhaust = {
  heading: 'Other exhaust running at the same time',
  name: (fan: number) => `Name of fan ${fan}`,
  fan: (number: number) => `fan ${number}`,
  flow: (fan: string) => `Flow of ${fan}`,
  takeOut: (fan: string) => `Take out ${fan}`,
  dryer: 'clothes dryer',
  add: 'Add a fan',
};

export const required = {
  label: 'Airflow needed',
  needs: 'Needs',
  short: (flow: string) => `${flow} short.`,
  enough: (flow: string) => `enough, with ${flow} to spare.`,
  delivers: (speed: string, flow: string, verdict: string) => `${speed} delivers ${flow}: ${verdict}`,
  sources: 'Where these come from',
  makeUp: (rated: string, trigger: string, source: string, kind: string) =>
    `This hood is rated for ${rated}. Above ${trigger} the model residential code asks for make-up air of about the same rate: ${source} (${kind}). The adopted code decides.`,
};

export const sound = {
  label: 'Sound',
  heading: (speed: string) => `Sound at ${speed}`,
  atCook: "At the cook's head",
  outside: 'Outside, beneath the cap',
  parts: "What makes it at the cook's head",
  level: (level: number) => `${level} dBA`,
  estimate:
    'An estimate to rank routes by. Levels do not add up as figures do: two alike make 3 dB more, and one far below the loudest adds nothing.',
};
