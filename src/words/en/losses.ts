export const fanData = {
  twoPoints: 'The curve is a parabola through the two certified points; outside them it is extrapolated.',
  freeAir:
    'The curve is a parabola from the shut-off pressure to the free-air flow; the true one may sag or bulge.',
  single: (pressure: number) =>
    `Only one flow is known: it is taken as free air, with an assumed shut-off pressure of ${pressure} Pa and a parabola between. Edit the pressure, or ask for the curve.`,
  scaled: (ratio: string) =>
    `The curve is scaled by the fan laws from another speed, at ${ratio} times its speed of rotation.`,
};

export const fan = {
  fewPoints: 'a curve of fewer than two points',
  notNumber: 'a curve with a point that is not a number',
  negativeFlow: 'a curve with a flow below zero',
  noRise: 'a curve whose flows do not rise',
  noPressure: 'a curve that never gives pressure',
  noDensity: 'a curve without a rated density',
  noCollar: 'a static-pressure curve without a collar area',
  powerPoints: 'a power curve that is not three points from zero flow',
  powerRise: 'a power curve that does not fall',
};

export const junctionsUnsettled = {
  turning: 'the air in one of them is about to turn round, and the loss does not settle',
  several: 'several ducts bring air and several take it away, for which there is no published loss here',
};

export const network = {
  unsettled: 'The flows did not settle to a balance.',
  severalFlows:
    'The fan has a curve with a rising part and can settle at more than one flow here; the stable one at the highest flow is given.',
};

export const bends = {
  ovalAsRectangle: 'oval duct is read as a rectangle of the same sides: an assumption',
  standsIn: (bend: string, shape: string, other: string) =>
    `${bend} is made for ${shape} duct: ${other} stands in`,
  angleFactor: (factor: string, angle: string) => `angle factor ${factor} at ${angle}°`,
  otherRadius: (radius: string, asked: string, curve: string) =>
    `the table is for r/D ${radius} (asked ${asked}): the curve of the ${curve} carries it on`,
  turned: (angle: string, bend: string) => `${angle} ${bend}`,
  round: (bend: string, ratio: string) => `${bend}, r/D ${ratio}`,
  rectangular: (bend: string, ratio: string) => `${bend}, r/W ${ratio}`,
  hardWay: (bend: string, ratio: string) => `${bend}, r/W ${ratio}, the hard way`,
  easyWay: (bend: string, ratio: string) => `${bend}, r/W ${ratio}, the easy way`,
  shapes: { round: 'round', rectangular: 'rectangular' },
};

export const caps = {
  turnInHood: 'turn in the hood',
  cover: (height: string) => `cover at ${height} D`,
  screen: (free: string) => `screen, ${free} % free`,
  holdsBack: (pressure: string) => `the flap holds back ${pressure} Pa besides`,
  leaves: 'velocity pressure that leaves',
  contraction: 'contraction into the opening',
  expansion: 'expansion into the opening',
  usualOpening: (percent: string) => `free opening ${percent} % of the duct, usual for this cap`,
  givenOpening: (percent: string) => `free opening ${percent} % of the duct, as given`,
  flap: 'flap',
};

export const inline = {
  openFlap: (pressure: string) => `C is that of the open flap; it holds back ${pressure} Pa besides`,
  roundBlade: 'the table is for a round blade in round duct',
  fromOpen: (angle: string) => `${angle}° from open`,
  free: (percent: string) => `${percent} % free`,
  userPart: 'User part',
  byUser: 'Entered by the user',
  onDuct: (c: string) => `C ${c} on the duct`,
  atFlow: (loss: string, flow: string) => `${loss} Pa at ${flow} m³/s in standard air, taken as quadratic`,
  asLength: (length: string) => `as ${length} m of this duct; C is given at full turbulence`,
};

export const junctions = {
  branchAngle: 'branch angle',
  flowRatio: 'flow ratio',
  areaRatio: 'area ratio',
  secondOpinion: (factor: string) =>
    `second opinion: industrial branch entry ${factor} of the branch velocity pressure`,
  clamped: (what: string, to: string, asked: string) => `clamped to ${what} ${to} (asked ${asked})`,
};

export const materials = {
  notCompressed: (material: string) => `${material} is not compressed: its stretch is not counted`,
  slack: (percent: string, multiplier: string, formula: string, source: string) =>
    `left ${percent} % slack: friction times ${multiplier} (${formula}; ${source})`,
  beyondKnown: (percent: string) => `beyond the ${percent} % of slack that the formula is known for`,
  bothSources: (source: string, other: string) => `${source}; ${other}`,
};

export const table = {
  /** What a table is read by, where that is not a symbol. */
  axes: { angle: 'angle', diameter: 'diameter', 'free area': 'free area' } as Readonly<
    Record<string, string>
  >,
  clamped: (axis: string, to: string, asked: string) =>
    `clamped to the table's end at ${axis} ${to} (asked ${asked})`,
  interpolated: (axis: string, from: string, to: string) => `interpolated between ${axis} ${from} and ${to}`,
};

export const transitions = {
  between: (ratio: string) =>
    `area ratio ${ratio} lies between no change and the table's first, 2: read as 1 - A/A1`,
  noSaving: (angle: string) => `a cone of ${angle}° saves nothing over an abrupt expansion`,
  atLeast: (c: string, least: string) =>
    `by the areas alone C would be ${c}: the change of shape costs at least ${least}`,
  shapeChange: (from: string, to: string, change: string) => `${from} to ${to}, ${change}`,
  shapes: { round: 'round', rectangular: 'rectangular', oval: 'oval' },
  abrupt: { contraction: 'abrupt contraction', expansion: 'abrupt expansion' },
  gradual: {
    contraction: (angle: string) => `gradual contraction, ${angle}° included`,
    expansion: (angle: string) => `gradual expansion, ${angle}° included`,
  },
};
