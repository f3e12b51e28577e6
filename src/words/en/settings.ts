/** The box in which a person says how figures, dates and the page are shown. */
export const heading = 'Settings';

export const job = {
  heading: 'This job',
  units: 'Units',
  imperial: 'Feet, inches and cfm',
  metric: 'Millimetres and m³/h',
  note: 'Goes with the job’s file, and can be undone. Any field takes the other system too: 6" or 150 mm.',
};

export const reader = {
  heading: 'This browser',
  note: 'Stays in this browser and is in no job. A number without a unit is read as lengths are written here.',
};

export const inches = {
  label: 'Feet and inches',
  whole: 'To the nearest inch',
  nearest: (fraction: string) => `To the nearest ${fraction} in`,
  decimalInches: 'Inches with decimals',
  decimalFeet: 'Feet with decimals',
};

export const metric = {
  label: 'Metric lengths',
  mm: 'Millimetres',
  cm: 'Centimetres',
  m: 'Metres',
};

export const locale = {
  label: 'Numbers and dates',
  browser: (name: string) => `As the browser: ${name}`,
  plain: 'plain',
};

export const sample = {
  label: 'For example',
  length: 'a length',
  flow: 'a flow',
  pressure: 'a pressure',
  date: 'now',
};

export const theme = {
  label: 'Theme',
  light: 'Light',
  dark: 'Dark',
};

export const command = {
  title: 'Settings…',
  also: 'preferences options units fraction precision inch decimal comma locale number date format theme language',
};
