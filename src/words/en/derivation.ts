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
  velocity: 'velocity in the section that C refers to',
  flowRatio: 'flow of the branch over the whole flow',
  areaRatio: 'area of the branch over that of the whole flow',
  branchAngle: 'angle of the branch',
  branchFormula:
    'C = s (1 + (q/a)² − 2 (1 − q)² − 2 q² cos α / a), s = 1 for a ≤ 0.35, else the larger of 0.9 (1 − q) and 0.55',
  straightFormula:
    'C = w + k (1.55 q − q² − w), w = 1 − (1 − q)² − 2 q² cos α / a, k = (α − 60)/30, at least 0',
  dividingFormula:
    'C = s (1 + (q/a)² − 2 (q/a) cos α), s = 1 − 0.1 (q/a − 0.8) / 0.2 with the fraction held within 0 to 1',
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
  source: 'Heat balance of air in a duct in colder surroundings; films 20 and 9 W/(m²·K), wrap 0.04 W/(m·K)',
  magnusSource: 'WMO form of the Magnus formula',
  through: (leg: string) => `Heat through the wall, ${leg}`,
  cookingNote: 'Cooking warms the air above the kitchen; that is left out, which is on the cold side.',
  perimeter: 'inside perimeter',
  airIn: 'air in the leg',
  coldNote:
    'Cold is duct above the top ceiling and beyond an outside wall or roof; it stands in air of the outdoor temperature.',
  wallFormula:
    'T_w = T − (U / 20) (T − T_a) at the cold end, and at most T_0; T_0 where nothing of it is cold, x = 0',
  leaving: 'air where it leaves the leg',
  dewPointOf: 'dew point of the kitchen air',
  noInsulation: 'Below the dew point, and no insulation up to 150 mm prevents it.',
  insulate: (thickness: string, conductivity: number) =>
    `Below the dew point; ${thickness} of insulation (${conductivity} W/(m·K)) prevents it.`,
  dry: 'Above the dew point: no water settles.',
  dewPoint: 'Dew point of the kitchen air',
  humidity: 'relative humidity',
  entering: 'air where it enters the leg',
  air: 'air temperature',
  outdoor: 'outdoor temperature',
  transfer: 'heat transfer through the wall',
  titles: {
    'inlet temperature': (leg: string) => `Inlet temperature, ${leg}`,
    'outlet temperature': (leg: string) => `Outlet temperature, ${leg}`,
    'wall temperature': (leg: string) => `Wall temperature, ${leg}`,
  },
  arriving: (leg: string) => `air from ${leg}`,
  flowOf: (leg: string) => `flow from ${leg}`,
  cold: 'length of it that stands in the cold',
  specific: 'specific heat of air',
  insulation: 'thickness of insulation',
  diameter: 'inside or hydraulic diameter',
};

/** How the sound of each source is told. */
export const sound = {
  heard: (place: string, speed: string) => `${place}, ${speed}`,
  sones: (sones: string) => `${sones} sone.`,
  estimate: (decibels: number) => `An estimate to rank routes by: ±${decibels} dB.`,
  ratedSound: 'rated sound',
  ratedFlow: 'flow at the rated point',
  ratedPressure: 'total pressure there',
  soundFlow: 'flow that its sound is taken at',
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
  testSource:
    'Standard airflow test: static pressure is total pressure less the velocity pressure at the outlet',
  flow: 'air through it',
  title: (name: string, speed: string) => `Total pressure of ${name} in the run, at its speed ${speed}`,
  fits: 'The duct on both sides is taken to fit its collar: changes of size at the fan are left out.',
  fromCurve: 'pressure read from the curve at Q',
  rated: 'density the curve was rated at',
  collar: 'area of the collar',
  point: (flow: string, pressure: string) => `${flow} m³/s at ${pressure} Pa`,
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
export const share = {
  title: (of: string) => `Share of the fan's pressure, ${of}`,
  leg: 'friction loss of the leg',
  fitting: 'loss of the fitting',
  nothing: 'A share is 0 where the fans give no pressure.',
};

export const air = {
  mixtureSource: 'Mixture of ideal gases; Magnus form of the saturation pressure',
  atmosphereSource: 'Lower layer of the US Standard Atmosphere 1976',
  density: 'Air density',
  elevation: 'height above the sea',
  barometric: 'barometric pressure at the elevation',
  temperature: 'air temperature',
  humidity: 'relative humidity',
  viscosity: 'Air viscosity',
  sutherlandSource: "Sutherland's law, US Standard Atmosphere 1976",
  airDensity: 'air density',
};

export const fitting = {
  source: 'Loss coefficient method of the handbooks',
  loss: (place: string) => `Loss, ${place}`,
  ofWhich: (part: string, c: string, loss: string) => `Of which ${part}: C ${c}, ${loss} Pa.`,
  coefficient: (place: string) => `Loss coefficient, ${place}`,
  equivalentLength: (place: string) => `Equivalent length, ${place}`,
  lossOf: 'loss of the fitting',
  collarNote: 'That is C D / f where the duct has the size that C refers to.',
  at: (fitting: string, place: string) => `${fitting} at ${place}`,
  coefficientOf: 'loss coefficient',
};

export const hood = {
  source: 'Intersection of the fan curve with the system curve',
  delivered: (hood: string, speed: string) => `Air delivered by ${hood} at ${speed}`,
  balance: (given: string) => `Q is the flow at which ${given} = Σ Δp_f + Σ Δp`,
  friction: 'friction of the legs on its path',
  fittings: 'losses of the fittings on its path',
  solved: (iterations: number, left: string) =>
    `Solved in ${iterations} iterations; largest unbalanced pressure ${left} Pa.`,
  ratedFlow: (hood: string, speed: string) => `Rated flow of ${hood} at ${speed}`,
  ratedFormula: "Q_r = the flow at which the curve's own pressure is zero",
  label: 'what the label says',
  share: (speed: string) => `Share of the rated flow at ${speed}`,
  total: (hood: string, speed: string) => `Total pressure of ${hood} at ${speed}`,
  static: (hood: string, speed: string) => `Static pressure at the collar of ${hood} at ${speed}`,
  collar: 'area of the collar',
  booster: (name: string) => `total pressure of ${name} in the run`,
  room: 'pressure of the room against outdoors',
  rounds: (rounds: number, change: string) =>
    `The losses where ducts join were brought into agreement with the flows in ${rounds} rounds; the last changed no flow by more than ${change} of the largest.`,
  frictionIn: (leg: string) => `friction, ${leg}`,
  hoodFan: "total pressure of the hood's fan",
  rated: 'rated flow',
  flow: 'air delivered',
};

export const house = {
  leakSource: 'Power law of house leakage, n 0.65 unless measured (ASTM E779 practice)',
  openingSource: 'Flow through a plain opening with a discharge coefficient of 0.6 on its free area',
  pressure: (speed: string) => `Pressure of the house against outdoors, ${speed}`,
  leaks: 'in through the leaks',
  hoods: 'out by the hoods',
  others: 'out by other fans',
  notes: 'Solved together with the flows of the ducts. Wind and the warmth of the house are left out.',
  limit: (limit: number, appliance: string, source: string, kind: string) =>
    `Limit ${limit} Pa below outdoors: ${appliance} (${source}; ${kind}).`,
  leakage: (speed: string) => `Air in through the leaks of the house, ${speed}`,
  room: 'pressure of the room against outdoors',
  airChanges: 'air changes an hour at 50 Pa',
  volume: 'volume of the house',
  makeUp: (speed: string) => `Make-up air that holds the house at its limit, ${speed}`,
  hoodsAtLimit: 'out by the hoods with the house at its limit',
  below: 'limit below outdoors',
  opening: 'free area of a plain opening',
  openingC: 'loss coefficient of a plain opening',
  ownSolve: 'What the hoods move with the house held at its limit comes from a solve of its own.',
  inAll: 'Make-up air in all, with what is there already.',
  coefficient: 'leakage coefficient',
  exponent: 'leakage exponent',
  makeUpAir: 'make-up air',
  throughOpening: 'make-up air through the opening',
};

export const leg = {
  darcySource: 'Darcy-Weisbach equation',
  colebrookSource: 'Colebrook-White equation, constants 3.7 and 2.51',
  viscosity: 'air viscosity',
  frictionFormula:
    'turbulent (Re ≥ 4000): 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)); laminar (Re ≤ 2000): f = 64/Re; between: f Re² by the cubic that meets both in value and slope',
  roughness: 'roughness of the wall',
  straight: 'straight duct',
  taper: 'taper upstream',
  arc: 'arc of the bend downstream',
  lengthNote:
    "Straight duct is what is left between the bends' tangents r·tan(θ/2) and the taper; the arc is r·θ.",
  arcNote: 'A bend whose coefficient already holds the friction of its arc is not charged for the arc again.',
  length: 'length charged with friction',
  adjoining: 'friction loss per metre of the adjoining duct',
  air: 'air in the leg',
  area: 'inside area',
  velocity: 'mean velocity',
  velocityPressure: 'velocity pressure',
  frictionFactor: 'friction factor',
  inside: 'inside diameter',
  hydraulic: 'hydraulic diameter 4A/P',
  slack: 'multiplier for slack flexible duct',
  titles: {
    flow: (leg: string) => `Flow, ${leg}`,
    velocity: (leg: string) => `Velocity, ${leg}`,
    'velocity pressure': (leg: string) => `Velocity pressure, ${leg}`,
    'Reynolds number': (leg: string) => `Reynolds number, ${leg}`,
    'friction factor': (leg: string) => `Friction factor, ${leg}`,
    'friction length': (leg: string) => `Friction length, ${leg}`,
    'friction loss': (leg: string) => `Friction loss, ${leg}`,
    'loss per metre': (leg: string) => `Loss per metre, ${leg}`,
  },
};
