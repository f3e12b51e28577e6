import { counted, plural } from './plural.ts';

/** What the pages of a job sheet say besides its own text: title blocks, keys of drawings, axes of charts. */
export const block = {
  sheet: 'Drawing',
  section: 'Contents',
  scale: 'Scale',
  noScale: 'Not to scale',
  date: 'Date',
  units: 'Units',
  file: 'File',
  page: 'Sheet',
  pageOf: (page: number, of: number) => `${page} of ${of}`,
};

export const drawing = {
  isometric: 'Lengths along the three axes have one scale; the figures count.',
  findings: 'On this drawing',
  more: (count: number) => (count === 1 ? '1 more under Findings' : `${count} more under Findings`),
  noFindings: 'Nothing is marked on this drawing.',
  key: 'Key',
  leg: 'leg, as in the route schedule',
  grave: 'dangerous or wrong',
  warning: 'to be looked at',
  flow: 'air flows this way',
  toward: 'duct towards the viewer',
  away: 'duct away from the viewer',
  centre: 'centre line: lengths run on it',
  figures: 'Figures go before what is measured on paper.',
  north: 'N',
};

export const chart = {
  flow: (unit: string) => `Air, ${unit}`,
  pressure: (unit: string) => `Total pressure, ${unit}`,
  along: (unit: string) => `Way from the hood, ${unit}`,
  run: 'the run',
  total: 'total',
  static: 'static',
  pressureAlong: (unit: string) => `Pressure, ${unit}`,
};

export const findings = {
  remedy: (what: string) => `→ ${what}`,
  where: (place: string) => `Where: ${place.replace(/\.$/, '')}.`,
  source: (source: string) => `Source: ${source}`,
};

export const formula = {
  from: (number: string) => `from ${number}`,
  sources: 'Source: ',
  with: 'with',
};

/** Of letters that the sheet's font has not. */
export const letters = {
  onSheet: (count: number, codes: string, more: number) =>
    `${counted(count, { one: 'letter of these texts is', other: 'letters of these texts are' })} not in the sheet’s font and ${plural(count, { one: 'stands', other: 'stand' })} as □: ${codes}${more > 0 ? ` and ${more} more` : ''}. Copied out of this file the text is as it was typed.`,
  inDialog: (count: number, letters: string) =>
    `${counted(count, { one: 'letter of this job is', other: 'letters of this job are' })} not in the sheet’s font and will be printed as □: ${letters}`,
  told: (count: number, letters: string) =>
    `${counted(count, { one: 'letter', other: 'letters' })} could not be printed: ${letters}`,
};

export const command = {
  title: 'Job sheet (PDF)…',
  also: 'print paper report schedule parts calculation appendix sign hand over contractor',
};

export const dialog = {
  title: 'Job sheet (PDF)',
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'Letter' },
  date: 'Date on the sheet',
  schemes: 'Schemes',
  noScheme: 'Choose at least one scheme.',
  parts: 'What goes in',
  sections: {
    summary: 'Cautions',
    results: 'Air at each speed',
    drawings: 'Drawings to scale',
    route: 'Route schedule',
    charts: 'Charts',
    findings: 'Findings and code checks',
    parts: 'Parts list',
    signatures: 'Signature lines',
    appendix: 'Calculation appendix',
  },
  note: 'Cautions and findings always go with the figures. The calculation appendix is long: a page or more for every turn.',
  save: 'Save the PDF',
  saved: (name: string) => `Saved ${name}.`,
  working: (share: string) => `Drawing, ${share}`,
  failed: 'The job sheet was not made',
  remedy:
    'Try again; leave out the calculation appendix if the job is very large. If it goes on, save the job to a file and reload the page.',
  fileKind: 'Job sheet',
};
