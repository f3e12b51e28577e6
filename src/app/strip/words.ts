import { formatNumber } from '../../units/index.ts';
import { words } from '../../words/index.ts';
/** A level with how far it may be off: `62 dBA ±5`; a dash where nothing is heard. */
export function decibels(level: number, uncertainty: number): string {
  return Number.isFinite(level)
    ? words.strip.sound.decibels(formatNumber(level, 0), formatNumber(uncertainty, 0))
    : '–';
}

/** Loudness: a decimal below ten, none above. */
export function sonesText(sones: number): string {
  if (!Number.isFinite(sones)) return '–';
  const figure = formatNumber(sones, sones < 9.95 ? 1 : 0);
  return words.strip.sound.sones(figure, Math.round(sones * 10) / 10);
}
