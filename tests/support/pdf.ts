import { readFileSync } from 'node:fs';
import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { SheetFonts } from '../../src/files/job-sheet/pdf/job-sheet-pdf.ts';

const cut = (name: string) =>
  new Uint8Array(readFileSync(`node_modules/@expo-google-fonts/inter/${name}/Inter_${name}.ttf`));

/** The letters of a job sheet, from their package. */
export const sheetFonts: SheetFonts = {
  regular: cut('400Regular'),
  semibold: cut('600SemiBold'),
  italic: cut('400Regular_Italic'),
};

/** A text on a page: mm from the upper left corner, `y` its base line. */
export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Size of the font, mm. */
  readonly size: number;
}

/** A straight line or a curve of a path, mm from the upper left corner. */
export interface ReadStroke {
  readonly kind: 'line' | 'curve';
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** Of a curve, its two control points. */
  readonly pull?: readonly [readonly [number, number], readonly [number, number]];
  /** mm */
  readonly width: number;
  readonly dashed: boolean;
}

export interface ReadPage {
  /** mm */
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
  /** Stroked paths alone. */
  readonly strokes: readonly ReadStroke[];
}

const MM = 25.4 / 72;

/** What an independent reader finds in a PDF file; the strokes of its pages where they are asked for. */
export async function readPdf(
  bytes: Uint8Array,
  { strokes = false } = {},
): Promise<{
  readonly pages: readonly ReadPage[];
  readonly outline: readonly string[];
  readonly info: Record<string, unknown>;
}> {
  const task = pdfjs.getDocument({ data: Uint8Array.from(bytes), verbosity: pdfjs.VerbosityLevel.ERRORS });
  const file = await task.promise;
  const pages: ReadPage[] = [];
  for (let i = 1; i <= file.numPages; i += 1) pages.push(await readPage(await file.getPage(i), strokes));
  const outline = (await file.getOutline()) ?? [];
  const { info } = await file.getMetadata();
  await task.destroy();
  return { pages, outline: outline.map(({ title }) => title), info: info as Record<string, unknown> };
}

async function readPage(page: pdfjs.PDFPageProxy, strokes: boolean): Promise<ReadPage> {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const at = (x: number, y: number): [number, number] => [(x - left) * MM, (top - y) * MM];
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item): ReadText[] => {
    if (!('str' in item) || item.str.trim() === '') return [];
    const [a = 0, b = 0, , , e = 0, f = 0] = item.transform as number[];
    const [x, y] = at(e, f);
    return [{ text: item.str, x, y, width: item.width * MM, size: Math.hypot(a, b) * MM }];
  });
  return {
    width: (right - left) * MM,
    height: (top - bottom) * MM,
    texts,
    strokes: strokes ? strokesOf(await page.getOperatorList(), at) : [],
  };
}

const { OPS } = pdfjs;
const draw = { moveTo: 0, lineTo: 1, curveTo: 2, closePath: 4 } as const;

function strokesOf(
  { fnArray, argsArray }: { readonly fnArray: readonly number[]; readonly argsArray: readonly unknown[] },
  at: (x: number, y: number) => [number, number],
): ReadStroke[] {
  const strokes: ReadStroke[] = [];
  let width = 0;
  let dashed = false;
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as unknown[];
    if (fn === OPS.setLineWidth) width = Number(args[0]) * MM;
    else if (fn === OPS.setDash) dashed = (args[0] as number[]).length > 0;
    else if (fn === OPS.restore) dashed = false;
    else if (fn === OPS.constructPath && (args[0] === OPS.stroke || args[0] === OPS.fillStroke))
      strokes.push(...pathOf(Array.from((args[1] as [Float32Array])[0]), at, width, dashed));
  });
  return strokes;
}

function pathOf(
  path: readonly number[],
  at: (x: number, y: number) => [number, number],
  width: number,
  dashed: boolean,
): ReadStroke[] {
  const strokes: ReadStroke[] = [];
  let [begin, from]: [number, number][] = [
    [0, 0],
    [0, 0],
  ];
  const point = (i: number) => at(path[i] ?? 0, path[i + 1] ?? 0);
  for (let i = 0; i < path.length; ) {
    const op = path[i];
    if (op === draw.moveTo) {
      begin = point(i + 1);
      from = begin;
      i += 3;
    } else if (op === draw.lineTo) {
      const to = point(i + 1);
      strokes.push({ kind: 'line', from: from as [number, number], to, width, dashed });
      from = to;
      i += 3;
    } else if (op === draw.curveTo) {
      const to = point(i + 5);
      const pull = [point(i + 1), point(i + 3)] as const;
      strokes.push({ kind: 'curve', from: from as [number, number], to, pull, width, dashed });
      from = to;
      i += 7;
    } else if (op === draw.closePath) {
      strokes.push({
        kind: 'line',
        from: from as [number, number],
        to: begin as [number, number],
        width,
        dashed,
      });
      from = begin;
      i += 1;
    } else throw new Error(`a path operator ${op} that is not known`);
  }
  return strokes;
}
