export const figure = {
  description: 'Shows where this figure comes from',
};

export const panel = {
  back: 'Back',
  heading: 'Where this comes from',
  noDerivation: 'No derivation',
  nothing: 'There is no number here at this speed, so there is nothing to derive.',
  inputs: 'What goes into it',
  symbol: 'Symbol',
  what: 'What',
  value: 'Value',
  sources: 'Sources',
  reference: (section: string) => `C refers to the ${section}.`,
  range: (range: string) => `Holds for: ${range}.`,
  copy: 'Copy as text',
  copied: 'Copied',
  refused: 'The browser refused',
};
