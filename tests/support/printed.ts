import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';

const { OPS } = pdfjs;
const MM = 25.4 / 72;

type Matrix = readonly [number, number, number, number, number, number];

/** A straight line on a page, mm from its upper left corner. */
export interface PrintedLine {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  /** Each piece of text as it was set. */
  readonly texts: readonly string[];
  /** All of it in the order of reading, a space between pieces that stand apart. */
  readonly text: string;
  /** Stroked and filled outlines alike, whatever they were drawn with. */
  readonly lines: readonly PrintedLine[];
}

/** The pages of a PDF that a browser printed, each path brought to its place on the paper. */
export async function readPrinted(bytes: Uint8Array): Promise<PrintedPage[]> {
  const task = pdfjs.getDocument({ data: Uint8Array.from(bytes), verbosity: pdfjs.VerbosityLevel.ERRORS });
  const file = await task.promise;
  const pages: PrintedPage[] = [];
  for (let i = 1; i <= file.numPages; i += 1) {
    const page = await file.getPage(i);
    const [, , right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => ('str' in item ? [item.str] : []));
    pages.push({
      width: right * MM,
      height: top * MM,
      texts,
      text: texts.join(' ').replace(/\s+/g, ' '),
      lines: linesOf(await page.getOperatorList(), top),
    });
  }
  await task.destroy();
  return pages;
}

function linesOf(
  { fnArray, argsArray }: { readonly fnArray: readonly number[]; readonly argsArray: readonly unknown[] },
  top: number,
): PrintedLine[] {
  const lines: PrintedLine[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as readonly unknown[];
    if (fn === OPS.save) stack.push(matrix);
    else if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, args as unknown as Matrix);
    else if (fn === OPS.constructPath && args[1]) {
      const at = matrix;
      const place = (x: number, y: number): [number, number] => {
        const [a, b, c, d, e, f] = at;
        return [(a * x + c * y + e) * MM, (top - (b * x + d * y + f)) * MM];
      };
      lines.push(...straightOf(Array.from((args[1] as [Float32Array])[0] ?? []), place));
    }
  });
  return lines;
}

/** Straight parts of a path: 0 moves, 1 draws a line, 2 a curve, 4 closes. */
function straightOf(
  path: readonly number[],
  place: (x: number, y: number) => [number, number],
): PrintedLine[] {
  const lines: PrintedLine[] = [];
  let [begin, from] = [place(0, 0), place(0, 0)];
  for (let i = 0; i < path.length; ) {
    const [op, x = 0, y = 0] = [path[i], path[i + 1], path[i + 2]];
    if (op === 0) {
      from = place(x, y);
      begin = from;
      i += 3;
    } else if (op === 1) {
      lines.push({ from, to: place(x, y) });
      from = place(x, y);
      i += 3;
    } else if (op === 2) {
      from = place(path[i + 5] ?? 0, path[i + 6] ?? 0);
      i += 7;
    } else {
      if (op === 4) lines.push({ from, to: begin });
      from = begin;
      i += 1;
    }
  }
  return lines;
}

function times([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}
