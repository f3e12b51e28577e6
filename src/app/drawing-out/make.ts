import type { BoardState } from '../../canvas/board.ts';
import { type BoardPaint, paintBoard } from '../../canvas/paint-board.ts';
import { createMeasure } from '../../canvas/text-width.ts';
import type { Mark } from '../../drawing/marks.ts';
import { palettes, type Theme } from '../../drawing/palette.ts';
import { type SheetQuery, sheetDrawing } from '../../drawing/sheet-drawing.ts';
import {
  allSheets,
  type Board,
  boardOf,
  type Choice,
  scaleThatFits,
} from '../../files/drawing-out/layout.ts';
import { pictureSize, withResolution } from '../../files/drawing-out/png.ts';
import { svgFile } from '../../files/drawing-out/svg.ts';
import { drawingFamily, type FontPart } from '../../files/drawing-out/svg-font.ts';
import { stemFor } from '../../files/open-save.ts';
import type { SavedKind } from '../../files/save-file.ts';
import { words } from '../../words/index.ts';
import type { Progress } from '../saving/progress.ts';

const says = words.drawings;

export type DrawingFormat = 'svg' | 'png' | 'dxf';

/** What a person wishes to have drawn. */
export interface Wishes {
  readonly format: DrawingFormat;
  /** `space`: the run in three dimensions, for DXF alone. */
  readonly sheet: Choice | 'space';
  /** n of 1 : n; `null` for the largest that fits a sheet of A3. */
  readonly scale: number | null;
  readonly theme: Theme;
  readonly paper: boolean;
  readonly dpi: number;
  /** Colours and labels the duct with what the sheets on the desk show. */
  readonly values: boolean;
  /** Carries the font inside, for SVG alone. */
  readonly font: boolean;
}

/** A3 lying, less the edge that printers leave, mm. */
const frame = { width: 400, height: 277 };

type Shown = Pick<BoardState, 'job' | 'solution' | 'speed' | 'colourBy'>;

/** The drawing that wishes come to, before its file is made. */
export function boardFor(state: Shown, wishes: Wishes): Board {
  const query = queryOf(state, wishes);
  const choice = wishes.sheet === 'space' ? 'isometric' : wishes.sheet;
  const scale = wishes.scale ?? scaleThatFits(query, choice, frame);
  return boardOf({ ...query, scale }, choice);
}

function queryOf(
  { job, solution, speed, colourBy }: Shown,
  { values }: Wishes,
): Omit<SheetQuery, 'sheet' | 'scale'> {
  const measure = measured();
  return {
    job,
    route: solution.route,
    colourBy,
    ...(values && { speed: solution.speeds[speed] }),
    ...(measure && { measure }),
  };
}

const widths = createMeasure();

/** Widths of texts in the drawing's own font. */
function measured() {
  const pen = document.createElement('canvas').getContext('2d');
  return pen ? widths.with(pen) : undefined;
}

export function paintOf(wishes: Wishes, pixelsPerMm: number): BoardPaint {
  return { palette: palettes[wishes.theme], paper: wishes.paper, pixelsPerMm };
}

const kinds: Readonly<Record<DrawingFormat, string>> = {
  svg: 'image/svg+xml',
  png: 'image/png',
  dxf: 'image/vnd.dxf',
};

/** The kind and name of the file that wishes come to. */
export function kindOf({ job }: Shown, { format, sheet }: Wishes): SavedKind {
  return {
    name: `${stemFor(job.title)}-${sheet}.${format}`,
    extension: `.${format}`,
    mimeType: kinds[format],
    description: says.dialog.fileKind,
  };
}

/** Makes the file; rejects with an `AbortError` when it is called off. */
export async function drawingFile(state: Shown, wishes: Wishes, progress: Progress): Promise<Blob> {
  const type = kinds[wishes.format];
  if (wishes.format === 'dxf') return new Blob([await dxfOf(state, wishes)], { type });
  const board = boardFor(state, wishes);
  if (wishes.format === 'png') return await picture(board, wishes, progress);
  const { job } = state;
  const fonts = wishes.font ? await fontsOf(board, progress.signal) : [];
  const text = svgFile({
    fonts,
    board,
    palette: palettes[wishes.theme],
    paper: wishes.paper,
    title: board.footer.lines[0] ?? '',
    description: says.dialog.description(board.scale, says.dialog.units[job.units]),
  });
  return new Blob([text], { type });
}

async function fontsOf(board: Board, signal: AbortSignal): Promise<readonly FontPart[]> {
  const { fontParts } = await import('./svg-fonts.ts');
  return await fontParts(textOf(board), signal);
}

async function dxfOf(state: Shown, wishes: Wishes): Promise<string> {
  const { dxfFile } = await import('../../files/drawing-out/dxf.ts');
  const { sheet } = wishes;
  const { route } = state.solution;
  if (sheet === 'space') return dxfFile({ drawings: [], space: route });
  const { scale } = boardFor(state, wishes);
  const query = { ...queryOf(state, wishes), scale, wholeRoom: true };
  const sheets = sheet === 'all' ? allSheets.filter((one) => one !== 'isometric') : [sheet];
  const drawings = sheets.map((one) => sheetDrawing({ ...query, sheet: one }));
  return dxfFile({ drawings, ...(sheet === 'all' && { space: route }) });
}

/** The drawing as pixels, painted in pieces between which the page may answer. */
async function picture(board: Board, wishes: Wishes, { signal, onShare }: Progress): Promise<Blob> {
  const { width, height, perMm, tooLarge, finest } = pictureSize(board, wishes.dpi);
  if (tooLarge) throw new RangeError(says.dialog.tooLarge(String(finest)));
  await fontsFor(board);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error(says.dialog.noPicture);
  for (const share of paintBoard(pen, board, paintOf(wishes, perMm))) {
    signal.throwIfAborted();
    onShare(share);
    await new Promise((done) => setTimeout(done));
  }
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  signal.throwIfAborted();
  if (!blob) throw new Error(says.dialog.noPicture);
  const bytes = withResolution(new Uint8Array(await blob.arrayBuffer()), wishes.dpi);
  return new Blob([bytes], { type: kinds.png });
}

/** Loads the parts of the font that the letters of a drawing need. */
export async function fontsFor(board: Board): Promise<void> {
  const letters = new Set(textOf(board));
  await document.fonts.load(`500 12px "${drawingFamily}"`, [...letters].join(''));
}

/** Every text on a board, one after the other. */
function textOf({ footer, sheets }: Board): string {
  const said = (mark: Mark) =>
    mark.kind === 'text' ? [mark.text] : mark.kind === 'dimension' ? [mark.text.text] : [];
  return [
    ...footer.lines,
    footer.bar.text,
    ...sheets.flatMap(({ drawing, heading }) => [
      heading,
      ...drawing.layers.flatMap(({ marks }) => marks.flatMap(said)),
    ]),
  ].join('');
}
