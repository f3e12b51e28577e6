import { formatNumber } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { dataUrl, MAX_BYTES, MAX_PIXELS, Refused } from './picture.ts';
import type { Canvas, Decoded } from './raster.ts';

const says = words.underlayFiles.keep;

export interface Kept {
  readonly image: string;
  readonly size: readonly [number, number];
  readonly notes: readonly string[];
}

/** A picture as its file has it, where it is small enough; otherwise smaller, as JPEG, and said so. */
export async function keepFile(blob: Blob, decoded: Decoded, signal?: AbortSignal): Promise<Kept> {
  const { width, height } = decoded;
  if (blob.size <= MAX_BYTES && width * height <= MAX_PIXELS)
    return { image: await urlOf(blob), size: [width, height], notes: [] };
  const { canvas, smaller } = await fitting(decoded, signal);
  const size: [number, number] = [canvas.width, canvas.height];
  const notes = [says.kept(megabytes(blob.size), width, height, megabytes(smaller.size), size[0], size[1])];
  return { image: await urlOf(smaller), size, notes };
}

/** What was painted, without loss where that is small enough, otherwise as JPEG. */
export async function keepCanvas(canvas: Canvas): Promise<Kept> {
  const size: [number, number] = [canvas.width, canvas.height];
  const lossless = await canvas.encode('image/png');
  if (lossless.size <= MAX_BYTES) return { image: await urlOf(lossless), size, notes: [] };
  for (const quality of QUALITIES) {
    const blob = await canvas.encode('image/jpeg', quality);
    if (blob.size <= MAX_BYTES)
      return {
        image: await urlOf(blob),
        size,
        notes: [says.page(megabytes(blob.size))],
      };
  }
  throw tooLarge();
}

const QUALITIES = [0.88, 0.75, 0.6];

/** The first of ever smaller pictures that fits. */
async function fitting(
  decoded: Decoded,
  signal?: AbortSignal,
): Promise<{ readonly canvas: Canvas; readonly smaller: Blob }> {
  let factor = Math.min(1, Math.sqrt(MAX_PIXELS / (decoded.width * decoded.height)));
  for (let round = 0; round < 4; round++) {
    const canvas = decoded.onto(
      Math.max(1, Math.round(decoded.width * factor)),
      Math.max(1, Math.round(decoded.height * factor)),
      true,
    );
    for (const quality of QUALITIES.slice(0, 2)) {
      const smaller = await canvas.encode('image/jpeg', quality);
      signal?.throwIfAborted();
      if (smaller.size <= MAX_BYTES) return { canvas, smaller };
    }
    factor *= 0.7;
  }
  throw tooLarge();
}

function tooLarge(): Refused {
  return new Refused(says.tooLarge(megabytes(MAX_BYTES)));
}

async function urlOf(blob: Blob): Promise<string> {
  return dataUrl(new Uint8Array(await blob.arrayBuffer()), blob.type);
}

export function megabytes(bytes: number): string {
  return says.megabytes(formatNumber(bytes / 1e6, bytes < 9.95e6 ? 1 : 0));
}
