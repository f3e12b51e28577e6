import { FONT } from '../drawing/palette.ts';
import type { Stroke } from '../drawing/stroke.ts';
import { toScreen, type Viewport } from '../drawing/viewport.ts';
import type { SheetPoint } from '../graph/sheet.ts';

/** The part of a canvas context that drawing here uses; a test can stand in for it. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | 'arc'
  | 'beginPath'
  | 'clip'
  | 'closePath'
  | 'drawImage'
  | 'fill'
  | 'fillRect'
  | 'fillText'
  | 'lineTo'
  | 'measureText'
  | 'moveTo'
  | 'rect'
  | 'restore'
  | 'rotate'
  | 'roundRect'
  | 'save'
  | 'setLineDash'
  | 'stroke'
  | 'strokeRect'
  | 'strokeText'
  | 'translate'
> & {
  fillStyle: CanvasRenderingContext2D['fillStyle'];
  strokeStyle: CanvasRenderingContext2D['strokeStyle'];
  lineWidth: number;
  lineCap: CanvasLineCap;
  lineJoin: CanvasLineJoin;
  font: string;
  textAlign: CanvasTextAlign;
  textBaseline: CanvasTextBaseline;
  globalAlpha: number;
  globalCompositeOperation: GlobalCompositeOperation;
  imageSmoothingQuality: ImageSmoothingQuality;
};

/** Adds a stroke to the current path; `joined` continues the path that is there. */
export function trace(pen: Pen, stroke: Stroke, view: Viewport, joined = false): void {
  if (stroke.kind === 'arc') {
    const centre = toScreen(stroke.centre, view);
    const radius = stroke.radius * view.scale;
    if (!joined)
      pen.moveTo(centre.x + radius * Math.cos(stroke.start), centre.y - radius * Math.sin(stroke.start));
    pen.arc(centre.x, centre.y, radius, -stroke.start, -stroke.end, stroke.end > stroke.start);
    return;
  }
  stroke.points.forEach((point, i) => {
    const at = toScreen(point, view);
    if (i === 0 && !joined) pen.moveTo(at.x, at.y);
    else pen.lineTo(at.x, at.y);
  });
  if (stroke.closed) pen.closePath();
}

export function strokeAll(pen: Pen, strokes: readonly Stroke[], view: Viewport): void {
  if (strokes.length === 0) return;
  pen.beginPath();
  for (const stroke of strokes) trace(pen, stroke, view);
  pen.stroke();
}

/** Fills closed paths, each a chain of strokes. */
export function fillAll(pen: Pen, paths: readonly (readonly Stroke[])[], view: Viewport): void {
  for (const path of paths) {
    pen.beginPath();
    path.forEach((stroke, i) => {
      trace(pen, stroke, view, i > 0);
    });
    pen.closePath();
    pen.fill();
  }
}

export function setText(pen: Pen, size: number, weight = 400): void {
  pen.font = `${weight} ${size}px ${FONT}`;
}

/** A hairline's coordinate: the middle of a pixel, so that it is drawn crisp. */
export function crisp(at: number): number {
  return Math.floor(at) + 0.5;
}

export function segmentPath(pen: Pen, from: SheetPoint, to: SheetPoint, view: Viewport): void {
  const [a, b] = [toScreen(from, view), toScreen(to, view)];
  pen.moveTo(a.x, a.y);
  pen.lineTo(b.x, b.y);
}
