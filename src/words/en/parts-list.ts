/** The parts list and its cutting plan. */

/** What a part is called across the counter: "8" round galvanized steel duct". Sizes come in already written. */
export const names = {
  duct: (size: string, material: string) => `${size} ${material} duct`,
  bend: (size: string, kind: string, angle: string, ratio: string | null) =>
    `${size} ${kind}, ${angle}${ratio === null ? '' : `, r/D ${ratio}`}`,
  tapered: (from: string, to: string) => `Tapered change of size, ${from} and ${to}`,
  abrupt: (from: string, to: string) => `Abrupt change of size, ${from} and ${to}`,
  junction: (size: string) => `${size} junction`,
  sized: (size: string, what: string) => `${size} ${what}`,
  ownData: 'part by its own data',
  coupling: 'coupling',
  slipAndDrive: 'slips and drive cleats, one joint',
  hanger: 'hanger',
  clamp: 'Band clamps',
  fastener: 'Blind rivets, or screws as short as the metal lets them be',
  sealant: 'Duct sealant',
  tape: 'Foil tape',
  wrap: (thickness: string) => `Duct wrap, ${thickness}`,
  opening: 'Make-up air opening with a damper',
  fan: 'Make-up air fan',
};

export const units = {
  piece: 'ea',
  foot: 'ft',
  metre: 'm',
  squareFoot: 'sq ft',
  squareMetre: 'm²',
  gallon: 'gal',
  litre: 'L',
  pound: 'lb',
  kilogram: 'kg',
  stock: (count: string, length: string) => `${count} × ${length}`,
};

export const invented = 'Parts only, by an invented example price list: put your own prices in its place.';

/** Said with every parts list. */
export const caution =
  'How duct is sold, joined, sealed and hung is common practice here: the duct’s own instructions and the adopted code decide. No screw point should stand in the air stream, where grease would hang on it.';

/** The parts list under the sheets. */
export const dock = {
  name: 'Parts list and cutting plan',
  heading: (scheme: string) => `Parts of ${scheme}`,
  close: 'Close the parts list',
  prices: 'Prices and lengths…',
  save: 'Save as a table',
  list: 'Parts',
  part: 'Part',
  run: 'In the run',
  buy: 'To buy',
  weight: (unit: string) => `Weight, ${unit}`,
  amount: 'Amount',
  all: 'All parts',
  allUnpriced: (count: number) => `All parts, ${count} without a price`,
  unweighed: (count: number) => `The weight of ${count === 1 ? '1 line' : `${count} lines`} is not known.`,
  cutting: 'Cutting plan',
  duct: (run: string, bought: string, waste: string) =>
    `${run} of straight duct out of ${bought}: ${waste} waste`,
  plan: (what: string, buy: string, waste: string) => `${what}: ${buy}, ${waste} waste`,
  proved: '(the fewest that these pieces can be cut from)',
  bar: (number: string, length: string) => `Stock length ${number}, ${length}`,
  numbers: (first: number, last: number) => (first === last ? `${first}` : `${first} to ${last}`),
  times: (count: number) => `${count} ×`,
  piece: (length: string, where: string) => `${length}, ${where}`,
  left: (length: string) => `${length} left`,
  and: ' and ',
  emptyHeading: 'Nothing to buy yet',
  empty: [
    'Draw duct from the hood (D): every straight leg becomes pieces of the lengths that duct is sold in, and every turn a bend.',
    'What is left of one length is used for other legs of the same size, and the plan shows where each cut goes.',
    'Point at a line to see on the sheets where it belongs.',
  ],
};

/** Tables for spreadsheets, as commands and in the menu of the parts list. */
export const tables = {
  saved: (name: string) => `Saved ${name}.`,
  notSaved: 'The table was not saved',
  description: 'Table for spreadsheets (CSV)',
  also: 'csv spreadsheet export save list data',
  numbers: 'Numbers',
  point: '1.5, columns by commas',
  comma: '1,5, columns by semicolons',
  parts: { title: 'Save the parts list as a table', short: 'Parts list', file: 'parts' },
  cutting: { title: 'Save the cutting plan as a table', short: 'Cutting plan', file: 'cutting' },
  route: { title: 'Save the route as a table', short: 'Route', file: 'route' },
  results: {
    title: 'Save the results of all schemes as a table',
    short: 'Results of all schemes',
    file: 'results',
  },
};

export const command = {
  title: 'Parts list and cutting plan',
  also: 'bill of materials quantities stock lengths waste weight buy order',
};

/** Where the rules come from by which parts are counted, cut and weighed. */
export const sources = {
  title: 'Where these figures come from',
  hangers: 'Hangers',
  sealing: 'Sealant and tape',
  weightOf: (material: string) => `Weight of ${material} duct`,
  fittings: 'Weight of fittings',
  wrap: 'Weight of duct wrap',
  line: (what: string, source: string, kind: string) => `${what}: ${source} (${kind}).`,
};
