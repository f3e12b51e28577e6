import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFont } from '../../../../src/files/pdf/font-file.ts';
import { subsetFont } from '../../../../src/files/pdf/font-subset.ts';
import { lackingIn, lettersOf } from '../../../../src/files/pdf/letters.ts';
import { sheetFonts } from '../../../support/pdf.ts';

const font = readFont(sheetFonts.regular);
const glyph = (letter: string) => font.glyphOf(letter.codePointAt(0) ?? 0);

/** The outline of a glyph as its file has it. */
function outline(file: ReturnType<typeof readFont>, index: number): string {
  const { bytes, tables } = file;
  const [loca, glyf] = [tables.get('loca')?.offset ?? 0, tables.get('glyf')?.offset ?? 0];
  const [from, to] = [bytes.getUint32(loca + 4 * index), bytes.getUint32(loca + 4 * index + 4)];
  return Array.from({ length: to - from }, (_, i) => bytes.getUint8(glyf + from + i)).join();
}

describe('a TrueType font', () => {
  it('tells its name and its em', () => {
    expect([font.name, font.unitsPerEm]).toEqual(['Inter-Regular', 2048]);
  });

  it('has a letter for everything that a formula is written with', () => {
    const missing = [...'ρηελθζΔΣπ√≤≥≈×·−½²³₁₀°′″→–“”'].filter((letter) => glyph(letter) === 0);
    expect(missing).toEqual([]);
  });

  it('has figures that are all of one width', () => {
    const widths = [...'0123456789'].map((figure) => font.advance(font.tabular(glyph(figure))));
    expect(new Set(widths).size).toBe(1);
    expect(font.advance(glyph('1'))).toBeLessThan(font.advance(glyph('0')));
  });

  it('is refused where it is packed for the web', () => {
    const packed = readFileSync(
      'node_modules/@fontsource-variable/inter/files/inter-latin-wght-normal.woff2',
    );
    expect(() => readFont(packed)).toThrow('not a TrueType font');
  });
});

describe('a subset of a font', () => {
  const letters = [...'Duct'];
  const subset = readSubset(['', ...letters].map((letter) => (letter === '' ? 0 : glyph(letter))));

  it('keeps the outlines and widths of its letters', () => {
    letters.forEach((letter, i) => {
      expect(outline(subset, i + 1)).toMatch(new RegExp(`^${outline(font, glyph(letter))}(,0){0,3}$`));
      expect(subset.advance(i + 1)).toBe(font.advance(glyph(letter)));
    });
  });

  it('holds nothing else', () => {
    expect(subset.glyphCount).toBe(letters.length + 1);
  });

  it('brings along what a letter is put together from', () => {
    const composite = [...'ÄÅÉĀŠ'].find((letter) => {
      const { bytes, tables } = font;
      const loca = tables.get('loca')?.offset ?? 0;
      const at = (tables.get('glyf')?.offset ?? 0) + bytes.getUint32(loca + 4 * glyph(letter));
      return bytes.getInt16(at) < 0;
    });
    expect(composite).toBeDefined();
    expect(readSubset([0, glyph(composite ?? '')]).glyphCount).toBeGreaterThan(2);
  });

  it('has the checksum that its format asks for', () => {
    const bytes = subsetFont(font, [0, glyph('A')]);
    const view = new DataView(bytes.buffer);
    let sum = 0;
    for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
    expect(sum).toBe(0xb1b0afba);
  });
});

/** A subset read again; a name, a character map and metrics for Windows are not embedded, so it borrows them. */
function readSubset(glyphs: readonly number[]) {
  const bytes = subsetFont(font, glyphs);
  const view = new DataView(bytes.buffer);
  const tables = new Map(
    Array.from({ length: view.getUint16(4) }, (_, i) => {
      const at = 12 + 16 * i;
      const tag = String.fromCharCode(...bytes.slice(at, at + 4));
      return [tag, { offset: view.getUint32(at + 8), length: view.getUint32(at + 12) }] as const;
    }),
  );
  const hmtx = tables.get('hmtx')?.offset ?? 0;
  return {
    ...font,
    bytes: view,
    tables,
    glyphCount: view.getUint16((tables.get('maxp')?.offset ?? 0) + 4),
    advance: (index: number) => view.getUint16(hmtx + 4 * index),
  };
}

describe('a text in a font', () => {
  const shown = (text: string) =>
    lettersOf(font, text)
      .map((letter) => String.fromCodePoint(letter.shown))
      .join('');

  it('stays as it is in Latin, Cyrillic, Greek and Vietnamese', () => {
    for (const text of ['Küche, çukur, řez', 'Кухня, вытяжка', 'Κουζίνα ρ = 1,2', 'Bếp nhà Nguyễn']) {
      expect(shown(text)).toBe(text);
      expect(lackingIn(font, text)).toEqual([]);
    }
  });

  it('is written in plainer letters where those say the same', () => {
    expect(shown('⌀２００ ㎡')).toBe('Ø200 m2');
    expect(lackingIn(font, '⌀２００ ㎡')).toEqual([]);
  });

  it('has a white square for a letter that the font lacks, and tells each of them once', () => {
    expect(shown('厨房 A 厨')).toBe('□□ A □');
    expect(lackingIn(font, '厨房 A 厨')).toEqual(['厨', '房']);
    expect(lackingIn(font, '□')).toEqual([]);
  });

  it('leaves out what has no shape', () => {
    expect(shown('a\u200d\u200e\ufe0fb')).toBe('ab');
  });
});
