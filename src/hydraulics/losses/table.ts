import { formatSignificant } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const says = words.losses.table;
/** One axis of a printed table. Lengths in m, angles in degrees; the values rise. */
export interface Axis {
  /** As the trade writes it: `r/D`, `H/W`, `angle`, `diameter`. */
  readonly name: string;
  readonly unit: '' | 'm' | 'deg';
  readonly values: readonly number[];
}

type Nested = number | readonly Nested[];

/** A printed table of any number of axes: `values[i][j]` stands at the i-th value of the first axis. */
export interface Table {
  readonly axes: readonly Axis[];
  readonly values: Nested;
}

export interface Reading {
  readonly value: number;
  /** Sentences on interpolation and clamping; none where the table prints the very value. */
  readonly notes: readonly string[];
}

interface Place {
  readonly index: number;
  readonly fraction: number;
}

/**
 * Reads a table at a point, linearly along each axis, and clamps to the table's ends with a note.
 * Refuses a point that lacks one of the table's axes or is not a number.
 */
export function lookUp(table: Table, at: Readonly<Record<string, number>>): Reading {
  const notes: string[] = [];
  const places = table.axes.map((axis) => {
    const asked = at[axis.name];
    if (asked === undefined || Number.isNaN(asked))
      throw new RangeError(`the table wants a number for ${axis.name}`);
    return locate(axis, asked, notes);
  });
  return { value: read(table.values, places, 0), notes };
}

/** First and last value of an axis. Refuses an axis that the table lacks. */
export function rangeOf(table: Table, name: string): readonly [number, number] {
  const values = table.axes.find((axis) => axis.name === name)?.values;
  const first = values?.[0];
  const last = values?.at(-1);
  if (first === undefined || last === undefined) throw new RangeError(`the table has no axis ${name}`);
  return [first, last];
}

function locate(axis: Axis, asked: number, notes: string[]): Place {
  const { values } = axis;
  const last = values.length - 1;
  const at = (i: number) => values[i] as number;
  const clamped = asked < at(0) ? 0 : asked > at(last) ? last : undefined;
  if (clamped !== undefined) {
    notes.push(says.clamped(nameOf(axis), show(axis, at(clamped)), show(axis, asked)));
    return { index: clamped, fraction: 0 };
  }
  const upper = values.findIndex((value) => value >= asked);
  if (at(upper) === asked) return { index: upper, fraction: 0 };
  const index = upper - 1;
  notes.push(says.interpolated(nameOf(axis), show(axis, at(index)), show(axis, at(upper))));
  return { index, fraction: (asked - at(index)) / (at(upper) - at(index)) };
}

function read(values: Nested, places: readonly Place[], depth: number): number {
  const place = places[depth];
  if (place === undefined || typeof values === 'number') return values as number;
  const low = read(values[place.index] as Nested, places, depth + 1);
  if (place.fraction === 0) return low;
  const high = read(values[place.index + 1] as Nested, places, depth + 1);
  return low + place.fraction * (high - low);
}

function nameOf({ name }: Axis): string {
  return says.axes[name] ?? name;
}

function show(axis: Axis, value: number): string {
  if (axis.unit === 'm') return `${tidy(value * 1000)} mm`;
  return axis.unit === 'deg' ? `${tidy(value)}°` : tidy(value);
}

/** A number at four figures, without trailing zeros. */
export function tidy(value: number): string {
  return formatSignificant(value);
}
