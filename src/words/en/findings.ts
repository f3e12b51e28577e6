export const air = {
  above: 'above',
  below: 'below',
  band: (least: string, most: string) => `${least} to ${most}`,
  outside: (leg: string, velocity: string, speed: string, side: string, band: string) =>
    `${leg} has ${velocity} at ${speed}, ${side} the advisory ${band}.`,
  larger: 'A larger duct is quieter and lets more air out.',
  slow: 'Slow air lets grease settle: keep the duct short, sloped to where it can be cleaned, and reachable.',
  condenses: (outdoors: string, leg: string, wall: string, speed: string, dewPoint: string) =>
    `With ${outdoors} outdoors the inside of ${leg} falls to ${wall} at ${speed}, below the dew point of the kitchen air (${dewPoint}): water and grease run back down the duct.`,
  notByInsulation: 'Insulation alone does not prevent it: keep the duct inside the heated space.',
  insulate: (thickness: string) =>
    `Wrap the cold legs with ${thickness} of insulation or more, and slope the duct to the outside.`,
  condensationSource:
    'Magnus dew point and heat transfer through the wall, from memory; films and wrap are common practice',
};

export const cautions = {
  legs: (count: number) => `${count} legs of the run`,
  smoothPlastic: 'smooth plastic',
  useSmooth: 'Use smooth rigid metal duct; the local code decides.',
  practice: 'common practice',
  noKind: 'has no kind chosen',
  unknownKind: (kind: string) => `is a "${kind}", which the catalogue does not have`,
  noCap: (place: string, why: string) => `${place} ${why}; it is computed as an open end.`,
  chooseCap: 'Choose a cap from the list.',
  screen: (place: string) => `${place} has a screen: grease and lint clog it until little air passes.`,
  noScreen: 'Choose a cap without a screen, or clean it often.',
  hole: (area: string, place: string) =>
    `The duct has a hole of ${area} at ${place}: air and grease leave there, and not outdoors.`,
  closeHole: 'Close it with metal tape or mastic made for it.',
  indoors: (place: string) =>
    `${place} is not at an outside wall or roof on the sheets, and the drawing cannot tell whether it is outdoors: ending a duct in an attic, crawl space or soffit puts grease and moisture there.`,
  carryOut: 'Carry the duct to the outdoors.',
  oneIs: (where: string, material: string, caution: string) => `${where} is ${material}. ${caution}`,
  manyAre: (where: string, material: string, caution: string) => `${where} are ${material}. ${caution}`,
};

export const crossings = {
  through: (leg: string, other: string) => `${leg} runs through ${other}.`,
  part: 'Move one of them, or put a node where they should join.',
};

export const fans = {
  assumed: (hood: string, speeds: string, what: string) => `${hood}, ${speeds}: ${what}`,
  enterCurve: 'Enter the curve from the data sheet where there is one.',
  noted: (hood: string, speed: string, what: string) => `${hood}, ${speed}: ${what}`,
  lessResistance: 'Give the fan less resistance, so that it works beyond the rising part of its curve.',
  risingSource: 'common practice: keep clear of the rising part of a fan curve',
  overpowered: (speeds: string, hood: string) =>
    `At ${speeds} the air comes back out of ${hood}: another fan overpowers it.`,
  ownDuct: 'Give it a duct of its own, or a backdraught damper and more pressure.',
  noCurve: 'one of its speeds has no curve',
  noData: 'it has no fan data behind it, or not one duct in and one out',
  leftOut: (why: string) => `A fan in the run is left out of the numbers: ${why}.`,
  chooseFan: 'Choose its fan and set it between two ducts, or judge the run by the hood alone.',
  oneCollar: 'ducts that start at one hood are taken to share its collar without a loss',
  noJunctionLoss: (place: string, ducts: number, why: string) =>
    `${place} joins ${ducts} ducts; the loss where they join is left out of the numbers, so the air delivered is overstated: ${why}.`,
};

export const fit = {
  twoBends: (one: string, other: string) => `${one} and ${other} do`,
  bend: (turn: string) => `${turn}, does`,
  change: (place: string) => `the change of size at ${place} does`,
  tooShort: (what: string, leg: string, by: string) => `${what} not fit: ${leg} is ${by} too short.`,
  moveTurn: 'Move the turn, or choose a bend of smaller radius or two that share the angle.',
  fromOn: (place: string) => `From ${place} on, the duct`,
  smallerThanCollar: (where: string, size: string, collar: string) =>
    `${where} is ${size}, smaller than the hood's ${collar} collar.`,
  runCollarSize: (size: string) => `Run ${size} from the collar to the cap.`,
  collarSource: 'common practice: never reduce below the collar',
  beyondLeg: (part: string, at: string, leg: string, length: string) =>
    `A ${part} is placed ${at} along ${leg}, which is ${length} long; it is computed at its end.`,
  moveBack: 'Move the part back onto the leg.',
  unknownMaterial: (leg: string, asked: string, used: string) =>
    `${leg} is of "${asked}", which the catalogue does not have; it is computed as ${used}.`,
  chooseMaterial: 'Choose a material from the list.',
  wrongSection: 'does not suit the section of this duct',
  notInCatalogue: 'is not in the catalogue',
  unknownBend: (turn: string, asked: string, why: string, used: string) =>
    `${turn}: the bend "${asked}" ${why}; it is computed as ${used}.`,
  chooseBend: 'Choose a bend from the list.',
  noLoss: 'has no loss entered',
  unknownPart: (kind: string) => `is a "${kind}", which the catalogue does not have`,
  namedPart: (name: string) => `the part "${name}"`,
  somePart: 'a part',
  partLeftOut: (part: string, leg: string, why: string) =>
    `${part} in ${leg} ${why}; it is left out of the numbers.`,
  choosePart: 'Choose a part from the list, or enter its loss from its data sheet.',
};

export const house = {
  /** With its article, its name beginning small: "a natural-draught water heater alone on its flue". */
  appliance: (name: string) => `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`,
  withOthers: ` with the other fans of the house running`,
  falls: (speeds: string, pressure: string, others: string) =>
    `At ${speeds} the house falls as far as ${pressure} below outdoors${others}`,
  bringIn: (flow: string, opening: string) =>
    `Bring in ${flow} of make-up air in all (a plain opening of ${opening} free area)`,
  spills: (pressure: string, appliance: string, limit: string) =>
    `${pressure}; the limit for ${appliance} is ${limit}. Flue gas with carbon monoxide can be drawn back into the rooms.`,
  haveTested: (makeUp: string) =>
    `${makeUp}, and have a licensed technician test every flue for spillage with all fans running.`,
  beyondTight: (pressure: string, limit: string) =>
    `${pressure}; ${limit} is the most for a house without an appliance that can spill carbon monoxide.`,
  enterAppliance: (makeUp: string) => `${makeUp}; if there is any fuel-burning appliance, enter it.`,
  both: (pascals: string, pressure: string) => `${pascals} (${pressure})`,
  and: (some: string, last: string) => `${some} and ${last}`,
  noLimit: (name: string) =>
    `The catalogue has no depressurization limit for "${name}", so the house is not held against one for it; if it burns fuel, its flue may spill carbon monoxide.`,
  chooseAppliance: 'Choose the appliance from the list, and have a licensed technician test for spillage.',
  trigger: (hood: string, rated: string, moved: string, above: string) =>
    `${hood} is rated for ${rated} and moves ${moved} here; above ${above} the model residential code wants make-up air at about the rate of the exhaust, opening when the hood runs.`,
  checkMakeUp:
    'Check that the make-up air entered comes on with the hood and is near its rate. The adopted code decides.',
  codeDecides: 'The adopted code decides.',
  provide: (flow: string, then: string) => `Provide make-up air of about ${flow}. ${then}`,
};

export const whole = {
  nothing: 'Nothing is drawn in this scheme yet.',
  placeHood: 'Place a hood and draw its duct from the collar to the outside.',
  noHood: 'The run has no hood, so there is no fan to move the air.',
  hoodAtStart: 'Place a hood at the start of the run.',
  noHoodData: 'A hood on the sheet has no hood data behind it.',
  chooseHood: 'Choose which of the hoods of this job stands there.',
  noDuct: 'No duct is connected to the hood.',
  drawFromCollar: 'Draw a duct from its collar.',
  noExit: 'The run has no way out.',
  drawOn: 'Draw it on to the outside and end it in a cap.',
  openBranch: (where: string) => `${where} ends open, so air leaves there and not at the cap.`,
  carryToCap: 'Carry the branch to a cap, or delete it.',
  openEnd:
    'The duct ends open, without a cap; it is computed as a plain open end, which loses all of the velocity pressure (C = 1).',
  endInCap: 'End it in a cap outdoors.',
  exitSource: 'from memory: an abrupt exit loses one velocity pressure',
  drawTo: 'Draw the duct to it.',
  delete: 'Delete it.',
  gap: 'A piece of duct is not connected to the hood: there is a gap in the run.',
  dragEnd: 'Drag its end onto the run until the two join.',
  samePoint: 'A leg starts and ends at the same point; it is left out.',
  endMissing: 'A leg has an end that is not on the sheet; it is left out.',
  drawAgain: 'Delete it and draw it again.',
  noLength: (leg: string) => `${leg} has no length.`,
  moveEnd: 'Move one of its ends, or merge the two.',
  loop: (leg: string) => `${leg} closes a loop; the air divides between the two ways round.`,
  deleteOne: 'If that is not meant, delete one of the legs.',
  capInRun: 'A cap stands in the middle of the run; it is computed as if it were not there.',
  endAtCap: 'End the run at the cap, or make it a plain turn.',
  lonelyCap: 'A cap stands alone, with no duct to it.',
  lonelyPoint: 'A point stands alone, with no duct to it.',
};
