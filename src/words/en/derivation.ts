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
