import type * as PdfJs from 'pdfjs-dist';
import { words } from '../../words/index.ts';
import { Refused } from './picture.ts';
import type { Canvas, Raster } from './raster.ts';

const says = words.underlayFiles.pdf;

/** The reader of PDF files; it is loaded only when there is one to read. */
export interface PdfReader {
  readonly pdfjs: typeof PdfJs;
  /** Where its parts for rare pictures lie; ends with a slash. */
  readonly parts?: string;
}

export type LoadPdf = () => Promise<PdfReader>;

export interface PdfBook {
  readonly pages: number;
  /** A page, 1 for the first, painted on white; `paper` is metres of paper a pixel. */
  paint(page: number, size: PageSize, signal?: AbortSignal): Promise<PaintedPage>;
  close(): void;
}

export interface PaintedPage {
  readonly canvas: Canvas;
  readonly paper: number;
}

/** Pixels along the longer side at most, and dots per inch wanted where that allows. */
export interface PageSize {
  readonly longer: number;
  readonly dpi: number;
}

/** Metres in a unit of a PDF page: 1/72 inch. */
const POINT = 0.0254 / 72;

/** Opens a PDF. Refuses one that is locked, damaged or empty. */
export async function openPdf(
  bytes: Uint8Array<ArrayBuffer>,
  load: LoadPdf,
  raster: Raster,
  signal?: AbortSignal,
): Promise<PdfBook> {
  const { pdfjs, parts } = await load();
  signal?.throwIfAborted();
  const task = pdfjs.getDocument({
    data: bytes.slice(),
    isEvalSupported: false,
    useWasm: false,
    ...(parts === undefined ? {} : { wasmUrl: parts }),
    verbosity: pdfjs.VerbosityLevel.ERRORS,
  });
  const stop = () => void task.destroy();
  signal?.addEventListener('abort', stop);
  try {
    const document = await task.promise;
    if (document.numPages < 1) throw new Refused(says.noPage);
    return {
      pages: document.numPages,
      paint: (page, size, until) => paint(document, page, size, raster, until),
      close: stop,
    };
  } catch (error) {
    stop();
    signal?.throwIfAborted();
    throw refusal(error);
  } finally {
    signal?.removeEventListener('abort', stop);
  }
}

async function paint(
  document: PdfJs.PDFDocumentProxy,
  number: number,
  { longer, dpi }: PageSize,
  raster: Raster,
  signal?: AbortSignal,
): Promise<PaintedPage> {
  const page = await document.getPage(number);
  signal?.throwIfAborted();
  const unit = POINT * page.userUnit;
  const plain = page.getViewport({ scale: 1 });
  const scale = Math.min((dpi * unit) / 0.0254, longer / Math.max(plain.width, plain.height));
  const viewport = page.getViewport({ scale });
  const canvas = raster.canvas(
    Math.max(1, Math.ceil(viewport.width)),
    Math.max(1, Math.ceil(viewport.height)),
  );
  const task = page.render({ canvas: canvas.element, viewport, background: '#ffffff' });
  const stop = () => task.cancel();
  signal?.addEventListener('abort', stop);
  try {
    await task.promise;
  } catch (error) {
    signal?.throwIfAborted();
    throw refusal(error);
  } finally {
    signal?.removeEventListener('abort', stop);
    page.cleanup();
  }
  return { canvas, paper: unit / scale };
}

function refusal(error: unknown): Error {
  if (error instanceof Refused) return error;
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  if (name === 'PasswordException') return new Refused(says.locked);
  if (name === 'InvalidPDFException') return new Refused(says.damaged);
  return new Refused(says.undrawable(message));
}
