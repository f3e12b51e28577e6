import type { Words } from './index.ts';

const plain = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
const accented = 'ÀƁÇÐÉƑĜĤÎĴĶĻṀÑÖÞɊŔŠŢÛṼŴẊÝŽàƀçðéƒĝĥîĵķļɱñöþɋŕšţûṽŵẋýž';

/**
 * The texts of a language that nobody speaks, made from English: letters accented, vowels doubled (a text
 * about a third longer, as in many languages), the whole in brackets. Text on the screen outside brackets
 * was left behind in the program; text that is cut off or runs over would be so in a longer language too.
 */
export function pseudo(english: Words): Words {
  return translated(english) as Words;
}

function translated(part: unknown): unknown {
  if (typeof part === 'string') return bracketed(part, []);
  if (typeof part === 'function') {
    return (...values: unknown[]) => {
      const said: unknown = part(...values);
      return typeof said === 'string' ? bracketed(said, values) : translated(said);
    };
  }
  if (Array.isArray(part)) return part.map(translated);
  if (part !== null && typeof part === 'object') {
    return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, translated(value)]));
  }
  return part;
}

/** A text in brackets and accented, except for the values that stand in it. */
function bracketed(text: string, values: readonly unknown[]): string {
  if (text.trim() === '') return text;
  const kept = values
    .flat()
    .filter((value) => typeof value === 'string' || typeof value === 'number')
    .map(String)
    .filter((value) => value !== '')
    .sort((a, b) => b.length - a.length);
  let said = '';
  for (let at = 0; at < text.length; ) {
    const value = kept.find((one) => text.startsWith(one, at));
    const next = value ?? text.charAt(at);
    said += value ?? longer(next);
    at += next.length;
  }
  return `⟦${said}⟧`;
}

function longer(letter: string): string {
  const at = plain.indexOf(letter);
  const shown = at < 0 ? letter : ([...accented][at] ?? letter);
  return 'aeiou'.includes(letter) ? shown + shown : shown;
}
