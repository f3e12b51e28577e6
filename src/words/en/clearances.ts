/** Distances from a cap to what stands around it. */
export const things = {
  propertyLine: 'the property line',
  opening: 'the nearest window or door',
  intake: 'the nearest air intake',
};

/** A drawn thing that has no name. */
export const drawnThings = { propertyLine: 'the lot line', opening: 'the window', intake: 'the air intake' };

export const said = {
  unknown: (cap: string, thing: string) =>
    `The distance from ${cap} to ${thing} is neither entered nor drawn.`,
  measure: 'Measure it on site and enter it below, or draw it as a block of that kind.',
  stands: (cap: string, measured: string, thing: string, how: string, least: string) =>
    `${cap} is ${measured} from ${thing}, ${how}; at least ${least} is wanted.`,
  above: (cap: string, measured: string, thing: string, how: string, rise: string) =>
    `${cap} is ${measured} from ${thing}, ${how}, but ${rise} above it.`,
  typed: 'as measured on site',
  drawn: 'as drawn',
};

export const field = {
  drawn: (distance: string, thing: string) => `Drawn: ${distance}, ${thing}`,
  overrules: (distance: string) => `Overrules the drawing, where it is ${distance}`,
};

export const noCap = 'No run ends in a cap yet.';
