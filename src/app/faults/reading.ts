import type { MeasuredKind } from '../../advice/faults/types.ts';
import {
  formatFlow,
  formatPressure,
  type Parsed,
  parseFlow,
  parsePressure,
  type System,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { readSound, soundText } from '../hood/sound.ts';
import { above } from '../kitchen/reading.ts';

/** A measured value as people write it. */
export function readMeasured(kind: MeasuredKind, text: string, units: System): Parsed {
  switch (kind) {
    case 'hood air':
    case 'cap air':
      return above(parseFlow(text, units), words.faults.measured.airRefused);
    case 'sound':
      return readSound(text);
    case 'house pressure':
      return pascals(text);
    default:
      return parsePressure(text, units);
  }
}

/** House pressures are small, and spoken of in pascals in both systems. */
function pascals(text: string): Parsed {
  return parsePressure(text, 'metric');
}

export function measuredText(kind: MeasuredKind, value: number, units: System): string {
  switch (kind) {
    case 'hood air':
    case 'cap air':
      return formatFlow(value, units);
    case 'sound':
      return soundText(value);
    case 'house pressure':
      return formatPressure(value, 'metric');
    default:
      return formatPressure(value, units);
  }
}
