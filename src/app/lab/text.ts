import type { Asked } from '../../advice/lessons/lesson.ts';
import type { UnitSystem } from '../../graph/document.ts';
import type { Solved } from '../../graph/solution.ts';
import { formatNumber, formatRun, formatTrimmed, plainStyle, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const says = words.lab.sound;

/** Equivalent length in feet; in metric units metres come first. */
export function equivalentText(length: number, units: UnitSystem): string {
  const feet = formatRun(length, 'imperial');
  return units === 'imperial' ? feet : `${formatRun(length, 'metric')} (${feet})`;
}

/** Sound at the cook; the estimate's uncertainty is told beside it once a page. */
export function soundText(outcome: Solved | null): string {
  return outcome ? says.level(formatNumber(outcome.sound.cook.level, 1)) : '–';
}

/** "+0.4 dB", "−1.2 dB", "no change". */
export function soundChange(before: Solved | null, after: Solved | null): string {
  if (!before || !after) return '–';
  const change = after.sound.cook.level - before.sound.cook.level;
  if (Math.abs(change) < 0.05) return says.noChange;
  return says.change(`${change < 0 ? '−' : '+'}${formatNumber(Math.abs(change), 1)}`);
}

/**
 * The change between two figures that stand beside it, with its sign. It is that of the figures as they are
 * shown: a reader who subtracts them finds the same.
 */
export function changeText(
  kind: 'flow' | 'pressure' | 'velocity',
  before: number,
  after: number,
  units: UnitSystem,
): string {
  const shown = (si: number) => Number(quantity(kind, si, units, plainStyle).figure);
  const change = (shown(after) - shown(before)) / quantity(kind, 1, units).value;
  return `${change < 0 ? '−' : '+'}${quantity(kind, Math.abs(change), units).text}`;
}

/** How a figure is guessed: on a scale of the units shown. */
export interface GuessScale {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** From SI to the units shown, and back. */
  readonly shown: (si: number) => number;
  readonly si: (shown: number) => number;
}

/** What is true, on the scale of the guess. */
export function shownTruth(scale: GuessScale, truth: number): string {
  return `${formatTrimmed(scale.shown(truth), scale.step < 1 ? 1 : 0)} ${scale.unit}`;
}

const ranges = { flow: 'flow', velocity: 'velocity', equivalentLength: 'run' } as const;

/**
 * The scale for a guess.
 *
 * @param most the largest that could be asked for, SI
 */
export function guessScale(of: Asked['of'], most: number, units: UnitSystem): GuessScale {
  if (of === 'sound') return { unit: 'dBA', min: 30, max: 90, step: 1, shown: (x) => x, si: (x) => x };
  const { value: perSi, unit } = quantity(ranges[of], 1, units);
  const end = most * perSi;
  const step = end > 400 ? 10 : end > 120 ? 5 : end > 20 ? 1 : 0.5;
  return {
    unit,
    min: 0,
    max: Math.ceil(end / step) * step,
    step,
    shown: (si) => si * perSi,
    si: (shown) => shown / perSi,
  };
}
