/** Pixels a side, and in all, that a picture may have: what browsers give a canvas without failing in silence. */
export const mostPixels = { side: 16_000, area: 120_000_000 } as const;

export interface PictureSize {
  readonly width: number;
  readonly height: number;
  /** Pixels a mm of paper. */
  readonly perMm: number;
  /** True where no canvas holds it. */
  readonly tooLarge: boolean;
  /** The finest resolution at which it is not, dots an inch, rounded down to tens. */
  readonly finest: number;
}

/** The picture of a piece of paper, mm, at a resolution in dots an inch. */
export function pictureSize(
  paper: { readonly width: number; readonly height: number },
  dpi: number,
): PictureSize {
  const perMm = dpi / 25.4;
  const [width, height] = [Math.ceil(paper.width * perMm), Math.ceil(paper.height * perMm)];
  const bySide = (mostPixels.side / Math.max(paper.width, paper.height)) * 25.4;
  const byArea = Math.sqrt(mostPixels.area / (paper.width * paper.height)) * 25.4;
  return {
    width,
    height,
    perMm,
    tooLarge: width > mostPixels.side || height > mostPixels.side || width * height > mostPixels.area,
    finest: Math.floor(Math.min(bySide, byArea) / 10) * 10,
  };
}

const signature = [137, 80, 78, 71, 13, 10, 26, 10];
/** Signature, and the header chunk with its length, name and check. */
const afterHeader = 8 + 12 + 13;

/**
 * A PNG that says its resolution, so that it has its true size on paper: a `pHYs` chunk after the header, in
 * place of one that is there.
 *
 * @throws RangeError for bytes that are no PNG
 */
export function withResolution(png: Uint8Array, dpi: number): Uint8Array<ArrayBuffer> {
  if (signature.some((byte, i) => png[i] !== byte) || png.length < afterHeader)
    throw new RangeError('these bytes are no PNG');
  const rest = withoutResolution(png.subarray(afterHeader));
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  const perMetre = Math.round(dpi / 0.0254);
  view.setUint32(0, 9);
  chunk.set(
    [...'pHYs'].map((letter) => letter.charCodeAt(0)),
    4,
  );
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  view.setUint8(16, 1);
  view.setUint32(17, checkOf(chunk.subarray(4, 17)));
  const made = new Uint8Array(afterHeader + chunk.length + rest.length);
  made.set(png.subarray(0, afterHeader));
  made.set(chunk, afterHeader);
  made.set(rest, afterHeader + chunk.length);
  return made;
}

function withoutResolution(chunks: Uint8Array): Uint8Array {
  const view = new DataView(chunks.buffer, chunks.byteOffset, chunks.byteLength);
  for (let at = 0; at + 12 <= chunks.length; ) {
    const end = at + 12 + view.getUint32(at);
    const name = String.fromCharCode(...chunks.subarray(at + 4, at + 8));
    if (name === 'IDAT') return chunks;
    if (name === 'pHYs') {
      const kept = new Uint8Array(chunks.length - (end - at));
      kept.set(chunks.subarray(0, at));
      kept.set(chunks.subarray(end), at);
      return kept;
    }
    at = end;
  }
  return chunks;
}

/** The cyclic redundancy check that a chunk of a PNG ends with: ISO 3309, as the PNG specification prints it. */
function checkOf(bytes: Uint8Array): number {
  let check = 0xffffffff;
  for (const byte of bytes) {
    check ^= byte;
    for (let bit = 0; bit < 8; bit += 1) check = check & 1 ? 0xedb88320 ^ (check >>> 1) : check >>> 1;
  }
  return (check ^ 0xffffffff) >>> 0;
}
