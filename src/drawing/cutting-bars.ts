import type { Bar, Cut, CuttingPlan } from '../advice/parts/plan.ts';

/** A piece, or what is left over, as a box along its stock length. */
export interface BarBox {
  /** From the start of the length, in the drawing's unit. */
  readonly x: number;
  readonly width: number;
  /** Null for what is left over. */
  readonly cut: Cut | null;
  /** Where the part begins that goes into the neighbour; null where none does. */
  readonly lap: number | null;
  readonly label: string;
  /** Whether the label stands in the box; else below it. */
  readonly inside: boolean;
  /** The middle of the label. */
  readonly at: number;
}

/** Stock lengths that are cut alike, drawn once. */
export interface BarDrawing {
  /** Numbers of the first and the last of them in the plan, from 1. */
  readonly first: number;
  readonly last: number;
  readonly width: number;
  readonly boxes: readonly BarBox[];
  /** True where a label stands below. */
  readonly labelsBelow: boolean;
}

export interface BarStyle {
  /** Of the drawing's unit, a metre. */
  readonly scale: number;
  readonly textWidth: (text: string) => number;
  /** What a length is called, and what is left over. */
  readonly piece: (metres: number) => string;
  readonly left: (metres: number) => string;
}

/** An offcut shorter than this is not drawn, m. */
const leastOffcut = 1e-3;
const gap = 8;

/**
 * The stock lengths of a cutting plan to scale, with the label of every piece in its box or, where it is too narrow, below
 * it, none over another. Lengths that are cut alike are drawn once.
 */
export function barDrawings({ bars, stock, make }: CuttingPlan, style: BarStyle): readonly BarDrawing[] {
  const width = stock * style.scale;
  const groups: { first: number; last: number; bars: Bar[] }[] = [];
  bars.forEach((bar, i) => {
    const group = groups.at(-1);
    const alike = group?.bars[0] && sameCuts(group.bars[0], bar);
    if (group && alike) {
      group.last = i + 1;
      group.bars.push(bar);
    } else groups.push({ first: i + 1, last: i + 1, bars: [bar] });
  });
  return groups.map(({ first, last, bars: alike }) => {
    const boxes = labelled(boxesOf(alike, make, style), width, style);
    return { first, last, width, boxes, labelsBelow: boxes.some(({ inside }) => !inside) };
  });
}

function sameCuts(a: Bar, b: Bar): boolean {
  return (
    a.cuts.length === b.cuts.length &&
    a.cuts.every(({ length }, i) => Math.abs(length - (b.cuts[i]?.length ?? 0)) < 1e-4)
  );
}

type Unplaced = Omit<BarBox, 'inside' | 'at'>;

function boxesOf(alike: readonly Bar[], make: CuttingPlan['make'], style: BarStyle): Unplaced[] {
  const [bar] = alike;
  const { scale } = style;
  let at = 0;
  const boxes = (bar?.cuts ?? []).map((cut, k): Unplaced => {
    const segments = [...new Set(alike.flatMap(({ cuts }) => cuts[k]?.segments ?? []))];
    const lap = cut.length - cut.covers;
    const box = {
      x: at * scale,
      width: cut.length * scale,
      cut: { ...cut, segments },
      lap: lap > 1e-6 ? (at + cut.covers) * scale : null,
      label: style.piece(cut.length),
    };
    at += cut.length + make.kerf;
    return box;
  });
  const offcut = bar?.offcut ?? 0;
  if (offcut > leastOffcut)
    boxes.push({ x: at * scale, width: offcut * scale, cut: null, lap: null, label: style.left(offcut) });
  return boxes;
}

/** Labels below are kept apart from left to right, then drawn back within the length. */
function labelled(boxes: readonly Unplaced[], width: number, { textWidth }: BarStyle): BarBox[] {
  const wide = boxes.map(({ label }) => textWidth(label));
  const clear = boxes.map(({ x, width: across, lap }) => (lap === null ? across : lap - x));
  const inside = boxes.map((_, i) => (wide[i] ?? 0) + gap <= (clear[i] ?? 0));
  const at = boxes.map(({ x, width: across }, i) => x + (inside[i] ? (clear[i] ?? 0) : across) / 2);
  let end = Number.NEGATIVE_INFINITY;
  const below = boxes.flatMap((_, i) => (inside[i] ? [] : [i]));
  for (const i of below) {
    const half = (wide[i] ?? 0) / 2;
    at[i] = Math.max(at[i] ?? 0, end + gap + half, half);
    end = (at[i] ?? 0) + half;
  }
  let start = width;
  for (const i of below.toReversed()) {
    const half = (wide[i] ?? 0) / 2;
    at[i] = Math.min(at[i] ?? 0, start - half);
    start = (at[i] ?? 0) - half - gap;
  }
  return boxes.map((box, i) => ({ ...box, inside: inside[i] ?? true, at: at[i] ?? 0 }));
}
