import { type ColourBy, type ColourScale, colourAt, colourScale, valuesOf } from '../drawing/colour.ts';
import type { UnitSystem } from '../graph/document.ts';
import { memoise } from '../graph/memo.ts';
import type { SpeedResult } from '../graph/solution.ts';
import type { BoardState } from './board.ts';

interface Coloured {
  /** SI, by segment id. */
  readonly values: ReadonlyMap<string, number>;
  readonly fills: ReadonlyMap<string, string>;
}

const unsolved: Coloured = { values: new Map(), fills: new Map() };

/** Values and fills of every segment at the speed that is shown. */
export function coloursOf({ solution, speed, colourBy, units }: BoardState): Coloured {
  const shown = solution.speeds[speed];
  return shown ? coloursFor(shown, colourBy, units) : unsolved;
}

const coloursFor = memoise((speed: SpeedResult, by: ColourBy, units: UnitSystem): Coloured => {
  const values = valuesOf(speed, by);
  const scale = scaleFor(speed, by, units);
  return { values, fills: new Map([...values].map(([id, value]) => [id, colourAt(scale, value)])) };
});

/** The scale that the sheets are coloured by. */
export function colourScaleOf({ solution, speed, colourBy, units }: BoardState): ColourScale {
  const shown = solution.speeds[speed];
  return shown ? scaleFor(shown, colourBy, units) : colourScale([], colourBy, units);
}

const scaleFor = memoise((speed: SpeedResult, by: ColourBy, units: UnitSystem) =>
  colourScale(valuesOf(speed, by).values(), by, units),
);
