import { readdirSync, readFileSync } from 'node:fs';

/** Units, symbols and marks that are written alike in every language. */
const symbols =
  /(?<![\p{L}\p{N}])(?:cfm|fpm|ft|in|sq|dia|lb|w\.g\.|Btu\/h|°?[FC]|m³\/h|m\/s|kg\/m³|Pa(?:\/m)?|mm|cm|m[²³]?|kW|W|L\/s|dBA?|sones?|r\/D|[CDxyzruv]|[xy]-[xyz]|PNG|SVG|DXF|JPEG|PDF|CSV|A[34]|#job|Gentlebend|(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) \d+, \d{4}|[AP]M)(?![\p{L}\p{N}])/giu;

/** Keys of the catalogue whose values are shown as they stand there. */
const shown = new Set(
  'name what source notes caution remedy printed range reference edition look fix about formula currency'.split(
    ' ',
  ),
);

/** The texts of the parts catalogue. */
export function catalogueTexts(): string[] {
  return readdirSync('shared')
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => textsIn(JSON.parse(readFileSync(`shared/${name}`, 'utf8')), (key) => shown.has(key)));
}

/** Every string of a document at a key that is asked for, whatever it is nested in. */
export function textsIn(part: unknown, wanted: (key: string) => boolean, key = ''): string[] {
  if (typeof part === 'string') return wanted(key) && part.trim() !== '' ? [part] : [];
  if (Array.isArray(part)) return part.flatMap((one) => textsIn(one, wanted, key));
  if (part === null || typeof part !== 'object') return [];
  return Object.entries(part).flatMap(([name, value]) => textsIn(value, wanted, name));
}

/**
 * What a text in the pseudo-language says outside brackets, without what is the person's own, the
 * catalogue's, a figure or a symbol; empty where nothing was left behind.
 */
export function leftBehind(text: string, own: readonly string[]): string {
  let rest = outsideBrackets(text);
  for (const one of own) rest = without(rest, one);
  const bare = rest.replaceAll(symbols, ' ').replaceAll(/\s+/g, ' ').trim();
  // The pseudo-language has no plain letter: a piece of it without its bracket is not left behind.
  return /[A-Za-z]/.test(bare) ? bare : '';
}

function outsideBrackets(text: string): string {
  let depth = 0;
  let said = '';
  for (const sign of text) {
    if (sign === '⟦') depth += 1;
    if (depth === 0) said += sign;
    if (sign === '⟧') depth -= 1;
  }
  return said;
}

/** The text without a name, wherever that stands as words of its own. */
function without(text: string, own: string): string {
  const [all, name] = [text.toLowerCase(), own.toLowerCase()];
  let rest = '';
  let from = 0;
  for (let at = all.indexOf(name); at >= 0; at = all.indexOf(name, at + 1)) {
    const whole = !/\p{L}$/u.test(text.slice(from, at)) && !/^\p{L}/u.test(text.slice(at + own.length));
    if (!whole || at < from) continue;
    rest += `${text.slice(from, at)} `;
    from = at + own.length;
  }
  return rest + text.slice(from);
}
