import {
  cssOf,
  dimensionLines,
  dimensionPens,
  type Mark,
  type Pen as MarkPen,
  type Paint,
  type TextMark,
} from '../drawing/marks.ts';
import { FONT, type Palette } from '../drawing/palette.ts';
import type { Stroke } from '../drawing/stroke.ts';
import { toScreen, type Viewport } from '../drawing/viewport.ts';
import {
  type Board,
  type Footer,
  footerLine,
  footerSize,
  headingSize,
  type Pinned,
} from '../files/drawing-out/layout.ts';
import { plateOpacity } from '../files/drawing-out/svg.ts';
import { fillAll, type Pen, strokeAll } from './pen.ts';

export interface BoardPaint {
  readonly palette: Palette;
  /** Paper behind the drawing; none where it is to be seen through. */
  readonly paper: boolean;
  readonly pixelsPerMm: number;
}

/** Marks painted between two breaths. */
const atOnce = 400;

/** Paints a board; yields the share that is done, 0-1, every so often, so that a page stays awake. */
export function* paintBoard(pen: Pen, board: Board, paint: BoardPaint): Generator<number, void> {
  const { palette, pixelsPerMm: px } = paint;
  if (paint.paper) {
    pen.fillStyle = palette.sheet;
    pen.fillRect(0, 0, Math.ceil(board.width * px), Math.ceil(board.height * px));
  }
  const all = board.sheets.reduce(
    (sum, { drawing }) => sum + drawing.layers.reduce((marks, layer) => marks + layer.marks.length, 0),
    0,
  );
  let done = 0;
  for (const sheet of board.sheets) {
    const view = viewOf(sheet, px);
    heading(pen, sheet, paint);
    for (const { marks } of sheet.drawing.layers)
      for (const mark of marks) {
        paintMark(pen, mark, view, sheet.drawing.scale, paint);
        done += 1;
        if (done % atOnce === 0) yield done / all;
      }
  }
  paintFooter(pen, board.footer, paint);
  yield 1;
}

function viewOf({ drawing, x, y }: Pinned, px: number): Viewport {
  const scale = (1000 / drawing.scale) * px;
  return { scale, panX: x * px - drawing.bounds.minU * scale, panY: y * px + drawing.bounds.maxV * scale };
}

function paintMark(pen: Pen, mark: Mark, view: Viewport, scale: number, paint: BoardPaint): void {
  if (mark.kind === 'fill') {
    pen.fillStyle = colour(mark.paint, paint);
    pen.globalAlpha = mark.opacity ?? 1;
    fillAll(pen, [mark.outline], view);
    pen.globalAlpha = 1;
  } else if (mark.kind === 'line') paintLines(pen, mark.strokes, mark.pen, view, paint);
  else if (mark.kind === 'text') paintText(pen, mark, view, paint);
  else {
    const { thin, slashes } = dimensionLines(mark, scale);
    paintLines(pen, thin, dimensionPens.thin, view, paint);
    paintLines(pen, slashes, dimensionPens.slashes, view, paint);
    paintText(pen, mark.text, view, paint);
  }
}

function colour(paint: Paint, { palette }: BoardPaint): string {
  return cssOf(paint, palette);
}

function paintLines(
  pen: Pen,
  strokes: readonly Stroke[],
  { paint, width, dash = [], opacity = 1 }: MarkPen,
  view: Viewport,
  how: BoardPaint,
): void {
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  pen.strokeStyle = colour(paint, how);
  pen.lineWidth = width * how.pixelsPerMm;
  pen.globalAlpha = opacity;
  pen.setLineDash(dash.map((part) => part * how.pixelsPerMm));
  strokeAll(pen, strokes, view);
  pen.setLineDash([]);
  pen.globalAlpha = 1;
}

const aligns = { left: 'left', centre: 'center', right: 'right' } as const;

function paintText(pen: Pen, mark: TextMark, view: Viewport, how: BoardPaint): void {
  const { x, y } = toScreen(mark.at, view);
  const px = how.pixelsPerMm;
  if (mark.behind) {
    const [w, h] = [mark.width * px, mark.height * px * (mark.behind.as === 'rim' ? 0.85 : 1)];
    pen.fillStyle = colour(mark.behind.paint, how);
    pen.globalAlpha = plateOpacity;
    pen.fillRect(x - w / 2, y - h / 2, w, h);
    pen.globalAlpha = 1;
  }
  setFont(pen, mark.size * px, mark.weight);
  pen.fillStyle = colour(mark.paint, how);
  pen.textAlign = aligns[mark.align];
  pen.textBaseline = 'middle';
  pen.fillText(mark.text, x, y);
}

function setFont(pen: Pen, size: number, weight: number): void {
  pen.font = `${weight} ${size}px ${FONT}`;
}

function heading(pen: Pen, { x, y, heading: text }: Pinned, how: BoardPaint): void {
  const px = how.pixelsPerMm;
  setFont(pen, headingSize * px, 600);
  pen.fillStyle = colour('ink', how);
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  pen.fillText(text, (x + 4) * px, (y - 2.4) * px);
}

function paintFooter(pen: Pen, { x, y, lines, bar }: Footer, how: BoardPaint): void {
  const px = how.pixelsPerMm;
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  for (const [i, text] of lines.entries()) {
    setFont(pen, footerSize * px, i === 0 ? 600 : 400);
    pen.fillStyle = colour(i === 0 ? 'ink' : 'muted', how);
    pen.fillText(text, x * px, (y + footerLine * i) * px);
  }
  const part = bar.width / bar.parts;
  pen.strokeStyle = colour('ink', how);
  pen.lineWidth = 0.2 * px;
  for (let i = 0; i < bar.parts; i += 1) {
    pen.fillStyle = colour(i % 2 === 0 ? 'ink' : 'sheet', how);
    pen.fillRect((bar.x + part * i) * px, bar.y * px, part * px, 1.6 * px);
    pen.strokeRect((bar.x + part * i) * px, bar.y * px, part * px, 1.6 * px);
  }
  setFont(pen, footerSize * px, 400);
  pen.fillStyle = colour('ink', how);
  pen.fillText(bar.text, (bar.x + bar.width + 1.5) * px, (bar.y + 1.8) * px);
}
