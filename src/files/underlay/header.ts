export type PictureKind = 'png' | 'jpeg' | 'svg' | 'pdf' | 'dxf';

const INCH = 0.0254;

/** What a file is, by its first bytes, and by its name only for a text that does not say. */
export function kindOf(bytes: Uint8Array, name: string): PictureKind | null {
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png';
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return 'jpeg';
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 2048));
  if (head.includes('%PDF-')) return 'pdf';
  if (/^\s*(?:999\s[^\n]*\n\s*)*0\s*\r?\n\s*SECTION\b/.test(head)) return 'dxf';
  const markup = /^(?:ï»¿)?\s*</.test(head);
  if (markup && (/<svg[\s>]/.test(head) || /\.svg$/i.test(name))) return 'svg';
  if (/\.dxf$/i.test(name) && !head.includes('\0')) return 'dxf';
  return null;
}

export interface PictureHeader {
  readonly width: number;
  readonly height: number;
  /** Metres of paper a pixel, where the file says. */
  readonly paper: number | null;
}

/** Size and resolution as a PNG or JPEG file states them; `null` for a header that cannot be read. */
export function readHeader(bytes: Uint8Array, kind: 'png' | 'jpeg'): PictureHeader | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return kind === 'png' ? pngHeader(view) : jpegHeader(view);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function pngHeader(view: DataView): PictureHeader | null {
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  if (width === 0 || height === 0) return null;
  let paper: number | null = null;
  for (let at = 8; at + 12 <= view.byteLength; at += 12 + view.getUint32(at)) {
    const chunk = view.getUint32(at + 4);
    if (chunk === 0x49444154) break;
    if (chunk !== 0x70485973) continue;
    const perMetre = view.getUint32(at + 8);
    if (view.getUint8(at + 16) === 1 && perMetre > 0) paper = printed(1 / perMetre);
  }
  return { width, height, paper };
}

function jpegHeader(view: DataView): PictureHeader | null {
  let paper: number | null = null;
  for (let at = 2; at + 4 <= view.byteLength; ) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    if (marker === 0xe0 && view.getUint32(at + 4) === 0x4a464946) {
      const unit = { 1: INCH, 2: 0.01 }[view.getUint8(at + 11)];
      const density = view.getUint16(at + 12);
      if (unit !== undefined && density > 0) paper = printed(unit / density);
    }
    const frame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (frame) {
      const [height, width] = [view.getUint16(at + 5), view.getUint16(at + 7)];
      return width > 0 && height > 0 ? { width, height, paper } : null;
    }
    at += 2 + length;
  }
  return null;
}

/** Resolutions that screens write without meaning paper, dots per inch. */
const SCREENS = [72, 96];

/** A resolution that a scanner would give; those of screens say nothing about paper. */
function printed(metres: number): number | null {
  const dpi = INCH / metres;
  return SCREENS.some((screen) => Math.abs(dpi - screen) < 0.6) || dpi < 10 || dpi > 5000 ? null : metres;
}

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, i) => bytes[i] === byte);
}
