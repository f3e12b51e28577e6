export const catching = {
  wouldWin: (changes: string, flow: string, speed: string, cost: string) =>
    `would win with ${changes}: ${flow} at ${speed}, parts ${cost}.`,
  wouldNotWin: (changes: string, flow: string, speed: string, cost: string) =>
    `would not win even with ${changes}: ${flow} at ${speed}, parts ${cost}.`,
  trying: (scheme: string) => `${scheme}: trying changes…`,
  nothing: ': no change on the list brings it nearer.',
  doIt: (scheme: string) => `Do it to ${scheme}`,
};

export const sheet = {
  short: 'short',
  beyondLimit: 'beyond the limit',
  label: 'Comparison',
  at: (speed: string, flow: string) => `at ${speed}; the cooktop asks for ${flow}.`,
  recommended: 'recommended',
  best: 'best:',
  pressure: 'Where the pressure goes',
  findings: 'Findings',
  more: (findings: number) => `and ${findings} more on the desk`,
  none: 'none',
  winner: (scheme: string) => `Recommended: ${scheme}`,
  noWinner: 'No recommendation',
  another: 'What would make another win',
  cutShort: 'Findings are cut short here; the desk has them in full.',
  foot: (prices: string) =>
    `✓ marks the best of a row where the schemes differ. ${prices} A planning estimate: local code, the hood's instructions and a licensed installer decide.`,
};

export const view = {
  heading: 'Compare schemes',
  schemes: 'Schemes to compare',
  print: 'Print',
  back: 'Back to the desk',
  chooseTwo: 'Choose at least two schemes.',
};
