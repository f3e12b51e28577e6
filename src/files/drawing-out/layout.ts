import type { DrawnSheet, SheetDrawing } from '../../drawing/marks.ts';
import { isFlat, type SheetQuery, sheetDrawing } from '../../drawing/sheet-drawing.ts';
import { fittingScale } from '../../drawing/standard-scale.ts';
import { sheetTitles } from '../../drawing/view.ts';
import { schemeOf } from '../../graph/infer.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';

/** A drawing on a board: its upper left corner, mm of paper, and what stands over it. */
export interface Pinned {
  readonly drawing: SheetDrawing;
  readonly x: number;
  readonly y: number;
  readonly heading: string;
}

/** One or several sheets at one scale on one piece of paper, mm. */
export interface Board {
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  readonly sheets: readonly Pinned[];
  readonly footer: Footer;
}

export interface Footer {
  /** The left end of its first line, mm of paper, and how far apart its lines are. */
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly bar: ScaleBar;
}

/** A bar of round length, in parts of alternating ink. */
export interface ScaleBar {
  readonly x: number;
  readonly y: number;
  /** mm of paper. */
  readonly width: number;
  readonly parts: number;
  readonly text: string;
}

export const allSheets = ['floor', 'section-x', 'section-y', 'isometric'] as const;

/** What is drawn: one sheet, or all of them placed as one would draw them. */
export type Choice = DrawnSheet | 'all';

const gap = 10;
const edge = 8;
const headingHeight = 8;
/** Height of a line of the footer, mm. */
export const footerLine = 4.6;
/** Font sizes of headings and of the footer, mm. */
export const headingSize = 3.6;
export const footerSize = 2.9;
const barWidth = 70;

/**
 * The sheets of a choice on one piece of paper. All of them stand as usual: the section looking north over the
 * floor that it shares its widths with, the one looking west beside it at the same heights, the isometric in the
 * corner.
 */
export function boardOf(query: Omit<SheetQuery, 'sheet'>, choice: Choice): Board {
  const { scale } = query;
  const sheets = choice === 'all' ? allSheets : [choice];
  const drawings = new Map(sheets.map((sheet) => [sheet, sheetDrawing({ ...query, sheet })]));
  const placed = choice === 'all' ? together(drawings) : alone(drawings);
  const right = Math.max(...placed.map(({ drawing, x }) => x + drawing.width));
  const bottom = Math.max(...placed.map(({ drawing, y }) => y + drawing.height));
  const footer = footerOf(query, edge, bottom + footerLine * 1.5);
  const wide = Math.max(...footer.lines.map((text) => text.length)) * footerSize * 0.52;
  return {
    scale,
    width: Math.max(right, edge + wide, footer.bar.x + footer.bar.width + 20) + edge,
    height: footer.y + footerLine * footer.lines.length + edge,
    sheets: placed,
    footer,
  };
}

/** The largest standard scale at which a choice fits a frame, mm: the smallest where none does. */
export function scaleThatFits(
  query: Omit<SheetQuery, 'sheet' | 'scale'>,
  choice: Choice,
  frame: { readonly width: number; readonly height: number },
): number {
  return fittingScale(query.job.units, (scale) => {
    const { width, height } = boardOf({ ...query, scale }, choice);
    return width <= frame.width && height <= frame.height;
  });
}

function alone(drawings: ReadonlyMap<DrawnSheet, SheetDrawing>): Pinned[] {
  return [...drawings.values()].map((drawing) => ({
    drawing,
    x: edge,
    y: edge + headingHeight,
    heading: headingOf(drawing),
  }));
}

function together(drawings: ReadonlyMap<DrawnSheet, SheetDrawing>): Pinned[] {
  const get = (sheet: DrawnSheet) => drawings.get(sheet) as SheetDrawing;
  const [floor, north, west, space] = [get('floor'), get('section-x'), get('section-y'), get('isometric')];
  const mm = 1000 / floor.scale;
  const leftOf = ({ bounds }: SheetDrawing) => bounds.minU * mm;
  const topOf = ({ bounds }: SheetDrawing) => -bounds.maxV * mm;
  const left = Math.min(leftOf(floor), leftOf(north));
  const top = Math.min(topOf(north), topOf(west));
  const column = Math.max(leftOf(floor) + floor.width, leftOf(north) + north.width) - left + edge + gap;
  const row = Math.max(topOf(north) + north.height, topOf(west) + west.height) - top + edge + headingHeight;
  const at = (drawing: SheetDrawing, x: number, y: number): Pinned => ({
    drawing,
    x,
    y,
    heading: headingOf(drawing),
  });
  const second = row + gap + headingHeight;
  return [
    at(north, edge + leftOf(north) - left, edge + headingHeight + topOf(north) - top),
    at(west, column, edge + headingHeight + topOf(west) - top),
    at(floor, edge + leftOf(floor) - left, second),
    at(space, column, second),
  ];
}

function headingOf({ sheet, scale }: SheetDrawing): string {
  if (!isFlat(sheet)) return words.drawings.heading.isometric(scale);
  const { name, looking } = sheetTitles[sheet];
  return words.drawings.heading.sheet(name, looking, scale);
}

function footerOf({ job, route, scale }: Omit<SheetQuery, 'sheet'>, x: number, y: number): Footer {
  const says = words.drawings.footer;
  const title = job.title.trim() === '' ? words.drawings.untitled : job.title;
  const lines = [says.title(title, schemeOf(job, route.schemeId).name), says.measure(scale), says.caution];
  const unit = job.units === 'imperial' ? 0.3048 : 1;
  const rounds = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];
  const round = rounds.findLast((n) => (n * unit * 1000) / scale <= barWidth) ?? 0.1;
  const text = formatLength(round * unit, job.units);
  const bar = { x, y: y + footerLine * lines.length, width: (round * unit * 1000) / scale, parts: 5, text };
  return { x, y, lines, bar };
}
