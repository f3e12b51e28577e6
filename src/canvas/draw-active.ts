import { RULER } from '../drawing/grid.ts';
import { MIN_TEXT, type Palette } from '../drawing/palette.ts';
import { type Size, toScreen, type Viewport } from '../drawing/viewport.ts';
import type { ScreenPoint, SheetPoint } from '../graph/sheet.ts';
import type { Section } from '../hydraulics/types.ts';
import { type Pen, segmentPath, setText } from './pen.ts';
import type { ActiveShape } from './sheet-handle.ts';

/** Draws what a gesture shows, in the order that it gives, within the rulers. */
export function drawActive(
  pen: Pen,
  shapes: readonly ActiveShape[],
  palette: Palette,
  view: Viewport,
  size: Size,
): void {
  pen.save();
  pen.beginPath();
  pen.rect(RULER, RULER, size.width - RULER, size.height - RULER);
  pen.clip();
  for (const shape of shapes) {
    pen.setLineDash([]);
    pen.lineJoin = 'round';
    pen.lineCap = 'butt';
    drawShape(pen, shape, palette, view, size);
  }
  pen.restore();
}

function drawShape(pen: Pen, shape: ActiveShape, palette: Palette, view: Viewport, size: Size): void {
  switch (shape.kind) {
    case 'duct':
      drawDuct(pen, shape.points, shape.section, shape.valid ?? true, palette, view);
      return;
    case 'guide':
      pen.strokeStyle = palette.accent;
      pen.globalAlpha = 0.55;
      pen.lineWidth = 1;
      pen.setLineDash([2, 4]);
      pen.beginPath();
      segmentPath(pen, shape.from, shape.to, view);
      pen.stroke();
      pen.globalAlpha = 1;
      return;
    case 'snap':
      drawSnap(pen, shape.at, shape.reason, shape.bare ?? false, palette, view, size);
      return;
    case 'measure':
      drawMeasure(pen, shape.from, shape.to, shape.text, palette, view, size);
      return;
    case 'note':
      drawNote(pen, shape.at, shape.text, shape.strong ?? false, palette, view, size);
      return;
    case 'node': {
      const at = toScreen(shape.at, view);
      pen.strokeStyle = palette.accent;
      pen.fillStyle = palette.sheet;
      pen.lineWidth = 2;
      pen.beginPath();
      pen.rect(Math.round(at.x) - 4, Math.round(at.y) - 4, 9, 9);
      pen.fill();
      pen.stroke();
      return;
    }
    case 'box': {
      const [a, b] = [toScreen(shape.from, view), toScreen(shape.to, view)];
      const [x, y] = [Math.round(Math.min(a.x, b.x)), Math.round(Math.min(a.y, b.y))];
      const [w, h] = [Math.round(Math.abs(a.x - b.x)), Math.round(Math.abs(a.y - b.y))];
      pen.fillStyle = palette.accent;
      pen.globalAlpha = 0.08;
      pen.fillRect(x, y, w, h);
      pen.globalAlpha = 1;
      pen.strokeStyle = palette.accent;
      pen.lineWidth = 1;
      if (shape.crossing) pen.setLineDash([5, 3]);
      pen.strokeRect(x + 0.5, y + 0.5, w, h);
    }
  }
}

/** Duct being drawn: a wash as wide as the duct, with its centre line; refused duct is dashed in the colour of danger. */
function drawDuct(
  pen: Pen,
  points: readonly SheetPoint[],
  section: Section,
  valid: boolean,
  palette: Palette,
  view: Viewport,
): void {
  const across = section.shape === 'round' ? section.diameter : section.width;
  const [first, ...rest] = points.map((p) => toScreen(p, view));
  if (!first) return;
  pen.strokeStyle = valid ? palette.accent : palette.danger;
  pen.lineCap = 'butt';
  pen.lineJoin = 'miter';
  const path = () => {
    pen.beginPath();
    pen.moveTo(first.x, first.y);
    for (const p of rest) pen.lineTo(p.x, p.y);
  };
  pen.globalAlpha = 0.22;
  pen.lineWidth = Math.max(3, across * view.scale);
  path();
  pen.stroke();
  pen.globalAlpha = 1;
  pen.lineWidth = 1.5;
  if (!valid) pen.setLineDash([5, 4]);
  path();
  pen.stroke();
  pen.lineJoin = 'round';
}

/** A ring where the pointer is held, and beside it why. */
function drawSnap(
  pen: Pen,
  at: SheetPoint,
  reason: string,
  bare: boolean,
  palette: Palette,
  view: Viewport,
  size: Size,
): void {
  const p = toScreen(at, view);
  if (!bare) {
    pen.strokeStyle = palette.accent;
    pen.lineWidth = 1.5;
    pen.beginPath();
    pen.arc(p.x, p.y, 6, 0, 2 * Math.PI);
    pen.stroke();
  }
  if (reason) plate(pen, reason, { x: p.x, y: p.y + 18 }, 14, palette, bare ? 'plain' : 'quiet', size);
}

function drawNote(
  pen: Pen,
  at: SheetPoint,
  text: string,
  strong: boolean,
  palette: Palette,
  view: Viewport,
  size: Size,
): void {
  const p = toScreen(at, view);
  plate(pen, text, { x: p.x, y: p.y - 20 }, 14, palette, strong ? 'strong' : 'plain', size);
}

function drawMeasure(
  pen: Pen,
  from: SheetPoint,
  to: SheetPoint,
  text: string,
  palette: Palette,
  view: Viewport,
  size: Size,
): void {
  const [a, b] = [toScreen(from, view), toScreen(to, view)];
  pen.strokeStyle = palette.accent;
  pen.lineWidth = 1.5;
  pen.beginPath();
  pen.moveTo(a.x, a.y);
  pen.lineTo(b.x, b.y);
  for (const end of [a, b]) {
    pen.moveTo(end.x - 4, end.y + 4);
    pen.lineTo(end.x + 4, end.y - 4);
  }
  pen.stroke();
  plate(pen, text, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, null, palette, 'strong', size);
}

/** What is typed or measured is strong, what would happen plain, and why the pointer is held quiet. */
type Weight = 'strong' | 'plain' | 'quiet';

/**
 * Text on a small plate: centred on a point, or beside it at a distance in px, on its other side where
 * the plate would run off the sheet.
 */
function plate(
  pen: Pen,
  text: string,
  at: ScreenPoint,
  beside: number | null,
  palette: Palette,
  weight: Weight,
  size: Size,
): void {
  const strong = weight === 'strong';
  setText(pen, weight === 'quiet' ? MIN_TEXT : MIN_TEXT + 1, strong ? 600 : 400);
  const width = Math.ceil(pen.measureText(text).width) + 12;
  const wish = beside === null ? at.x - width / 2 : at.x + beside;
  const other = beside === null ? wish : at.x - beside - width;
  const most = size.width - 6 - width;
  const x = Math.round(Math.max(RULER + 6, wish <= most ? wish : Math.min(other, most)));
  const y = Math.round(Math.min(size.height - 16, Math.max(RULER + 16, at.y)));
  pen.beginPath();
  pen.roundRect(x, y - 10, width, 20, 4);
  pen.fillStyle = strong ? palette.accent : palette.sheet;
  pen.fill();
  pen.strokeStyle = weight === 'quiet' ? palette.hairline : palette.accent;
  pen.lineWidth = 1;
  if (!strong) pen.stroke();
  pen.fillStyle = strong ? palette.onAccent : weight === 'quiet' ? palette.muted : palette.ink;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillText(text, x + 6, y + 0.5);
}
