import { heading as beforeBuilding } from './cautions.ts';
import { counted } from './plural.ts';

/** The job sheet: what leaves the desk on paper. */
export const heading = 'Job sheet';
export const program = 'Gentlebend';

export const title = {
  job: 'Job',
  scheme: 'Scheme',
  units: 'Units',
  imperial: 'Imperial',
  metric: 'Metric',
  date: 'Date',
  program: 'Made with',
  version: (name: string, version: string) => `${name} ${version}`,
  fingerprint: 'File fingerprint',
  noTitle: 'Untitled job',
  footer: (job: string, scheme: string, fingerprint: string) => `${job}, ${scheme}. File ${fingerprint}`,
};

export const sections = {
  summary: beforeBuilding,
  results: 'Air delivered at each speed',
  drawings: 'Drawings',
  route: 'Route schedule',
  charts: 'Charts',
  findings: 'Findings and code checks',
  parts: 'Parts list',
  signatures: 'Signatures',
  appendix: 'Appendix: how every figure comes about',
};

export const results = {
  hood: 'Hood',
  speed: 'Speed',
  delivered: 'Delivered',
  rated: 'Rated',
  ofRated: 'Of rated',
  ofRequired: 'Of required',
  total: 'Total pressure',
  static: 'Static pressure',
  fastest: 'Fastest air',
  inLeg: 'In leg',
  cook: 'Sound at the cook',
  sones: 'Sones',
  outside: 'Sound outside',
  house: 'House pressure',
  legs: 'Legs are numbered as in the route schedule.',
  sound: (uncertainty: number) =>
    `Sound is an estimate to rank routes by: ±${uncertainty} dB. At the cook's head, and outdoors beneath the cap.`,
  noHood: 'No hood stands on the sheets of this scheme yet, so that there is no air to compute.',
  none: 'This job has no hood with a fan yet, so that there is no air to compute.',
  noted: (hood: string, speed: string, message: string) => `${hood}, ${speed}: ${message}`,
};

export const required = {
  heading: 'What the cooktop asks for',
  rule: 'Rule',
  flow: 'Air',
  because: 'Why',
  source: 'Source',
  governs: (flow: string, name: string) => `${name} governs: ${flow}.`,
  short: (flow: string, speed: string) =>
    `The most that this scheme delivers, at ${speed}, is short of it by ${flow}.`,
};

export const house = {
  heading: 'The house around the kitchen',
  pressure: 'House pressure',
  leakage: 'In by leaks',
  makeUp: 'In by make-up air',
  hoods: 'Out by hoods',
  other: 'Out by other fans',
  needed: 'Make-up air wanted',
  opening: 'As an opening',
  limit: (value: string, appliance: string, source: string) =>
    `Limit ${value} below outdoors: ${appliance}. ${source}`,
  beyond: (speeds: string, appliance: string) =>
    `Carbon monoxide: at ${speeds} the house is drawn below the limit of ${appliance}. Do not build this without the make-up air in the table, and have the appliance tested for spillage with every exhaust fan running.`,
  below: 'The pressure is against outdoors: below zero the house is drawn down.',
};

export const route = {
  number: 'No.',
  part: 'Part',
  direction: 'Runs',
  length: 'True length',
  size: 'Size',
  material: 'Material',
  velocity: 'Air',
  equivalent: 'Equivalent length',
  loss: 'Loss',
  share: 'Share',
  legTo: (place: string) => `Leg to ${place}`,
  at: (label: string, place: string) => `${label} at ${place}`,
  insulated: (material: string, thickness: string) => `${material}, ${thickness} insulation`,
  total: 'Whole path of the air',
  totalOf: (hood: string) => `Whole path of the air from ${hood}`,
  atSpeed: (hood: string, speed: string) =>
    `Air, losses and equivalent lengths: ${hood} at ${speed}. True lengths are from node to node in space.`,
  unsolved: 'Losses are left out where there is no solution.',
  empty: 'No duct is drawn in this scheme yet.',
};

export const drawings = {
  captions: {
    floor: 'Floor, looking down',
    'section-x': 'Section, looking north',
    'section-y': 'Section, looking west',
    isometric: 'View from an angle',
  },
  description: (what: string, scheme: string) => `${what}: the duct of ${scheme}`,
  measure:
    'Drawn to the scale beside each drawing. Figures on the sheet go before what is measured on paper.',
};

export const charts = {
  none: 'No speed has a solution yet, so that there is nothing to chart.',
  fan: (hood: string) => `${hood}: fan and run`,
  fanDescription: 'Total pressure of the fan against flow at each speed, with the point where each works',
  profile: (speed: string) => `Pressure along the run at ${speed}`,
  profileDescription: 'Total and static pressure against the way from the hood to the outside',
  budget: (speed: string) => `Where the pressure goes at ${speed}`,
  budgetDescription: 'The pressure of the fan by what uses it up',
  table: 'Where the pressure goes',
  cause: 'Part',
  sum: 'Pressure of the fan',
};

export const findings = {
  heading: 'Findings',
  severity: { danger: 'Danger', error: 'Error', warning: 'Warning', note: 'Note' },
  none: 'No findings. An empty list is not an approval: the local code and the hood’s instructions decide.',
  codes: 'Codes and practice',
  codesLead:
    'Model codes and practice, not the local code: the local authority and the hood’s instructions decide.',
  notAllOn: (count: number) => `${counted(count, { one: 'rule', other: 'rules' })} switched off in this job.`,
  state: { fails: 'Not met', 'cannot tell': 'Open', meets: 'Met', 'not applicable': 'Does not apply' },
  open: 'No rule is broken or open.',
  rule: 'Rule',
  stateHead: 'State',
  found: 'Found',
  limit: 'Limit',
  source: 'Source',
  own: (limit: string) => `${limit} (set in this job)`,
  edition: (source: string, kind: string, edition: string) => `${source} (${kind}). Edition: ${edition}.`,
  foundAndLimit: (message: string, found: string, limit: string) =>
    `${message} Found: ${found}. Limit: ${limit}.`,
  place: (places: readonly string[], more: number) =>
    [...places, ...(more > 0 ? [`${more} more`] : [])].join(', '),
};

export const parts = {
  part: 'Part',
  quantity: 'In the run',
  buy: 'To buy',
  weight: 'Weight',
  each: 'Each',
  amount: 'Amount',
  from: 'Price list',
  priceFrom: { yours: 'yours', example: 'example', none: 'none' },
  total: 'Sum of the priced parts',
  unpriced: (count: number) =>
    `${counted(count, { one: 'line', other: 'lines' })} without a price left out of the sum.`,
  weighs: (weight: string, unweighed: number) =>
    `All of it weighs ${weight}${unweighed > 0 ? `, without ${counted(unweighed, { one: 'line', other: 'lines' })} whose weight is not known` : ''}.`,
  duct: (run: string, bought: string, waste: string) =>
    `Straight duct: ${run} in the run, ${bought} to buy, ${waste} of it waste.`,
  empty: 'Nothing to buy yet: no duct is drawn in this scheme.',
  cutting: 'Cutting plan',
  plan: (what: string, count: number, length: string, waste: string, proved: boolean) =>
    `${what}: ${count} × ${length}, ${waste} waste${proved ? ', the fewest lengths there can be' : ''}`,
  bar: 'Length',
  pieces: 'Pieces, longest first, and the legs that they come to lie in',
  left: 'Left over',
  piece: (length: string, legs: string) => `${length} (leg ${legs})`,
};

export const signatures = {
  lines: ['Designed by', 'Checked by', 'Installed by'],
  name: 'Name',
  signature: 'Signature and date',
};

export const appendix = {
  lead: 'Every figure of this sheet in SI, with the formula and the inputs that gave it, so that it can be worked again by hand. Inputs are printed with six significant figures. “Row” names the entry of the parts catalogue; how far a source can be trusted stands beside it.',
  inputs: 'What was entered',
  elevation: 'Height above the sea',
  temperature: 'Air in the kitchen',
  humidity: 'Relative humidity',
  outdoors: 'Outdoor temperature',
  ceiling: 'Ceiling height',
  mounting: 'Hood above the cooktop',
  cooktop: 'Cooktop',
  cooktopWords: (fuel: string, width: string, place: string) => `${fuel}, ${width}, ${place}`,
  fuels: { gas: 'gas', electric: 'electric', induction: 'induction', solid: 'solid fuel' },
  places: { wall: 'against a wall', island: 'island', outdoor: 'outdoors' },
  heat: 'Burner heat input',
  houseVolume: 'House volume',
  leakage: 'Air changes an hour at 50 Pa',
  exponent: 'Leakage exponent',
  otherExhaust: 'Other exhaust',
  makeUp: 'Make-up air',
  makeUpOpening: (area: string) => `opening of ${area}`,
  makeUpFan: (flow: string) => `fan of ${flow}`,
  combustion: 'Appliances that draw air from the house',
  none: 'none',
  notGiven: 'not given',
  named: (name: string, value: string) => `${name} ${value}`,
  fan: (hood: string) => `Fan curves of ${hood} collar, as used`,
  speed: 'Speed',
  basis: 'Pressure',
  bases: { static: 'static', total: 'total' },
  density: 'Rated at',
  points: 'Points',
  ratedSound: 'Rated sound',
  point: (flow: string, pressure: string) => `${flow} at ${pressure}`,
  fingerprint: 'The file',
  fingerprintText: (full: string) =>
    `SHA-256 of the job’s file as this program writes it: ${full}. Any program that computes SHA-256 gives the same for the same file.`,
  where: 'Where',
  at: 'Speed',
  every: 'every',
  shown: 'In the job’s units',
  what: 'What',
  symbol: 'Symbol',
  from: 'From',
  result: 'Result',
  unit: 'Unit',
  row: 'Row',
  leg: (number: number) => `Leg ${number}`,
  legs: (numbers: string) => `Legs ${numbers}`,
  inLeg: (number: number) => `leg ${number}`,
  noteOf: (names: string, note: string) => `${names}: ${note}`,
};

/** The view that is printed. */
export const print = {
  heading: 'Print job sheet',
  hint: 'Drawings keep their scale at 100 %: leave “fit to page” off.',
  print: 'Print',
  back: 'Back to the desk',
  sheet: 'Job sheet',
  making: 'Making the sheet…',
  where: 'Where:',
  remedy: 'Do:',
  source: 'Source:',
  /** In place of the sheet, where the browser's own print comes too early or the route is too long for it. */
  instead: {
    heading: 'This is not the job sheet',
    early: 'The program was still being loaded when the browser began to print.',
    long: 'This route is too long for a sheet that is made in the moment of printing.',
    do: (keys: string) =>
      `Close the browser’s print window and press ${keys}: the program makes the job sheet and prints it.`,
  },
};

/** The command line's `report`. */
export const command = {
  help: {
    does: 'the job sheet: drawings, schedules, findings, parts and the whole calculation, as a PDF',
    about: [
      'Writes one PDF for each job, with a sheet for every scheme, beside nothing else in the folder that it is called from: kitchen.gentlebend.json becomes kitchen-job-sheet.pdf.',
      'The sheet bears the date and the SHA-256 of the job’s file. Exit code 0 whatever the findings; see "check" for those.',
    ],
    options: {
      out: 'the folder to write to, or a file that ends in .pdf for one job',
      paper: 'letter for a job in imperial units, a4 else',
      date: 'the day on the sheet; today where absent',
      text: 'the sheet as text on standard output, and no PDF',
    },
    examples: [
      ['report kitchen.gentlebend.json', 'kitchen-job-sheet.pdf, all schemes'],
      ['report kitchen.gentlebend.json --scheme roof --paper a4 --out roof.pdf', 'one scheme, to this file'],
      ['report *.gentlebend.json --out sheets', 'one PDF a job, in the folder sheets'],
      ['report kitchen.gentlebend.json --locale fr-FR', 'dates and figures as in France'],
      ['report kitchen.gentlebend.json --text --json', 'the data of the sheet alone'],
    ],
    json: [
      ['pdf, paper', 'the file that was written, and its paper; not with --text'],
      ['lettersNotPrinted', 'letters that its font lacks; not with --text'],
      ['sheets[]', 'a scheme each: title, sections[]'],
      ['….title', 'job, scheme, units, date, made, version, fingerprint'],
      [
        '….sections[].blocks[]',
        'by kind: text, facts, cautions, findings, table, drawing, chart, formula, signatures',
      ],
      ['….rows[].cells[]', 'of tables: text as printed, si where it is a number'],
    ],
  },
  out: 'FOLDER|FILE.pdf',
  dateName: 'YYYY-MM-DD',
  noDate: (text: string) => `--date: "${text}" is no day; write it like 2026-03-02`,
  twice: (name: string) => `${name} is written already for another file: give each a folder of its own`,
  drawing: 'drawing the sheet',
  written: (path: string, schemes: number) =>
    `${path}: ${counted(schemes, { one: 'scheme', other: 'schemes' })}`,
} as const;
