import type { FontFile } from './font-file.ts';

/** Tables that a reader of PDF needs for an embedded font with `glyf` outlines, in the order of their tags. */
const kept = ['cvt ', 'fpgm', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'prep'];

/**
 * A font file with only some glyphs, numbered anew: `glyphs[i]` of the font becomes glyph i. What composite
 * glyphs are made of is added behind them. Outlines stay as they are.
 */
export function subsetFont(font: FontFile, glyphs: readonly number[]): Uint8Array {
  const order = [...glyphs];
  const places = new Map(order.map((glyph, i) => [glyph, i]));
  const outlines: Uint8Array[] = [];
  for (let i = 0; i < order.length; i += 1)
    outlines.push(
      outlineOf(font, order[i] ?? 0, (part) => {
        const known = places.get(part);
        if (known !== undefined) return known;
        order.push(part);
        places.set(part, order.length - 1);
        return order.length - 1;
      }),
    );

  const glyf = joined(outlines.map(padded));
  const loca = new DataView(new ArrayBuffer(4 * (order.length + 1)));
  let end = 0;
  outlines.forEach((outline, i) => {
    end += padded(outline).length;
    loca.setUint32(4 * (i + 1), end);
  });
  const hmtx = new DataView(new ArrayBuffer(4 * order.length));
  order.forEach((glyph, i) => {
    hmtx.setUint16(4 * i, font.advance(glyph));
    hmtx.setInt16(4 * i + 2, leftBearing(font, glyph));
  });

  const made = new Map<string, Uint8Array>([
    ['glyf', glyf],
    ['loca', bytesOf(loca)],
    ['hmtx', bytesOf(hmtx)],
    [
      'head',
      changed(font, 'head', (head) => {
        head.setUint32(8, 0);
        head.setInt16(50, 1);
      }),
    ],
    ['hhea', changed(font, 'hhea', (hhea) => hhea.setUint16(34, order.length))],
    ['maxp', changed(font, 'maxp', (maxp) => maxp.setUint16(4, order.length))],
  ]);
  const tables = kept.flatMap((tag): [string, Uint8Array][] => {
    const table = made.get(tag) ?? (font.tables.has(tag) ? copyOf(font, tag) : null);
    return table ? [[tag, table]] : [];
  });
  return fileOf(tables);
}

/** Bits of the flags of a part of a composite glyph. */
const part = { words: 1, scale: 8, more: 32, twoScales: 64, matrix: 128 } as const;

/** A glyph's outline; a composite one with its parts numbered by `placeOf`. */
function outlineOf(font: FontFile, glyph: number, placeOf: (glyph: number) => number): Uint8Array {
  const { bytes } = font;
  const [from, to] = [offsetOf(font, glyph), offsetOf(font, glyph + 1)];
  const glyf = font.tables.get('glyf')?.offset ?? 0;
  const outline = new Uint8Array(bytes.buffer, bytes.byteOffset + glyf + from, to - from).slice();
  const view = new DataView(outline.buffer);
  if (outline.length === 0 || view.getInt16(0) >= 0) return outline;
  for (let at = 10, flags: number = part.more; flags & part.more; ) {
    flags = view.getUint16(at);
    view.setUint16(at + 2, placeOf(view.getUint16(at + 2)));
    at += 4 + (flags & part.words ? 4 : 2);
    if (flags & part.scale) at += 2;
    else if (flags & part.twoScales) at += 4;
    else if (flags & part.matrix) at += 8;
  }
  return outline;
}

function offsetOf({ bytes, tables }: FontFile, glyph: number): number {
  const loca = tables.get('loca')?.offset ?? 0;
  const long = bytes.getInt16((tables.get('head')?.offset ?? 0) + 50) === 1;
  return long ? bytes.getUint32(loca + 4 * glyph) : 2 * bytes.getUint16(loca + 2 * glyph);
}

function leftBearing({ bytes, tables }: FontFile, glyph: number): number {
  const widths = bytes.getUint16((tables.get('hhea')?.offset ?? 0) + 34);
  const hmtx = tables.get('hmtx')?.offset ?? 0;
  return glyph < widths
    ? bytes.getInt16(hmtx + 4 * glyph + 2)
    : bytes.getInt16(hmtx + 4 * widths + 2 * (glyph - widths));
}

function copyOf({ bytes, tables }: FontFile, tag: string): Uint8Array {
  const { offset, length } = tables.get(tag) ?? { offset: 0, length: 0 };
  return new Uint8Array(bytes.buffer, bytes.byteOffset + offset, length).slice();
}

function changed(font: FontFile, tag: string, change: (table: DataView) => void): Uint8Array {
  const table = copyOf(font, tag);
  change(new DataView(table.buffer));
  return table;
}

/** A font file of tables, with the checksums that its format asks for. */
function fileOf(tables: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const count = tables.length;
  const power = 2 ** Math.floor(Math.log2(count));
  const head = new DataView(new ArrayBuffer(12 + 16 * count));
  head.setUint32(0, 0x00010000);
  head.setUint16(4, count);
  head.setUint16(6, 16 * power);
  head.setUint16(8, Math.log2(power));
  head.setUint16(10, 16 * (count - power));
  let offset = head.byteLength;
  tables.forEach(([tag, table], i) => {
    const at = 12 + 16 * i;
    for (let k = 0; k < 4; k += 1) head.setUint8(at + k, tag.charCodeAt(k));
    head.setUint32(at + 4, checksum(table));
    head.setUint32(at + 8, offset);
    head.setUint32(at + 12, table.length);
    offset += padded(table).length;
  });
  const file = joined([bytesOf(head), ...tables.map(([, table]) => padded(table))]);
  const headAt = tables.findIndex(([tag]) => tag === 'head');
  const view = new DataView(file.buffer);
  view.setUint32(view.getUint32(12 + 16 * headAt + 8) + 8, (0xb1b0afba - checksum(file)) >>> 0);
  return file;
}

function checksum(table: Uint8Array): number {
  const whole = padded(table);
  const view = new DataView(whole.buffer, whole.byteOffset, whole.byteLength);
  let sum = 0;
  for (let at = 0; at < whole.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

/** Filled up with zeros to whole words. */
function padded(bytes: Uint8Array): Uint8Array {
  if (bytes.length % 4 === 0) return bytes;
  const whole = new Uint8Array(Math.ceil(bytes.length / 4) * 4);
  whole.set(bytes);
  return whole;
}

function bytesOf(view: DataView): Uint8Array {
  return new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
}

/** Pieces one behind the other. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
