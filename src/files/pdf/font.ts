import type { FontFile } from './font-file.ts';
import { subsetFont } from './font-subset.ts';
import { type Letter, lettersOf } from './letters.ts';
import { type PdfObjects, type Ref, textString } from './objects.ts';

/** Millimetres a point. */
export const POINT = 25.4 / 72;

/** A font that a PDF file embeds as far as its text uses it. */
export interface PdfFont {
  /** What pages call it: `F1`. */
  readonly name: string;
  readonly file: FontFile;
  /** mm at a size in points; `tabular` takes figures of one width. */
  width(text: string, size: number, tabular?: boolean): number;
  /** The text's glyphs in hexadecimal, which from then on are embedded. */
  encode(text: string, tabular?: boolean): string;
  /** Adds the font to a file; null where no text was set in it. */
  embed(objects: PdfObjects): Ref | null;
}

/** One character as it is embedded. */
interface Used {
  readonly glyph: number;
  readonly code: number;
}

export function createFont(name: string, file: FontFile): PdfFont {
  const used: Used[] = [{ glyph: 0, code: 0xfffd }];
  const places = new Map<number, number>();
  const glyphOf = ({ shown }: Letter, tabular: boolean): number => {
    const glyph = file.glyphOf(shown);
    return tabular ? file.tabular(glyph) : glyph;
  };
  const advances = new Map<number, number>();
  const advanceOf = (letter: Letter, tabular: boolean): number => {
    const key = letter.code * 2 + (tabular ? 1 : 0);
    const known = advances.get(key);
    if (known !== undefined) return known;
    const advance = file.advance(glyphOf(letter, tabular));
    advances.set(key, advance);
    return advance;
  };
  const place = (letter: Letter, tabular: boolean): number => {
    const key = letter.code * 2 + (tabular ? 1 : 0);
    const known = places.get(key);
    if (known !== undefined) return known;
    const made = used.push({ glyph: glyphOf(letter, tabular), code: letter.code }) - 1;
    places.set(key, made);
    return made;
  };
  return {
    name,
    file,
    width(text, size, tabular = false) {
      let units = 0;
      for (const letter of lettersOf(file, text)) units += advanceOf(letter, tabular);
      return (units / file.unitsPerEm) * size * POINT;
    },
    encode: (text, tabular = false) =>
      lettersOf(file, text)
        .map((letter) => hex(place(letter, tabular)))
        .join(''),
    embed: (objects) => (used.length > 1 ? embedded(objects, file, used) : null),
  };
}

function hex(value: number): string {
  return value.toString(16).padStart(4, '0');
}

/** A composite font whose codes are the glyphs of its subset, with the way back from them to Unicode. */
function embedded(objects: PdfObjects, file: FontFile, used: readonly Used[]): Ref {
  const per = (units: number) => Math.round((units * 1000) / file.unitsPerEm);
  const subset = subsetFont(
    file,
    used.map(({ glyph }) => glyph),
  );
  const data = objects.addStream(subset, `/Length1 ${subset.length} `);
  const baseName = `${tagOf(used)}+${file.name}`;
  const descriptor = objects.add(
    `<< /Type /FontDescriptor /FontName /${baseName} /Flags 4 /FontBBox [${file.box.map(per).join(' ')}] ` +
      `/ItalicAngle ${file.italicAngle} /Ascent ${per(file.ascent)} /Descent ${per(file.descent)} ` +
      `/CapHeight ${per(file.capHeight)} /StemV 80 /FontFile2 ${data} 0 R >>`,
  );
  const widths = used.map(({ glyph }) => per(file.advance(glyph)));
  const descendant = objects.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${baseName} ` +
      '/CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> ' +
      `/FontDescriptor ${descriptor} 0 R /CIDToGIDMap /Identity /DW 0 /W [0 [${widths.join(' ')}]] >>`,
  );
  const toUnicode = objects.addStream(unicodeMap(used));
  return objects.add(
    `<< /Type /Font /Subtype /Type0 /BaseFont /${baseName} /Encoding /Identity-H ` +
      `/DescendantFonts [${descendant} 0 R] /ToUnicode ${toUnicode} 0 R >>`,
  );
}

/** Six capitals that tell one subset of a font from another. */
function tagOf(used: readonly Used[]): string {
  let hash = 0;
  for (const { glyph } of used) hash = (hash * 31 + glyph) % 26 ** 6;
  return Array.from({ length: 6 }, (_, i) =>
    String.fromCharCode(65 + (Math.floor(hash / 26 ** i) % 26)),
  ).join('');
}

function unicodeMap(used: readonly Used[]): string {
  const lines = used.map(({ code }, i) => {
    const text = textString(String.fromCodePoint(code)).slice(5, -1);
    return `<${hex(i)}> <${text}>`;
  });
  const blocks = Array.from({ length: Math.ceil(lines.length / 100) }, (_, i) => {
    const some = lines.slice(i * 100, i * 100 + 100);
    return `${some.length} beginbfchar\n${some.join('\n')}\nendbfchar\n`;
  });
  return (
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n' +
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n' +
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n' +
    '1 begincodespacerange\n<0000> <ffff>\nendcodespacerange\n' +
    `${blocks.join('')}endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n`
  );
}
