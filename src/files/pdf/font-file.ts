/** A TrueType font as its file holds it: what setting and embedding text needs, and nothing else. */
export interface FontFile {
  readonly bytes: DataView;
  readonly tables: ReadonlyMap<string, Table>;
  readonly name: string;
  /** Units of the font an em. */
  readonly unitsPerEm: number;
  readonly glyphCount: number;
  /** Units of the font; `descent` is below 0. */
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly box: readonly [number, number, number, number];
  /** Degrees, below 0 for letters that lean to the right. */
  readonly italicAngle: number;
  /** 0 where the font has no such letter. */
  glyphOf(codePoint: number): number;
  /** The figure of one width for all, where the font has one; else the glyph itself. */
  tabular(glyph: number): number;
  /** Units of the font. */
  advance(glyph: number): number;
}

export interface Table {
  readonly offset: number;
  readonly length: number;
}

/**
 * Reads a TrueType font (OpenType with `glyf` outlines).
 *
 * @throws Error for any other file, such as a compressed web font or one with PostScript outlines
 */
export function readFont(file: Uint8Array): FontFile {
  const bytes = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < 12 || bytes.getUint32(0) !== 0x00010000) throw new Error('not a TrueType font');
  const tables = new Map<string, Table>();
  for (let i = 0; i < bytes.getUint16(4); i += 1) {
    const at = 12 + 16 * i;
    tables.set(tagAt(bytes, at), { offset: bytes.getUint32(at + 8), length: bytes.getUint32(at + 12) });
  }
  const start = (tag: string): number => {
    const table = tables.get(tag);
    if (!table) throw new Error(`the font has no table ${tag}`);
    return table.offset;
  };
  const [head, hhea, hmtx, os2] = [start('head'), start('hhea'), start('hmtx'), start('OS/2')];
  start('glyf');
  start('loca');
  const widths = bytes.getUint16(hhea + 34);
  const tabularOf = singleSubstitution(bytes, tables.get('GSUB')?.offset, 'tnum');
  const corner = (i: number) => bytes.getInt16(head + 36 + 2 * i);
  return {
    bytes,
    tables,
    name: postScriptName(bytes, start('name')),
    unitsPerEm: bytes.getUint16(head + 18),
    glyphCount: bytes.getUint16(start('maxp') + 4),
    ascent: bytes.getInt16(hhea + 4),
    descent: bytes.getInt16(hhea + 6),
    capHeight: bytes.getInt16(os2 + 88),
    box: [corner(0), corner(1), corner(2), corner(3)],
    italicAngle: bytes.getInt32(start('post') + 4) / 65536,
    glyphOf: characterMap(bytes, start('cmap')),
    tabular: (glyph) => tabularOf.get(glyph) ?? glyph,
    advance: (glyph) => bytes.getUint16(hmtx + 4 * Math.min(glyph, widths - 1)),
  };
}

function tagAt(bytes: DataView, at: number): string {
  return String.fromCharCode(...Array.from({ length: 4 }, (_, i) => bytes.getUint8(at + i)));
}

/** Name 6 of the name table, in its Windows form. */
function postScriptName(bytes: DataView, at: number): string {
  const storage = at + bytes.getUint16(at + 4);
  for (let i = 0; i < bytes.getUint16(at + 2); i += 1) {
    const record = at + 6 + 12 * i;
    if (bytes.getUint16(record) !== 3 || bytes.getUint16(record + 6) !== 6) continue;
    const text = storage + bytes.getUint16(record + 10);
    const letters = bytes.getUint16(record + 8) / 2;
    return String.fromCharCode(...Array.from({ length: letters }, (_, k) => bytes.getUint16(text + 2 * k)));
  }
  return 'Font';
}

/** The map from characters to glyphs: all of Unicode (format 12) where there is one, else its first plane (format 4). */
function characterMap(bytes: DataView, at: number): (codePoint: number) => number {
  let plane: number | null = null;
  for (let i = 0; i < bytes.getUint16(at + 2); i += 1) {
    const map = at + bytes.getUint32(at + 8 + 8 * i);
    const format = bytes.getUint16(map);
    if (format === 12) return (code) => inGroups(bytes, map, code);
    if (format === 4) plane = map;
  }
  const map = plane;
  if (map === null) throw new Error('the font has no map of characters that can be read');
  return (code) => inSegments(bytes, map, code);
}

function inGroups(bytes: DataView, map: number, code: number): number {
  let [low, high] = [0, bytes.getUint32(map + 12) - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const group = map + 16 + 12 * middle;
    const [first, last] = [bytes.getUint32(group), bytes.getUint32(group + 4)];
    if (code < first) high = middle - 1;
    else if (code > last) low = middle + 1;
    else return bytes.getUint32(group + 8) + code - first;
  }
  return 0;
}

function inSegments(bytes: DataView, map: number, code: number): number {
  const twice = bytes.getUint16(map + 6);
  for (let i = 0; i < twice; i += 2) {
    if (code > bytes.getUint16(map + 14 + i)) continue;
    const first = bytes.getUint16(map + 16 + twice + i);
    if (code < first) return 0;
    const delta = bytes.getUint16(map + 16 + 2 * twice + i);
    const rangeAt = map + 16 + 3 * twice + i;
    const range = bytes.getUint16(rangeAt);
    if (range === 0) return (code + delta) & 0xffff;
    const glyph = bytes.getUint16(rangeAt + range + 2 * (code - first));
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
  }
  return 0;
}

/** The single substitutions (lookup type 1) of a feature of the GSUB table; empty where it has none. */
function singleSubstitution(
  bytes: DataView,
  gsub: number | undefined,
  feature: string,
): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  if (gsub === undefined) return found;
  const features = gsub + bytes.getUint16(gsub + 6);
  const lookups = gsub + bytes.getUint16(gsub + 8);
  for (let i = 0; i < bytes.getUint16(features); i += 1) {
    const record = features + 2 + 6 * i;
    if (tagAt(bytes, record) !== feature) continue;
    const at = features + bytes.getUint16(record + 4);
    for (let k = 0; k < bytes.getUint16(at + 2); k += 1) {
      const lookup = lookups + bytes.getUint16(lookups + 2 + 2 * bytes.getUint16(at + 4 + 2 * k));
      if (bytes.getUint16(lookup) !== 1) continue;
      for (let s = 0; s < bytes.getUint16(lookup + 4); s += 1)
        substitute(bytes, lookup + bytes.getUint16(lookup + 6 + 2 * s), found);
    }
  }
  return found;
}

function substitute(bytes: DataView, table: number, into: Map<number, number>): void {
  const covered = coverage(bytes, table + bytes.getUint16(table + 2));
  const format = bytes.getUint16(table);
  covered.forEach((glyph, i) => {
    const other =
      format === 1 ? (glyph + bytes.getInt16(table + 4)) & 0xffff : bytes.getUint16(table + 6 + 2 * i);
    if (!into.has(glyph)) into.set(glyph, other);
  });
}

function coverage(bytes: DataView, at: number): readonly number[] {
  const count = bytes.getUint16(at + 2);
  if (bytes.getUint16(at) === 1)
    return Array.from({ length: count }, (_, i) => bytes.getUint16(at + 4 + 2 * i));
  return Array.from({ length: count }, (_, i) => at + 4 + 6 * i).flatMap((range) => {
    const first = bytes.getUint16(range);
    return Array.from({ length: bytes.getUint16(range + 2) - first + 1 }, (_, k) => first + k);
  });
}
