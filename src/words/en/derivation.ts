/** How a figure's derivation is told, beside what the derivation itself says. */
export const sourceWords = {
  found: 'found in the source',
  memory: 'from memory',
  'common practice': 'common practice',
  assumption: 'assumption',
};

export const text = {
  formula: 'formula',
  with: 'with',
  source: 'source',
  note: 'note',
};

/** What each figure is, without its place. */
export const figures = {
  density: 'Air density',
  viscosity: 'Air viscosity',
  flow: 'Air delivered: the balance of fan and run',
  'rated flow': 'Rated flow',
  'share of rated': 'Share of the rated flow',
  'total pressure': "Total pressure of the hood's fan",
  'static pressure': 'Static pressure at the collar',
  velocity: 'Velocity',
  'velocity pressure': 'Velocity pressure',
  'Reynolds number': 'Reynolds number',
  'friction factor': 'Friction factor',
  'friction length': 'Length charged with friction',
  'friction loss': 'Friction loss',
  'loss per metre': 'Friction loss per metre',
  'fitting loss': 'Loss of a fitting',
  coefficient: 'Loss coefficient',
  'equivalent length': 'Equivalent length',
  'share of pressure': "Share of the fan's pressure",
  'booster pressure': 'Total pressure of a fan in the run',
  'house pressure': 'Pressure of the house against outdoors',
  'house leakage': 'Air in through the leaks of the house',
  'make-up air': 'Make-up air that holds the house at its limit',
  'sound at the cook': "Sound at the cook's head",
  'sound outside': 'Sound outside beneath the cap',
  'source at the cook': "What one source gives at the cook's head",
  'source outside': 'What one source gives outside',
  'heat transfer': 'Heat through the wall of a leg',
  'inlet temperature': 'Air where it enters a leg',
  'outlet temperature': 'Air where it leaves a leg',
  'wall temperature': "Inside of a leg's wall at its coldest",
  'dew point': 'Dew point of the kitchen air',
  'required airflow': 'Airflow that the cooktop asks for',
};

/** How a loss coefficient is put together. */
export const coefficient = {
  row: "the row's C at full turbulence",
  part: (label: string) => `C of its ${label}`,
  partArea: (label: string) => `area that the ${label} refers to`,
  area: 'area that C refers to',
  reynolds: 'Reynolds number',
  correction: 'correction at this Reynolds number',
  correctionNote: (pairs: string) => `K by Reynolds number, straight between and held beyond: ${pairs}`,
  pair: (reynolds: string, factor: string) => `${factor} at ${reynolds}`,
  holds: 'pressure that the flap holds back',
  leak: 'flow at which the flap leaves its seat, 0.05 A √(2 p / ρ)',
  flow: 'air through it',
  measuredLoss: 'loss as measured',
  measuredFlow: 'flow that it was measured at',
  measuredDensity: 'density that it was measured at',
  likeDuct: 'length of this duct that it is like',
  multiplier: 'multiplier for slack flexible duct',
  friction: 'friction factor of the duct',
  diameter: 'inside or hydraulic diameter of the duct',
  ranges: 'Where ducts join: α is held within 15° to 90° and a within 0.1 to 1.',
  nearRest: (atRest: string) =>
    `Below a flow ratio of 0.02 the coefficient of a branch is led in a straight line to ${atRest} at rest.`,
};

/** How heat through the wall is told. */
export const heat = {
  arriving: (leg: string) => `air from ${leg}`,
  flowOf: (leg: string) => `flow from ${leg}`,
  cold: 'length of it that stands in the cold',
  specific: 'specific heat of air',
  insulation: 'thickness of insulation',
  diameter: 'inside or hydraulic diameter',
};

/** How the sound of each source is told. */
export const sound = {
  hoodFan: "The hood's own fan",
  fanInRun: (name: string) => `Fan in the run, ${name}`,
  source: (place: string, what: string, speed: string) => `${place} by ${what}, ${speed}`,
  velocity: 'velocity where the noise is made',
  area: 'area there',
  coefficient: 'loss coefficient there',
  way: 'duct between it and the open',
  bends: 'bends on that way',
  opening: 'diameter of the opening that it leaves by',
  atCook: "level at the cook's head",
  octaves: (frequencies: string) => `Octaves f: ${frequencies} Hz.`,
  weighting: (values: string) => `A-weighting A_f: ${values} dB.`,
  narrow: (values: string) => `Bare duct up to 0.18 m across, a_f: ${values} dB/m.`,
  wide: (values: string) => `Wider duct, a_f: ${values} dB/m.`,
  bendLoss:
    'One bend, b_f by f d: 0 dB below 48.3 Hz·m, 1 dB below 96.5 Hz·m, 2 dB below 190.5 Hz·m, 3 dB above.',
  fanShape: (values: string, level: string) =>
    `Octaves of the fan s_f: ${values} dB; A-weighted together L_s = ${level} dBA.`,
  places: (cook: string, outside: string) =>
    `From sound power to what is heard: R_cook = ${cook} dB at the cook's head, R_out = ${outside} dB outside.`,
  least:
    'V counts as at least 0.5 m/s in the octaves, C as at least 0.001, d as at least 0.05 m, the pressure of a fan as at least 0.001 Pa.',
};

/** How a fan's curve is read. */
export const fan = {
  curve: {
    'monotone-cubic': (points: number, printed: string) =>
      `The curve is a monotone cubic (Fritsch-Carlson) through ${points} points: ${printed}.`,
    linear: (points: number, printed: string) =>
      `The curve is straight between ${points} points: ${printed}.`,
    power: (points: number, printed: string) =>
      `The curve is p = p_0 − b Q^c through ${points} points: ${printed}.`,
  },
};

/** Of the share that a part takes of the fans' pressure. */
export const share = { nothing: 'A share is 0 where the fans give no pressure.' };
