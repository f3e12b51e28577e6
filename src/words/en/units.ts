/** What is said of a number or a measure that was typed. Quotes and samples come in ready; `“…”` is what was typed. */
export const quotedText = (text: string) => `“${text}”`;

/** Kinds of measure: as they stand in a sentence, without their article, and at a sentence's start. */
export const kinds = {
  flow: { name: 'an airflow', bare: 'airflow', first: 'An airflow' },
  pressure: { name: 'a pressure', bare: 'pressure', first: 'A pressure' },
  velocity: { name: 'a velocity', bare: 'velocity', first: 'A velocity' },
  lossRate: {
    name: 'a pressure loss over a length',
    bare: 'pressure loss over a length',
    first: 'A pressure loss over a length',
  },
  temperature: { name: 'a temperature', bare: 'temperature', first: 'A temperature' },
  angle: { name: 'an angle', bare: 'angle', first: 'An angle' },
  area: { name: 'an area', bare: 'area', first: 'An area' },
  floorArea: { name: 'a floor area', bare: 'floor area', first: 'A floor area' },
  run: { name: 'a length of duct', bare: 'length of duct', first: 'A length of duct' },
  elevation: {
    name: 'a height above the sea',
    bare: 'height above the sea',
    first: 'A height above the sea',
  },
  volume: { name: 'a volume', bare: 'volume', first: 'A volume' },
  heat: { name: 'a heat input', bare: 'heat input', first: 'A heat input' },
  density: { name: 'a density', bare: 'density', first: 'A density' },
} as const;

/** Two ways to write a sample: `1020 mm or 1.02 m`. */
export const either = (one: string, other: string) => `${one} or ${other}`;

export const quantity = {
  missing: (name: string, sample: string) => `Type ${name}, such as ${sample}`,
  unread: (text: string, name: string, sample: string) => `${text} is not ${name}: write ${sample}`,
  otherUnit: (text: string, bare: string, sample: string) =>
    `${text} does not end in a unit of ${bare}: write ${sample}`,
  tooLarge: (text: string, name: string) => `${text} is too large to be ${name}.`,
  negative: (first: string, sample: string) => `${first} cannot be below 0: write ${sample}`,
};

export const unclear = {
  comma: (text: string, large: string, small: string) =>
    `${text} can be read as ${large} or as ${small}: leave the comma out.`,
  point: (text: string, large: string, small: string) =>
    `${text} can be read as ${large} or as ${small}: leave the point out.`,
  lengthComma: (text: string, large: string, small: string) =>
    `${text} can be read as ${large} or as ${small}: write one of these, without the comma.`,
  lengthPoint: (text: string, large: string, small: string) =>
    `${text} can be read as ${large} or as ${small}: write one of these, without the point.`,
};

export const number = {
  unread: (text: string) => `${text} is not a number.`,
};

export const length = {
  missing: (sample: string) => `Type a length, such as ${sample}.`,
  unread: (text: string, sample: string) => `${text} is not a length: write ${sample}.`,
  unreadAt: (text: string, rest: string, sample: string) =>
    `${text} is not a length at ${rest}: write ${sample}.`,
  noUnit: (text: string, sample: string) => `${text} ends in a number without a unit: write ${sample}.`,
  twice: (text: string, unit: string, sample: string) => `${text} gives ${unit} twice: write ${sample}.`,
  wrongOrder: (text: string, unit: string, before: string, sample: string) =>
    `${text} puts ${unit} after ${before}: write ${sample}.`,
  tooLarge: (text: string) => `${text} is too large to be a length.`,
  negative: (sample: string) => `A length cannot be below 0: write ${sample}.`,
  noDiameter: 'A diameter must be more than 0.',
  noStep: (text: string) => `${text} has no length after its sign.`,
  lessThanNothing: (text: string) => `${text} would leave less than nothing.`,
};
