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
  piece: 'pcs',
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
