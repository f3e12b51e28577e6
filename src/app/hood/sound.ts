import { decibelAFromSones, sonesFromDecibelA } from '../../hydraulics/decibel.ts';
import { formatNumber, formatTrimmed, type Parsed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { readPlain } from '../kitchen/reading.ts';

const says = words.hood.sound;

/** A rated sound as its label gives it: `62 dBA`, or `4 sones`, which is turned into dBA. A bare number is dBA. */
export function readSound(text: string): Parsed {
  if (/sones?\s*$/i.test(text)) {
    const sones = readPlain(text, { what: says.sonesRange, low: 0.1, high: 60, unit: /\s*sones?$/i });
    return sones.ok ? { ok: true, value: decibelAFromSones(sones.value) } : sones;
  }
  return readPlain(text, { what: says.decibelRange, low: 10, high: 110, unit: /\s*db\s*\(?a?\)?$/i });
}

/** A rated sound in dBA with its sones. */
export function soundText(level: number): string {
  return says.decibels(formatTrimmed(level, 1));
}

/** What the level is in sones, by the rule that it is read with. */
export function alsoSones(level: number): string {
  return says.alsoSones(formatNumber(sonesFromDecibelA(level), 1));
}
