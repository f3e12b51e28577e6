import { formatNumber } from '../../units/index.ts';

/** A label in units of the drawing: where its text is anchored, and how. */
export interface PlacedLabel {
  readonly x: number;
  /** Of the base line. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of small type at 11 units: the mean width of a letter or figure, and the height over and under the base line. */
const LETTER = 6.3;
const ABOVE = 9;
const BELOW = 3;

/** Marks of an axis with the same decimals throughout. */
export function tickTexts(ticks: readonly number[]): string[] {
  const decimals = Math.max(0, ...ticks.map((tick) => `${+tick.toFixed(6)}`.split('.')[1]?.length ?? 0));
  return ticks.map((tick) => formatNumber(tick, decimals));
}

/** What a text takes at a place. */
export function boxOf(text: string, { x, y, anchor }: PlacedLabel): Box {
  const width = text.length * LETTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ABOVE, bottom: y + BELOW };
}

/**
 * Places for labels beside points: above, below, or at a side, the first that is free of all boxes before it and
 * inside the frame; null for one that finds none. Labels that come first choose first.
 */
export function labelsBeside(
  points: readonly { readonly x: number; readonly y: number; readonly text: string }[],
  taken: readonly Box[],
  frame: Box,
): (PlacedLabel | null)[] {
  const boxes = [...taken, ...points.map(({ x, y }) => around(x, y))];
  return points.map(({ x, y, text }) => {
    const places: readonly PlacedLabel[] = [
      { x, y: y - 8, anchor: 'middle' },
      { x, y: y + 17, anchor: 'middle' },
      { x: x + 8, y: y + 4, anchor: 'start' },
      { x: x - 8, y: y + 4, anchor: 'end' },
    ];
    const place = places.find((each) => {
      const box = boxOf(text, each);
      return within(box, frame) && !boxes.some((other) => overlap(box, other));
    });
    if (place) boxes.push(boxOf(text, place));
    return place ?? null;
  });
}

/** Base lines that keep their order from the top and stand a line apart. */
export function linesApart(wanted: readonly number[]): number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y);
  const placed = [...wanted];
  let last = Number.NEGATIVE_INFINITY;
  for (const { y, index } of order) {
    last = Math.max(y, last + ABOVE + BELOW);
    placed[index] = last;
  }
  return placed;
}

function around(x: number, y: number): Box {
  const r = 3;
  return { left: x - r, right: x + r, top: y - r, bottom: y + r };
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function within(a: Box, frame: Box): boolean {
  return a.left >= frame.left && a.right <= frame.right && a.top >= frame.top && a.bottom <= frame.bottom;
}
