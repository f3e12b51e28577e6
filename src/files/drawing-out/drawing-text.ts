/**
 * A person's text as one line that any format takes: control characters and line ends become spaces, half
 * surrogates and what no format may hold fall away.
 */
export function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').replace(/[\p{Cs}\ufdd0-\ufdef\ufffe\uffff]/gu, '');
}

/** Text for XML: one line, with the five signs that mean something written as entities. */
export function xmlText(text: string): string {
  return oneLine(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&apos;');
}

/** A line of text longer than this is cut: readers take no more in one field. */
const longest = 1000;

/**
 * Text for DXF: one line in which nothing is taken for a code of the format. `%%d` and its like, `\U+2300`,
 * `\M+` and `^J` come out as the letters that were typed. The escapes are the format's own: from memory.
 */
export function dxfText(text: string): string {
  return [...oneLine(text)]
    .slice(0, longest)
    .join('')
    .replace(/%{2,}/g, (signs) => '%%%'.repeat(signs.length))
    .replace(/\\(?=[UuMm]\+)/g, '\\U+005C')
    .replace(/\^/g, '^ ');
}
