import { reference } from '../../support/reference.ts';

/** One published figure of `fixtures/reference/published.json`, as it stands there. */
export interface Figure {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly value: Value;
  readonly unit: string;
  readonly tolerance_hint: string;
  readonly source: string;
  readonly source_kind: 'found' | 'memory';
}

export type Value = number | string | boolean | readonly number[];

/** Near enough: relative, absolute, or between the two ends of a printed range. */
export type Tolerance = { readonly rel: number } | { readonly abs: number } | 'within the range';

/** How the model comes to a figure of its own. */
export interface Check {
  /** The function or row that it comes from. */
  readonly by: string;
  readonly ours: (figure: Figure) => Value;
  /** In place of what the figure's hint says, with the reason. */
  readonly within?: { readonly tolerance: Tolerance; readonly because: string };
}

export const figures: readonly Figure[] = reference<{ values: readonly Figure[] }>('published.json').values;

/** A number among a figure's inputs. */
export function input(figure: Figure, name: string): number {
  const value = figure.inputs[name];
  if (typeof value !== 'number') throw new Error(`${figure.id} has no number ${name}`);
  return value;
}

/** Ids from `first` to `last` that the file holds. */
export function span(first: string, last: string = first): string[] {
  return figures.filter(({ id }) => id >= first && id <= last).map(({ id }) => id);
}

type Entry = readonly [first: string, last: string, check: Check];

/** The same check for every id of each span. */
export function register(entries: readonly Entry[]): Map<string, Check> {
  return new Map(
    entries.flatMap(([first, last, check]) => span(first, last).map((id) => [id, check] as const)),
  );
}

/** What the figure's hint means in numbers. Words are read here once, for all; percentages as they stand. */
export function toleranceOf({ tolerance_hint: hint, value }: Figure): Tolerance {
  const word = wordy.find(([start]) => hint.startsWith(start));
  if (word) return word[1];
  if (hint.startsWith('rounding') || hint.startsWith('as printed')) return { abs: halfLastDigit(value) };
  const percent = /^([\d.]+)%/.exec(hint)?.[1];
  if (percent !== undefined) return { rel: Number(percent) / 100 };
  const share = /^(\d+e-\d+)/.exec(hint)?.[1];
  if (share !== undefined) return { rel: Number(share) };
  throw new Error(`no reading for the tolerance "${hint}"`);
}

const EXACT: Tolerance = { rel: 1e-6 };

const wordy: readonly (readonly [string, Tolerance])[] = [
  ['exact', EXACT],
  ['uncertain row', EXACT],
  ['rule of thumb', EXACT],
  ['check', EXACT],
  ['guide', EXACT],
  ['table', 'within the range'],
  ['0.1 in rounding', { abs: 0.1 }],
  ['0.1 dB', { abs: 0.1 }],
  ['0.2 dB', { abs: 0.2 }],
  ['2 dB', { abs: 2 }],
  ['cross-check', { rel: 0.002 }],
  ['order', { rel: 0.5 }],
];

/** Half a unit of the last digit that the value is printed with. */
function halfLastDigit(value: Value): number {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

/** True where ours is near enough to the published value. */
export function agrees(ours: Value, published: Value, tolerance: Tolerance): boolean {
  if (typeof published === 'string' || typeof published === 'boolean') return ours === published;
  if (tolerance === 'within the range')
    return (
      typeof ours === 'number' &&
      typeof published !== 'number' &&
      ours >= (published[0] as number) &&
      ours <= (published.at(-1) as number)
    );
  const pairs = listed(ours);
  const theirs = listed(published);
  if (pairs.length !== theirs.length) return false;
  return theirs.every((value, i) => {
    const slack = 'rel' in tolerance ? tolerance.rel * Math.abs(value) : tolerance.abs;
    return Math.abs((pairs[i] as number) - value) <= slack * (1 + 1e-9) + 1e-12;
  });
}

function listed(value: Value): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value === 'object') return value;
  throw new Error(`${value} is not a number`);
}
