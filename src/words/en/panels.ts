export const section = {
  refused: 'Write one diameter, or two sides such as 3 1/4 x 10.',
  tooWide: 'That is wider than 2 m: check the unit.',
};

export const pressure = {
  draw: 'Draw a route from a hood to a cap.',
  heading: 'Where the pressure goes',
  empty:
    "Once the duct reaches a cap, every duct and fitting stands here with the part of the fan's pressure that it uses up, the dearest first.",
  at: 'At',
  fanGives: 'the fan gives',
  goesHere: '; this is where it goes:',
  largerCharts: 'Larger charts, with their tables',
};

export const ledger = {
  house: 'House',
  friction: 'friction',
  drawingIn: 'drawing the air in through leaks and make-up openings',
  helps: (fan: string) => `${fan}, which helps`,
};

export const findings = {
  lead: (findings: string) => `${findings}. Press one to go to its place.`,
  label: 'What is listed',
  onDrawing: 'On the drawing',
  codes: 'Codes and practice',
  none: 'No findings',
  noneHint:
    "Gaps, crossings without a joint, bends that do not fit their legs and ducts that end in the open would be listed here. An empty list is not an approval: local code and the hood's instructions decide.",
};

/** How grave a finding is, within a sentence. */
export const severities = {
  danger: 'danger',
  error: 'error',
  warning: 'warning',
  note: 'note',
};

export const fitting = {
  loss: 'Loss',
  share: 'Share of the pressure',
  equivalentLength: 'Equivalent length',
  coefficient: 'Loss coefficient C',
  on: (section: string) => `on ${section}`,
  velocity: 'Velocity',
  builtUp: 'Built up from',
  c: (value: string) => `C ${value}`,
  source: 'Where the coefficient comes from',
};

export const inline = {
  ownData: 'Part from a data sheet',
  ownDataMeans: 'By its C, its loss at a flow, or its equivalent length.',
  heading: 'Parts in line',
  put: 'Put a part in line',
  fromStart: 'From the start',
  beyondEnd: (length: string) => `The duct is ${length} long.`,
  blade: 'Blade, from open',
  bladeRefused: 'A blade stands between 0° (open) and 90°.',
  takeOut: (part: string) => `Take out ${part}`,
};

export const many = {
  label: 'Selected things',
  selected: (things: string) => `${things} selected`,
  hint: 'Drag to move them together, or press the arrow keys.',
  sizeOfAll: 'Size of all',
  size: 'Size',
  materialOfAll: 'Material of all',
  material: 'Material',
};

export const node = {
  label: 'Selected point',
  tryInLab: 'Try it in the bend lab',
  bend: 'Bend',
  radiusRatio: 'Centre-line radius over diameter, r/D',
  trueTurn: 'Turn, true in space',
  radius: 'Centre-line radius',
  setback: 'Taken from each leg',
  transitions: {
    conical: 'Conical',
    conicalMeans: 'A cone between the two sections.',
    abrupt: 'Abrupt',
    abruptMeans: 'One section ends flat against the other.',
  },
  transition: (from: string, to: string) => `Transition, ${from} to ${to}`,
  coneAngle: 'Full angle of the cone',
  coneAngleRefused: 'A cone opens by more than 0° and at most 180° in all.',
  cap: 'Cap',
  opening: 'Free opening',
  openingRefused: 'An opening is more than 0.',
  openingOfCatalogue: 'By the catalogue; type the figure of a data sheet.',
  openingTyped: 'Typed from a data sheet.',
  openEnd: 'The duct ends open here. Put a cap on it:',
  east: 'East, x',
  north: 'North, y',
  height: 'Height, z',
  place: 'Place',
  radiusRefused: 'r/D is a number from 0.5 (tight) to 10.',
};

export const reach = {
  leg: 'this leg',
  toNextFitting: 'to next fitting',
  wholeRun: 'whole run',
  label: 'Size and material for',
  choice: (ducts: string) => `A choice goes to ${ducts}.`,
};

export const room = {
  eastWest: 'East–west',
  westSide: 'West side',
  northSouth: 'North–south',
  southSide: 'South side',
  height: 'Height',
  underside: 'Underside',
  block: 'Block',
  exit: 'Exit face',
  kind: 'Kind',
  size: 'Size',
  place: 'Place',
  sizeRefused: 'A size is more than nothing.',
  name: 'Name',
  note: 'Note',
  noteText: 'Words',
  noteRefused: 'A note needs words; Delete takes it away.',
  dimension: 'Dimension',
  dimensionHint:
    'Drag its line nearer or farther off. Double-click it to type the length of the leg that it measures. Delete takes it away.',
};

export const scheme = {
  nothing: 'Nothing selected',
  nothingHint: 'Click a duct, a turn, the hood or the cap on a sheet to see its numbers and to change it.',
  label: 'Scheme',
  whole: (scheme: string) => `The whole of “${scheme}”`,
  size: 'Size',
  material: 'Material',
  bends: 'Bends',
  hint: 'A choice here goes to every duct and every turn of the scheme.',
};

export const duct = {
  label: 'Selected duct',
  heading: (duct: string) => `Duct, ${duct}`,
  length: 'Length',
  size: 'Size',
  material: 'Material',
  stretch: 'Stretch',
  stretchHint: 'Installed length over fully stretched length. Slack costs a lot.',
  straight: 'Straight between bends',
  flow: 'Flow',
  velocity: 'Velocity',
  velocityPressure: 'Velocity pressure',
  friction: 'Friction',
  over: (length: string) => `over ${length}`,
  lossRate: 'Loss rate',
  share: 'Share of the pressure',
  reynolds: 'Reynolds number',
  frictionFactor: 'Friction factor',
  source: 'Where the roughness comes from',
  tooShort: 'A duct is at least 10 mm long.',
  stretchRefused: 'A stretch is between 20 and 100 %; 100 % is pulled tight.',
};

export const tabs = {
  label: 'Details',
  proposals: 'Proposals',
  pressure: 'Pressure',
  selected: 'Selected',
  findings: 'Findings',
  kitchen: 'Kitchen',
};

export const source = {
  kinds: {
    found: 'read in the source',
    memory: 'from memory, not checked against a copy',
    practice: 'common practice, no publication',
    assumption: 'an assumption',
  },
  row: 'Catalogue row',
};

export const choose = {
  choose: 'Choose…',
  sizes: 'Sizes',
};
