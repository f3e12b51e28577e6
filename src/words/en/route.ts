/** Places of a route, small first, as they stand in the middle of a sentence. */
export const places = {
  one: { hood: 'the hood', cap: 'the cap', junction: 'the junction', open: 'the open end' },
  several: { hood: 'hood', cap: 'cap', junction: 'junction', open: 'open end' },
  numbered: (kind: string, number: number | undefined) => (number === undefined ? kind : `${kind} ${number}`),
  theTurn: 'the turn',
  turn: (number: number) => `turn ${number}`,
  turnOf: (number: number, count: number) => `turn ${number} of ${count}`,
  noNode: 'a node that is not there',
  loose: 'a loose point',
  sizeChangeAfter: (place: string) => `the change of size after ${place}`,
  jointAfter: (place: string) => `the joint after ${place}`,
  start: 'the start',
  bend: (turn: string, angle: number) => `${turn}, the ${angle}° bend`,
  above: (bend: string, block: string) => `${bend} above the ${block.replace(/^the /i, '')}`,
  leg: (from: string, to: string) => `the leg from ${from} to ${to}`,
  between: (from: string, to: string) => `from ${from} to ${to}`,
  /** Without an article, for a row of a list. */
  short: {
    turn: 'turn',
    loose: 'loose point',
    sizeChange: 'change of size',
    joint: 'joint',
    noNode: 'node that is not there',
  },
  noLeg: 'a leg that is not there',
};

export const directions = {
  up: 'up',
  down: 'down',
  slopingUp: (point: string) => `${point}, sloping up`,
  slopingDown: (point: string) => `${point}, sloping down`,
  /** Sixteen points, from east counter-clockwise. */
  compass: [
    'east',
    'east-northeast',
    'northeast',
    'north-northeast',
    'north',
    'north-northwest',
    'northwest',
    'west-northwest',
    'west',
    'west-southwest',
    'southwest',
    'south-southwest',
    'south',
    'south-southeast',
    'southeast',
    'east-southeast',
  ],
};

export const junction = {
  label: (kind: string, way: string, flow: string) => `${kind}, ${way}, ${flow}`,
  tee: (angle: number) => `${angle}° tee`,
  wye: (angle: number) => `${angle}° wye`,
  branch: 'branch',
  straight: 'straight way',
  joining: 'joining',
  dividing: 'dividing',
};

/** Where a thing stands in the room, and which way it has to go. East, north and up are the three axes. */
export const room = {
  /** A block as it is spoken of: "joist 4", "the beam". */
  block: (name: string) => (/\d$/.test(name) || /^the /i.test(name) ? name : `the ${name}`),
  kinds: {
    obstacle: 'obstacle',
    chase: 'chase',
    cabinet: 'cabinet',
    joist: 'joist',
    beam: 'beam',
    wall: 'wall',
    window: 'window',
    intake: 'air intake',
    'lot line': 'lot line',
  },
  plus: { move: ['east', 'north', 'up'], side: ['east side', 'north side', 'top'] },
  minus: { move: ['west', 'south', 'down'], side: ['west side', 'south side', 'bottom'] },
};

export const trace = {
  named: (name: string, what: string) => `${name}: ${what}`,
  along: (length: string, direction: string) => `${length} ${direction}`,
  insulation: (thickness: string) => `${thickness} insulation`,
  leg: (name: string, what: string) => `${name}: ${what}`,
  collar: (hood: string, size: string) => `${hood}, ${size} collar`,
  noKind: 'no kind chosen',
  conical: (angle: string) => `conical ${angle}`,
  resized: (from: string, to: string, shape: string) => `${from} to ${to}, ${shape}`,
  abrupt: 'abrupt',
  join: (ducts: number) => `${ducts} ducts join`,
  divide: (ducts: number) => `${ducts} ducts divide`,
  turnedUp: (angle: string, way: string) => `${angle} ${way}`,
  turnedTo: (angle: string, way: string) => `${angle} to the ${way}`,
  radius: (ratio: string) => `r/D ${ratio}`,
  bend: (name: string) => name.replace(/ bend$/, ''),
};

export const snap = {
  onRiser: 'on riser',
  onNode: (node: string) => `on ${node}`,
  onCentreLine: 'on centre line',
  both: (one: string, other: string) => `${one}, ${other}`,
  sameLength: 'same length as previous leg',
  grid: (step: string) => `grid ${step}`,
};

export const snapLines = {
  onCentreLine: 'on centre line',
  straightOn: 'straight on',
  fromLastTurn: (angle: number) => `${angle}° from last turn`,
  onSheet: (angle: number) => `${angle}° on the sheet`,
  face: (block: string) => `face of ${block}`,
  inLine: (node: string) => `in line with ${node}`,
  east: 'due east',
  north: 'due north',
  west: 'due west',
  south: 'due south',
  level: 'level',
  plumb: 'plumb',
  nodes: { hood: 'hood', turn: 'node', cap: 'cap', fan: 'fan' },
};

export const fitChase = {
  stands: (part: string, by: string, side: string, chase: string) =>
    `${part} stands ${by} out of the ${side} of ${chase}.`,
  back: (by: string, way: string, wider: string) =>
    `Move it ${by} ${way}, widen the chase ${wider}, or take duct that is smaller across.`,
  cuts: (part: string, by: string, chase: string) => `${part} cuts ${by} into the side of ${chase}.`,
  away: (by: string, way: string) => `Move it ${by} ${way}, or run it inside the chase.`,
  tooTight: (part: string, chase: string, takes: string, has: string) =>
    `${part} does not fit ${chase}: its bend takes ${takes} from the corner and has ${has} to the side.`,
  smallerRadius:
    'Choose a bend of smaller radius, move the turn inward, or make the opening as large as the bend.',
};

export const fitClash = {
  passes: (part: string, depth: string, blocks: string) => `${part} passes ${depth} into ${blocks}.`,
  into: {
    one: (block: string, other: string) => `${block}, and into ${other}`,
    many: (block: string, others: number) => `${block}, and into ${others} other blocks`,
  },
  to: {
    one: (block: string, other: string) => `${block}, and to ${other}`,
    many: (block: string, others: number) => `${block}, and to ${others} other blocks`,
  },
  move: (depth: string, way: string) =>
    `Move it ${depth} ${way} and leave room to hang and seal it, or go round.`,
  moveCarefully: (depth: string, way: string) =>
    `Move it ${depth} ${way} and leave room to hang and seal it, or go round. Nothing that carries the house is notched or cut without whoever answers for the structure.`,
  touches: (part: string, blocks: string, wanted: string) =>
    `${part} touches ${blocks}; ${wanted} is wanted.`,
  leaves: (part: string, gap: string, blocks: string, wanted: string) =>
    `${part} leaves ${gap} to ${blocks}; ${wanted} is wanted.`,
  moveAway: "Move it away. The hood's instructions and the local code may ask for more to what can burn.",
  practice: 'common practice',
};

export const sections = {
  round: (diameter: string) => `${diameter} round`,
  rectangular: (short: string, long: string) => `${short} x ${long}`,
  oval: (short: string, long: string) => `${short} x ${long} oval`,
};

export const unsolved = {
  cannotRun: 'The hood cannot run.',
  nothingAttached: 'Nothing is attached to the hood yet.',
  noWayOut: 'The duct from the hood has no way out.',
};

export const solve = {
  notOnSheets: 'The hood is not on the sheets of this scheme yet.',
};

export const speeds = {
  noSpeed: (number: number) => `The hood has no speed ${number}.`,
  noCurve: (speed: string) =>
    `Speed "${speed}" has no curve of pressure against flow, so nothing can be computed for it.`,
  badCurve: (speed: string, problem: string) => `Speed "${speed}" has ${problem}.`,
};

export const templates = {
  hood: 'Invented 36 in hood, 600 cfm',
  job: 'New kitchen',
  scheme: 'Scheme 1',
};

export const schemes = {
  copyOf: (name: string) => `${name} copy`,
  added: 'New scheme',
  numbered: (name: string, number: number) => `${name} ${number}`,
};

export const clipboard = {
  another: (hood: string) => `${hood}, another`,
};

export const fanData = {
  speed: (number: number) => `speed ${number}`,
};

export const sound = {
  source:
    'Flow noise: VDI 2081 form; fan: Beranek form with fan laws; attenuation: ASHRAE Applications, Sound and Vibration Control',
  sones: 'Sones from dBA by dBA = 33.2 log10(sone) + 28, a rule of thumb good to about 2 dB.',
  limits:
    'By the published rules themselves air at 10 m/s in an 8 in duct makes some 36 dB less sound power than a fan of 0.3 m³/s and 200 Pa: at the hood a smaller duct is louder above all because it makes the fan work against more pressure. Whistling edges and a flap that rattles are in no rule.',
  booster: (name: string) => `${name} in the run has its sound estimated from its flow and pressure.`,
  others: 'The other hoods of this scheme are taken to be silent.',
  unrated: (hood: string, speed: string) =>
    `No sound is given for ${hood}, ${speed}: the fan's is estimated from its flow and pressure, which is ±4 dB by itself.`,
  rated: (level: number, hood: string, speed: string, point: string) =>
    `The rated ${level} dBA of ${hood}, ${speed}, is taken to be what is heard at the cook's head with the fan at ${point}; from there the fan's sound follows 10 log Q and 20 log of its total pressure, and a fan that is throttled beyond the loudest point of its curve is taken to stay as loud.`,
  freeDelivery: 'free delivery',
  ratedPoint: '25 Pa (0.1 in w.g.)',
};
