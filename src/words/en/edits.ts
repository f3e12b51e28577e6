export const scheme = {
  rename: 'rename scheme',
  add: 'add scheme',
  duplicate: 'duplicate scheme',
  delete: 'delete scheme',
  asFound: 'make a scheme as found',
  size: 'change size of all duct',
  material: 'change material of all duct',
  bends: 'change every bend',
  foundRoute: 'make a scheme of a found route',
};

export const job = {
  rename: 'rename job',
  changeUnits: 'change units',
  price: 'change price',
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
  ductSize: 'change duct size',
  material: 'change material',
  bend: 'change bend',
  bendRadius: 'change bend radius',
  transition: 'change transition',
  cap: 'change cap',
  capOpening: 'change cap opening',
  length: 'change length',
  stretch: 'change stretch',
  insulation: 'change insulation',
  asInLab: 'make turn as in the lab',
  drawDuct: 'draw duct',
  placeHood: 'place hood',
};

export const kitchen = {
  elevation: 'change elevation',
  humidity: 'change humidity',
  airTemperature: 'change air temperature',
  outdoorTemperature: 'change outdoor temperature',
  fuel: 'change fuel',
  placement: 'change placement',
  cooktopWidth: 'change cooktop width',
  heatInput: 'change heat input',
  mountingHeight: 'change mounting height',
  ceilingHeight: 'change ceiling height',
};

export const house = {
  appliances: 'change combustion appliances',
  volume: 'change house volume',
  floorArea: 'change floor area',
  airtightness: 'change airtightness',
  exponent: 'change leakage exponent',
  storeys: 'change storeys',
  takeAway: 'take the house away',
  describe: 'describe the house',
  makeUpAir: 'change make-up air',
  makeUpOpening: 'change make-up opening',
  makeUpFan: 'change make-up fan',
  takeOutFan: 'take out fan',
  addFan: 'add fan',
};

export const hood = {
  curve: 'change fan curve',
  certifiedPoints: 'change certified points',
  freeFlow: 'change free-air flow',
  shutOff: 'change shut-off pressure',
  advertised: 'change advertised flow',
  assumedPressure: 'change assumed pressure',
  fanLaw: 'change fan law',
  rename: 'rename hood',
  width: 'change hood width',
  collar: 'change collar',
  addSpeed: 'add speed',
  renameSpeed: 'rename speed',
  takeOutSpeed: 'take out speed',
  fanData: 'change fan data',
  basis: 'change pressure basis',
  ratedFlow: 'change rated flow',
  density: 'change rated density',
  sound: 'change rated sound',
};

export const codes = {
  takeOutDistance: 'take out a distance of the cap',
  enterDistance: 'enter a distance of the cap',
  resetRules: 'reset the rules',
  takeBackLimit: 'take back a limit',
  changeLimit: 'change a limit',
  ruleOn: 'switch a rule on',
  ruleOff: 'switch a rule off',
};

export const parts = {
  put: 'put in part',
  move: 'move part',
  setDamper: 'set damper',
  takeOut: 'take out part',
  data: 'change part data',
  freeArea: 'change free area',
};

export const room = {
  resizeBlock: 'resize block',
  resizeExit: 'resize exit',
  moveBlock: 'move block',
  moveExit: 'move exit',
  renameBlock: 'rename block',
  renameExit: 'rename exit',
  kind: 'change kind',
  changeNote: 'change note',
};

export const underlay = {
  remove: 'remove underlay',
  opacity: 'change underlay opacity',
  lock: 'lock underlay',
  unlock: 'unlock underlay',
  invert: 'invert underlay',
  stopInverting: 'stop inverting underlay',
  scale: 'set underlay scale',
  place: 'place underlay',
};
