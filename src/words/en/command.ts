/** The command line: its help, what it refuses, what it says while it works. */

export const program = 'gentlebend';

const solves = 'Solves every scheme of each job at every fan speed.';

export const usage = {
  lead: 'Kitchen exhaust duct routes: solved, checked and listed without a screen.',
  line: 'Usage: gentlebend COMMAND FILE... [options]',
  ofCommand: (name: string) => `Usage: gentlebend ${name} FILE... [options]`,
  commands: 'Commands',
  options: 'Options',
  forEvery: 'Options of every command',
  examples: 'Examples',
  json: 'With --json, for each file',
  codes: 'Exit codes',
  more: '"gentlebend help COMMAND" tells the options, examples and JSON of a command.',
  files:
    'FILE is a job file (*.gentlebend.json), or - for standard input. Files are done one after the other; one that cannot be read is told on standard error, and the others are done all the same.',
  oneOrMany:
    'With --json one file gives one object, several files an array of objects in the order of the files, each with its "file" first. A file that could not be read stands in the array as { "file", "problems": [{ "path", "message" }] }; alone, it leaves standard output empty. Numbers are SI.',
  clone: 'From a clone of the project: npm run --silent gentlebend -- COMMAND FILE...',
};

export const codes: readonly (readonly [string, string])[] = [
  ['0', 'done, and nothing found that a script should stop for'],
  ['1', 'done, and something was found: see the command'],
  ['2', 'bad input: a wrong command line, or a file that could not be read as a job'],
  ['3', 'the program failed, or could not write what it was asked to write'],
  ['130', 'called off (Ctrl+C)'],
];

/** How the help calls what an option takes. */
export const names = { scheme: 'SCHEME', speed: 'SPEED', file: 'FILE', locale: 'TAG' };

export const everyOption: Readonly<Record<string, string>> = {
  json: 'JSON in SI units in place of text',
  quiet: 'nothing on standard error but what went wrong',
  help: 'this text',
  version: "the program's version",
};

export const jobOptions: Readonly<Record<string, string>> = {
  scheme: 'only this scheme, by its id or its name',
  units: "in place of the job's own units",
  locale: 'figures and dates as a language writes them: de-DE; JSON and CSV stay plain',
};

export const helpCommand = 'tells about a command';

const tableOptions = (tables: string) => ({
  csv: `a table for spreadsheets in place of text: ${tables}`,
  decimal: 'numbers with a point, and commas between cells; or with a comma, and semicolons',
  out: 'writes the table to this file in place of standard output',
});

export const solve = {
  does: 'the air at every fan speed, and where the pressure goes',
  about: [
    `${solves} A scheme that cannot be solved says why; that is no failure.`,
    'Exit code 0 unless the input is bad.',
  ],
  options: {
    ...tableOptions('results (a row a speed) or route (a row a leg)'),
    losses: 'adds what every segment and fitting costs, and the temperatures',
    explain: 'adds for every figure its formula, inputs, sources and notes; with --json as "derivations"',
  },
  examples: [
    ['solve kitchen.gentlebend.json', 'a table of every scheme and speed'],
    ['solve kitchen.gentlebend.json --losses', 'and what every segment and fitting costs'],
    ['solve kitchen.gentlebend.json --units metric --locale de-DE', 'figures with a decimal comma'],
    ['solve *.gentlebend.json --json > air.json', 'many jobs, one array'],
    ['solve *.gentlebend.json --units metric --csv results --out air.csv', 'many jobs, one table'],
  ],
  json: [
    ['title, units', 'of the job; the units of the figures'],
    ['cautions', 'what the figures are not'],
    ['required', 'flow that the cooktop asks for, the rule that governs, all rules'],
    ['schemes[]', 'id, name, air, findings[], speeds[]'],
    [
      'schemes[].speeds[]',
      'hood, hoodName, name, ratedFlow, flow (null with a reason), totalPressure, staticPressure, fastest, house, sound, segments[], fittings[], residual, iterations',
    ],
    ['….segments[]', 'id, flow, velocity, frictionLoss, lossPerMetre, temperatures, condensation, source'],
    ['….fittings[]', 'at, segment, kind, label, c, flow, velocity, loss, equivalentLength, source'],
  ],
} as const;

/** What `solve` tells. */
export const solved = {
  asksFor: (flow: string, rule: string, source: string) =>
    `The cooktop asks for ${flow} (${rule}; ${source}).`,
  otherRules: (rules: string) => `Other rules: ${rules}.`,
  losses: 'where the pressure goes',
  explained: 'how every figure comes about',
  wet: ', wet',
  severities: { danger: 'danger', error: 'error', warning: 'warning', note: 'note' },
  heads: {
    hood: 'hood',
    speed: 'speed',
    delivered: 'delivered',
    rated: 'rated',
    ofRated: 'of rated',
    total: 'total pressure',
    static: 'static pressure',
    fastest: 'fastest',
    in: 'in',
    cook: 'at the cook',
    sones: 'sones',
    house: 'house',
    segment: 'segment',
    air: 'air',
    velocity: 'velocity',
    perLength: 'per length',
    friction: 'friction',
    share: 'share',
    leaves: 'air leaves at',
    wall: 'wall',
    at: 'at',
    fitting: 'fitting',
    c: 'C',
    loss: 'loss',
    equivalent: 'equivalent length',
  },
};

export const check = {
  does: 'findings of the drawing and the solve, and rules of code and practice',
  about: [
    "Tells every finding of each scheme, and what came of holding it against every rule that the job's profile has on, with the source of each. Advice: the adopted code, the hood's instructions and the local authority decide.",
    'Exit code 1 when a scheme has a danger or an error, or fails a rule.',
  ],
  options: {
    strict: 'a warning, or a rule that cannot be told, fails too',
    all: 'also the rules that are met and those that do not apply',
  },
  examples: [
    ['check kitchen.gentlebend.json', 'findings, and rules that are not met'],
    ['check *.gentlebend.json --strict --quiet > findings.txt', 'for a script: exit code 0 or 1'],
    ['check kitchen.gentlebend.json --scheme roof --json', 'one scheme as JSON'],
  ],
  json: [
    ['title, cautions', 'of the job; what the figures are not'],
    ['schemes[]', 'id, name, failed, findings[], codes[]'],
    [
      'schemes[].findings[]',
      'id, rule, severity (danger, error, warning, note), message, remedy, nodes, segments',
    ],
    [
      'schemes[].codes[]',
      'rule, name, state (meets, fails, cannot tell, not applicable), measured, limit, overridden, message, remedy, source, sourceKind, edition, nodes, segments',
    ],
  ],
} as const;

export const checked = {
  fails: 'does not pass',
  passes: 'passes',
  noFindings: 'no findings',
  rules: (meets: number, fails: number, open: number, none: number) =>
    `rules: ${meets} met, ${fails} failed, ${open} cannot be told, ${none} do not apply`,
  states: {
    meets: 'met',
    fails: 'fails',
    'cannot tell': 'cannot tell',
    'not applicable': 'does not apply',
  },
  limit: (limit: string) => `limit ${limit}`,
  source: (source: string, edition: string) => `source: ${source}${edition === '' ? '' : `; ${edition}`}`,
};

export const propose = {
  does: 'changes that would make each scheme better, each of them solved',
  about: [
    'Tries gentler bends, larger duct, other caps, smooth duct, fewer turns and what else the program knows, solves the scheme with each, and ranks them by a goal. Nothing is changed in the file.',
    'Parts are compared by the price list of the job, else by an invented example. Exit code 0 unless the input is bad.',
  ],
  options: {
    goal: 'what is wanted most; air where absent',
    speed: 'the fan speed that is judged; the one that delivers most where absent',
    together: 'also the best pairs and triples of changes; takes longer',
  },
  examples: [
    ['propose kitchen.gentlebend.json', 'by the air gained'],
    ['propose kitchen.gentlebend.json --goal quiet --speed high', 'the quietest at the cook, at that speed'],
    ['propose kitchen.gentlebend.json --together --json', 'with combinations, as JSON'],
  ],
  json: [
    ['title, goal, cautions', 'of the job; how it is ranked; what the figures are not'],
    ['schemes[]', 'id, name, speed, flow, proposals[], combinations[]'],
    [
      '….proposals[]',
      'id, kind, title, reason, remedy, gain, gains[], sound, house, cost, opening, fits, brings[], settles[], nodes, segments',
    ],
    ['….combinations[]', 'the same, with members[] and calls[]'],
  ],
} as const;

export const proposed = {
  judged: (speed: string, flow: string) => `judged at ${speed}, where ${flow} is delivered`,
  noAir: 'no speed delivers air: see "check"',
  nothing: 'nothing that the program knows would gain half a percent of air',
  noSpeed: (speed: string, names: readonly string[]) =>
    `no fan speed "${speed}"; there are ${names.join(', ')}`,
  brings: (message: string) => `brings: ${message}`,
  headings: {
    gain: 'air',
    sound: 'at the cook',
    house: 'house then',
    parts: 'parts',
    opening: 'to open up',
    fits: 'fits',
    change: 'change',
  },
  yes: 'yes',
  no: 'no',
};

export const parts = {
  does: 'what has to be bought, with weights and prices, and how duct is cut',
  about: [
    'Lists the parts of each scheme, duct in stock lengths with a cutting plan of least waste. Prices are those of the job, else an invented example; how duct is sold and joined is common practice, and the job may say its own stock lengths.',
    'Exit code 0 unless the input is bad.',
  ],
  options: tableOptions('parts (a row a part) or cutting (a row a piece)'),
  examples: [
    ['parts kitchen.gentlebend.json', 'parts list and cutting plans'],
    ['parts kitchen.gentlebend.json --scheme wall --csv parts --out parts.csv', 'for a spreadsheet'],
    ['parts kitchen.gentlebend.json --csv cutting --decimal comma > cuts.csv', 'one that reads 1,5'],
  ],
  json: [
    ['title, units', 'of the job; the units of the figures'],
    [
      'schemes[]',
      'id, name, run, bought, waste, weight, unweighed, total, unpriced, parts[], plans[], sources[]',
    ],
    [
      '….parts[]',
      'key, kind, name, quantity, unit, stock, section, weight (null where unknown), price, amount, nodes, segments',
    ],
    [
      '….plans[]',
      'key, section, material, make, stock, count, bought, used, waste, proved, bars[] with cuts[] (length, covers, segments) and offcut',
    ],
  ],
} as const;

export const listed = {
  nothing: 'nothing to buy: no duct is drawn',
  part: 'part',
  run: 'in the run',
  buy: 'to buy',
  weight: 'weight',
  price: 'price',
  amount: 'amount',
  from: 'list',
  priceFrom: { yours: 'yours', example: 'example', none: 'none' },
  total: (amount: string, unpriced: number) =>
    `All parts ${amount}${unpriced > 0 ? `, ${unpriced} without a price` : ''}.`,
  weighs: (weight: string, unweighed: number) =>
    `Weight ${weight}${unweighed > 0 ? `, without ${unweighed} whose weight is not known` : ''}.`,
  duct: (run: string, bought: string, waste: string) =>
    `Straight duct ${run} in the run, ${bought} to buy, ${waste} of it waste.`,
  plan: (what: string, count: number, length: string, waste: string, proved: boolean) =>
    `${what}: ${count} × ${length}, ${waste} waste${proved ? ', the fewest there can be' : ''}`,
  piece: (length: string, where: string) => `${length} for ${where}`,
  and: ' and ',
  left: (length: string) => `${length} left over`,
};

export const validate = {
  does: 'whether files are sound job files, and what is wrong where',
  about: [
    'Reads each file as the program would and tells every problem with its place, what the format does not know, and what opening it in the program would repair.',
    'Exit code 1 when a file is not a sound job; 2 when it could not be read at all.',
  ],
  options: {},
  examples: [
    ['validate *.gentlebend.json', 'a line for each file'],
    ['validate - --json < kitchen.gentlebend.json', 'standard input, the answer as JSON'],
  ],
  json: [
    ['valid', 'true where it loads as it stands'],
    ['loads', 'true where it loads, repaired if need be'],
    ['title, schemes[]', 'of the job, where it loads; id, name, nodes, segments'],
    ['problems[]', 'path and message of what is wrong'],
    ['repairs[]', 'path and message of what was or would be mended'],
  ],
} as const;

export const validated = {
  sound: (schemes: number, title: string) =>
    `sound: "${title}", ${schemes === 1 ? '1 scheme' : `${schemes} schemes`}`,
  mended: 'not sound: the program opens it after repairs',
  refused: 'not a job file that can be opened',
  wrong: 'wrong',
  repair: 'repaired',
};

export const doing = {
  file: (index: number, count: number, file: string) => `${index} of ${count}, ${file}`,
  listing: (scheme: string) => `listing ${scheme}`,
  solving: (scheme: string) => `solving ${scheme}`,
  proposing: (scheme: string) => `trying changes of ${scheme}`,
  combining: (scheme: string) => `trying changes together, ${scheme}`,
};

export const failures = {
  nothing: 'Nothing to do.',
  noCommand: (name: string, near: string | undefined) =>
    `No command "${name}".${near === undefined ? '' : ` Did you mean "${near}"?`}`,
  noOption: (name: string, near: string | undefined) =>
    `No option "--${name}".${near === undefined ? '' : ` Did you mean "--${near}"?`}`,
  notOfThis: (name: string, command: string) => `"${command}" has no option "--${name}".`,
  needsValue: (name: string, what: string) => `--${name} needs ${what} after it.`,
  noValue: (name: string) => `--${name} takes nothing.`,
  notAmong: (name: string, given: string, choices: readonly string[]) =>
    `--${name} is one of ${choices.join(', ')}, not "${given}".`,
  noLocale: (given: string) =>
    `--locale takes the tag of a language, with its region where that matters, as de-DE or en-GB; not "${given}".`,
  whichFile: 'Which file?',
  inputTwice: 'Standard input (-) can be read only once.',
  seeHelp: (command: string | undefined) =>
    `See "gentlebend help${command === undefined ? '' : ` ${command}`}".`,
  missing: 'there is no such file',
  folder: 'this is a folder, not a file',
  forbidden: 'this file may not be read',
  eitherOr: (one: string, other: string) => `Either --${one} or --${other}, not both.`,
  goesWith: (one: string, other: string) => `--${one} goes with --${other}.`,
  otherUnits:
    'The files are in different units, which do not go into one table: say --units imperial or --units metric.',
  cannotWrite: (file: string, why: string) => `${file}: could not be written: ${why}`,
  calledOff: 'Called off.',
};

/** Head of the column that names the file, where a table is of several. */
export const fileColumn = 'File';
export const standardInput = 'standard input';
export const noScheme = (wanted: string) => `no scheme "${wanted}"`;
export const fileHeading = (file: string) => `==> ${file} <==`;
