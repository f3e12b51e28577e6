export const scheme = {
  rename: 'rename scheme',
  add: 'add scheme',
  duplicate: 'duplicate scheme',
  delete: 'delete scheme',
};

export const job = {
  rename: 'rename job',
  changeUnits: 'change units',
};

export const route = {
  cut: 'cut',
  paste: 'paste',
  lineUp: 'line up',
  duplicate: 'duplicate',
  delete: 'delete',
  mirrorX: 'mirror left and right',
  mirrorY: 'mirror front and back',
  rotate: 'turn round by a quarter',
  reverse: 'reverse flow',
  insertNode: 'insert node',
  placeCap: 'place cap',
  takeCapOff: 'take cap off',
  partDucts: 'part ducts',
  joinEnds: 'join ends',
};
