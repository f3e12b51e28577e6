import { words } from '../../words/index.ts';
import type { DrawnDxf } from './dxf.ts';
import { kindOf, type PictureKind, readHeader } from './header.ts';
import { type Kept, keepCanvas, keepFile, megabytes } from './keep.ts';
import { type LoadPdf, openPdf } from './pdf.ts';
import { MAX_BYTES, MAX_DECODED, type Picture, Refused, type SourceFile, svgUrl } from './picture.ts';
import type { Canvas, Decoded, Raster } from './raster.ts';
import type { CleanSvg } from './svg.ts';

const says = words.underlayFiles.source;

/** What the texts of drawings are turned into pictures by, aside from the page's own work. */
export interface Drawer {
  svg(text: string, signal?: AbortSignal): Promise<CleanSvg>;
  dxf(text: string, signal?: AbortSignal): Promise<DrawnDxf>;
}

export interface SourceTools {
  readonly raster: Raster;
  readonly pdf: LoadPdf;
  readonly drawer: Drawer;
}

/** A file of one picture or of several pages, open. */
export interface Source {
  readonly name: string;
  readonly kind: PictureKind;
  readonly pages: number;
  /** A page small, for choosing; `null` for a file of one picture. */
  preview(page: number, signal?: AbortSignal): Promise<Canvas | null>;
  /** The picture of a page, 1 for the first. Rejects with `Refused`. */
  picture(page: number, signal?: AbortSignal): Promise<Picture>;
  close(): void;
}

/** Bytes of a file that is opened at all. */
const MAX_FILE = 200e6;

/** Pixels of a small page, and of one that is kept. */
const PREVIEW = { longer: 150, dpi: 300 };
const PAGE = { longer: 5000, dpi: 200 };

/** Opens a PNG, JPEG, SVG, PDF or DXF file. Rejects with `Refused`, or with what `signal` was aborted by. */
export async function openSource(
  file: SourceFile,
  tools: SourceTools,
  signal?: AbortSignal,
): Promise<Source> {
  const { name, bytes } = file;
  if (bytes.length === 0) throw new Refused(says.empty(name));
  if (bytes.length > MAX_FILE)
    throw new Refused(says.tooLarge(name, megabytes(bytes.length), megabytes(MAX_FILE)));
  const kind = kindOf(bytes, name);
  if (!kind) throw new Refused(says.otherKind(name));
  if (kind === 'pdf') return await pdfSource(file, tools, signal);
  return {
    name,
    kind,
    pages: 1,
    preview: () => Promise.resolve(null),
    picture: (_, until) => read(kind, file, tools, until),
    close: () => {},
  };
}

async function pdfSource(
  { name, bytes }: SourceFile,
  tools: SourceTools,
  signal?: AbortSignal,
): Promise<Source> {
  const book = await openPdf(bytes, tools.pdf, tools.raster, signal);
  return {
    name,
    kind: 'pdf',
    pages: book.pages,
    preview: async (page, until) => (await book.paint(page, PREVIEW, until)).canvas,
    async picture(page, until) {
      const { canvas, paper } = await book.paint(page, PAGE, until);
      const kept = await keepCanvas(canvas);
      until?.throwIfAborted();
      const named = book.pages > 1 ? says.page(name, page) : name;
      return { ...kept, name: named, measure: { kind: 'paper', scale: paper }, bare: false };
    },
    close: book.close,
  };
}

function read(
  kind: Exclude<PictureKind, 'pdf'>,
  file: SourceFile,
  tools: SourceTools,
  signal?: AbortSignal,
): Promise<Picture> {
  if (kind === 'svg') return readSvg(file, tools, signal);
  if (kind === 'dxf') return readDxf(file, tools, signal);
  return readPixels(kind, file, tools, signal);
}

async function readPixels(
  kind: 'png' | 'jpeg',
  { name, bytes }: SourceFile,
  { raster }: SourceTools,
  signal?: AbortSignal,
): Promise<Picture> {
  const header = readHeader(bytes, kind);
  if (!header) throw damaged(name);
  const { width, height, paper } = header;
  if (width * height > MAX_DECODED) throw new Refused(says.tooManyPixels(name, width, height));
  const blob = new Blob([bytes], { type: `image/${kind}` });
  const decoded = await shown(raster, blob, name);
  const kept = await closing(() => keepFile(blob, decoded, signal), decoded);
  signal?.throwIfAborted();
  const shrunk = Math.max(width, height) / Math.max(...kept.size);
  return {
    ...kept,
    name,
    measure: paper === null ? { kind: 'unknown' } : { kind: 'paper', scale: paper * shrunk },
    bare: false,
  };
}

async function readSvg(
  { name, bytes }: SourceFile,
  tools: SourceTools,
  signal?: AbortSignal,
): Promise<Picture> {
  const { text, size, paper, removed } = await tools.drawer.svg(new TextDecoder().decode(bytes), signal);
  const kept = await keepLines(text, size, name, tools.raster, signal);
  const notes = removed > 0 ? [says.leftOut(removed)] : [];
  return {
    ...kept,
    name,
    measure: paper === null ? { kind: 'unknown' } : { kind: 'paper', scale: paper },
    bare: isLines(kept),
    notes: [...notes, ...kept.notes],
  };
}

async function readDxf(
  { name, bytes }: SourceFile,
  tools: SourceTools,
  signal?: AbortSignal,
): Promise<Picture> {
  const { svg, size, scale, assumed } = await tools.drawer.dxf(drawingText(bytes), signal);
  const kept = await keepLines(svg, size, name, tools.raster, signal);
  const grown = size[0] / kept.size[0];
  return { ...kept, name, measure: { kind: 'real', scale: scale * grown, assumed }, bare: isLines(kept) };
}

/** Lines as the text of a picture where that is small enough, otherwise as pixels. */
async function keepLines(
  text: string,
  size: readonly [number, number],
  name: string,
  raster: Raster,
  signal?: AbortSignal,
): Promise<Kept> {
  const blob = new Blob([text], { type: 'image/svg+xml' });
  const decoded = await shown(raster, blob, name);
  signal?.throwIfAborted();
  if (blob.size <= MAX_BYTES) {
    decoded.close();
    return { image: svgUrl(text), size, notes: [] };
  }
  return await closing(() => keepFile(blob, decoded, signal), decoded);
}

function isLines({ image }: Kept): boolean {
  return image.startsWith('data:image/svg');
}

async function shown(raster: Raster, blob: Blob, name: string): Promise<Decoded> {
  try {
    return await raster.decode(blob);
  } catch {
    throw damaged(name);
  }
}

async function closing(keep: () => Promise<Kept>, decoded: Decoded): Promise<Kept> {
  try {
    return await keep();
  } finally {
    decoded.close();
  }
}

function damaged(name: string): Refused {
  return new Refused(says.damaged(name));
}

/** Old drawings are written in one byte a letter, new ones in UTF-8. */
function drawingText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
