/** What uses up a fan's pressure, within a sentence. */
export const pressure = {
  house: 'house',
  friction: 'friction',
  bends: 'bends',
  transitions: 'transitions',
  junctions: 'junctions',
  dampers: 'dampers',
  'parts in line': 'parts in line',
  cap: 'cap',
  'helping fans': 'helping fans',
};

/** The same, put together for where schemes stand side by side. */
export const compared = {
  'straight duct': 'straight duct',
  bends: 'bends',
  'size changes': 'size changes',
  cap: 'cap',
  'parts in line': 'parts in line',
  junctions: 'junctions',
  house: 'house',
};

/** What makes the sound of a run. */
export const sound = {
  fan: 'fan',
  'straight duct': 'straight duct',
  bend: 'bend',
  damper: 'damper',
  cap: 'cap',
  transition: 'transition',
  'other fitting': 'other fitting',
};
