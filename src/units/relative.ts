import { words } from '../words/index.ts';
import { type ParseLengthOptions, parseLength } from './length.ts';
import { type Parsed, parsed, refused, type System } from './parsed.ts';
import { parseQuantity } from './quantity.ts';
import { plain, quoted } from './text.ts';

const say = words.units.length;

/**
 * A length or a place in metres, typed outright or as a step from where it is now: `+6"` and `@6"` are
 * 6 in more than `from`, `-150mm` and `@-150mm` are 150 mm less, anything else is the value itself. A
 * place below 0 is typed as `=-150mm`, and `=` before any value says that it is no step. Refuses what
 * `parseLength` refuses, and a result below 0 unless `negative`.
 */
export function parseRelativeLength(
  text: string,
  system: System,
  from: number,
  options: ParseLengthOptions = {},
): Parsed {
  const typed = plain(text);
  const outright = typed.startsWith('=');
  const step = !outright && /^[@+-]/.test(typed);
  const rest = typed.replace(/^[=@]\s*/, '');
  if (rest === '') return refused(say.noStep(quoted(text)));
  const length = parseLength(rest, system, { ...options, negative: step || options.negative === true });
  if (!length.ok || !step) return length;
  const value = from + length.value;
  if (value < 0 && !options.negative) return refused(say.lessThanNothing(quoted(text)));
  return parsed(value);
}

/** True where `parseRelativeLength` takes a text as a step. */
export function isStep(text: string): boolean {
  return /^[@+-]/.test(plain(text));
}

/**
 * A direction or an angle in degrees: `45`, `45°`, `<45`, `∠45°`, `22.5 deg`, as a step from where it is
 * `<+15` or `@15`. Refuses what `parseAngle` refuses.
 */
export function parseDirection(text: string, system: System, from = 0): Parsed {
  const typed = plain(text).replace(/^[<∠]\s*/, '');
  const step = /^[@+]/.test(typed);
  const angle = parseQuantity('angle', typed.replace(/^@\s*/, ''), system);
  return angle.ok && step ? parsed(from + angle.value) : angle;
}
