export const data = {
  kinds: {
    catalogue: 'Catalogue',
    catalogueMeans: 'The figures of the catalogue row.',
    coefficient: 'Data sheet: loss coefficient',
    coefficientMeans: 'C on the velocity pressure in the duct.',
    loss: 'Data sheet: loss at a flow',
    lossMeans: 'A pressure loss measured at one flow.',
    length: 'Data sheet: equivalent length',
    lengthMeans: 'As much as so much of this duct.',
  },
  from: 'Its loss is from',
  freeArea: 'Free area',
  freeAreaRefused: 'Something must be open: a share above 0.',
  c: 'C on the duct',
  cRange: 'A loss coefficient',
  loss: 'Loss',
  lossRefused: 'A part takes pressure: a loss above 0.',
  atFlow: 'at a flow of',
  flowRefused: 'A flow above 0.',
  asMuchAs: 'As much as this duct, of',
};

export const warmth = {
  heading: 'Warmth',
  insulation: 'Insulation',
  inlet: 'Air comes in at',
  outlet: 'Air leaves at',
  coldest: 'Coldest inside wall',
  dewPoint: 'Dew point of the kitchen air',
  insulate: (thickness: string) => `Insulation of ${thickness} would keep it dry.`,
  drain: 'No ordinary insulation keeps it dry: pitch the duct to drain outdoors.',
  water: (remedy: string) => `Water settles on the wall here and runs back with grease. ${remedy}`,
};
