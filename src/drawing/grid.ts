import type { UnitSystem } from '../graph/document.ts';
import { FOOT, formatTrimmed, INCH } from '../units/index.ts';
import type { Viewport } from './viewport.ts';

export interface GridStep {
  /** m between faint lines, and between stronger ones. */
  readonly minor: number;
  readonly major: number;
}

const steps: Readonly<Record<UnitSystem, readonly (readonly [number, number])[]>> = {
  imperial: [
    [INCH / 4, INCH],
    [INCH, 6 * INCH],
    [INCH, FOOT],
    [3 * INCH, FOOT],
    [6 * INCH, 2 * FOOT],
    [FOOT, 4 * FOOT],
    [2 * FOOT, 10 * FOOT],
    [5 * FOOT, 20 * FOOT],
    [10 * FOOT, 50 * FOOT],
  ],
  metric: [
    [0.005, 0.05],
    [0.01, 0.1],
    [0.05, 0.25],
    [0.1, 0.5],
    [0.1, 1],
    [0.25, 1],
    [0.5, 2],
    [1, 5],
    [2, 10],
    [5, 20],
  ],
};

/** Faint lines stand at least this far apart, stronger ones far enough for a number, px. */
const leastMinor = 8;
const leastMajor = 56;

/** The grid for a zoom, in round steps of the user's unit. */
export function gridStep(scale: number, units: UnitSystem): GridStep {
  const rows = steps[units];
  const row =
    rows.find(([minor, major]) => minor * scale >= leastMinor && major * scale >= leastMajor) ??
    rows[rows.length - 1];
  const [minor, major] = row ?? [1, 5];
  return { minor, major };
}

/** Multiples of `step` between two coordinates, m. */
export function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step + 0);
}

/** A coordinate as a ruler shows it: `4'`, `4'-6"`, `1.5`. */
export function rulerText(metres: number, units: UnitSystem): string {
  if (units === 'metric') return formatTrimmed(metres, 3);
  const inches = Math.round(metres / INCH);
  const sign = inches < 0 ? '−' : '';
  const [feet, rest] = [Math.floor(Math.abs(inches) / 12), Math.abs(inches) % 12];
  return rest === 0 ? `${sign}${feet}'` : `${sign}${feet}'-${rest}"`;
}

export interface ScaleBar {
  /** m */
  readonly length: number;
  readonly text: string;
}

/** The longest round length that takes no more than `most` pixels. */
export function scaleBar(view: Viewport, units: UnitSystem, most = 140): ScaleBar {
  const one = units === 'imperial' ? FOOT : 1;
  const lengths = units === 'imperial' ? [0.25, 0.5, 1, 2, 4, 10, 20, 50] : [0.1, 0.2, 0.5, 1, 2, 5, 10, 20];
  const fitting = lengths.filter((n) => n * one * view.scale <= most);
  const n = fitting[fitting.length - 1] ?? (lengths[0] as number);
  const text =
    units === 'metric'
      ? `${formatTrimmed(n)} m`
      : n < 1
        ? `${formatTrimmed(n * 12)} in`
        : `${formatTrimmed(n)} ft`;
  return { length: n * one, text };
}

/** Width of the rulers, px. */
export const RULER = 22;
