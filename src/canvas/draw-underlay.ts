import type { Palette, Theme } from '../drawing/palette.ts';
import {
  type Bounds,
  overlaps,
  type Size,
  toScreen,
  type Viewport,
  visibleBounds,
} from '../drawing/viewport.ts';
import type { Underlay } from '../graph/document.ts';
import type { SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import type { Bitmap } from './bitmaps.ts';
import { type Pen, setText } from './pen.ts';
import { type LoadedPicture, levelFor, type Pictures } from './pictures.ts';

const says = words.sheets.underlay;

export interface UnderlayLook {
  readonly pictures: Pictures;
  readonly palette: Palette;
  readonly theme: Theme;
  /** Pixels of the screen a CSS pixel. */
  readonly ratio: number;
}

/** A picture that is kept as it is is this much fainter on a dark sheet. */
const DIM = 0.45;

/** What an underlay covers, m; `null` while its size is not known. */
export function underlayBounds({ at: [u, v], size, scale }: Underlay): Bounds | null {
  if (!size) return null;
  return { minU: u, minV: v, maxU: u + size[0] * scale, maxV: v + size[1] * scale };
}

/**
 * The underlays of one sheet, the first of them lowest, as much of each as is in view. What is white in
 * a scan lets the sheet through, as does what was white in one that is inverted.
 */
export function drawUnderlays(
  pen: Pen,
  underlays: readonly Underlay[],
  sheet: SheetId,
  look: UnderlayLook,
  view: Viewport,
  size: Size,
): void {
  for (const underlay of underlays) {
    const known = underlayBounds(underlay);
    if (underlay.sheet !== sheet || (known && !overlaps(known, visibleBounds(view, size)))) continue;
    const found = look.pictures.get(underlay.image);
    if (found.state !== 'ready') {
      if (known) drawFrame(pen, known, found.state === 'failed', underlay, look.palette, view);
      continue;
    }
    drawPicture(pen, underlay, found.picture, look, view, size);
  }
}

function drawPicture(
  pen: Pen,
  underlay: Underlay,
  picture: LoadedPicture,
  { theme, pictures, ratio }: UnderlayLook,
  view: Viewport,
  size: Size,
): void {
  const [whole] = picture.levels;
  if (!whole) return;
  const [width, height] = underlay.size ?? [whole.width, whole.height];
  const inverted = theme === 'dark' && underlay.invert === true;
  const bitmap = chosen(picture, inverted, (width * underlay.scale * view.scale * ratio) / whole.width);
  const perPixel = underlay.scale * view.scale;
  const top = underlay.at[1] + height * underlay.scale;
  const corner = toScreen({ u: underlay.at[0], v: top }, view);

  const seen = {
    left: Math.max(0, -corner.x / perPixel),
    top: Math.max(0, -corner.y / perPixel),
    right: Math.min(width, (size.width - corner.x) / perPixel),
    bottom: Math.min(height, (size.height - corner.y) / perPixel),
  };
  if (seen.right <= seen.left || seen.bottom <= seen.top) return;
  const [across, down] = [bitmap.width / width, bitmap.height / height];
  pen.globalAlpha = underlay.opacity * (theme === 'dark' && !inverted ? DIM : 1);
  pen.globalCompositeOperation = inverted ? 'screen' : theme === 'dark' ? 'source-over' : 'multiply';
  pen.imageSmoothingQuality = 'medium';
  pen.drawImage(
    bitmap.source,
    seen.left * across,
    seen.top * down,
    (seen.right - seen.left) * across,
    (seen.bottom - seen.top) * down,
    corner.x + seen.left * perPixel,
    corner.y + seen.top * perPixel,
    (seen.right - seen.left) * perPixel,
    (seen.bottom - seen.top) * perPixel,
  );
  pen.globalAlpha = 1;
  pen.globalCompositeOperation = 'source-over';
  pictures.countDraw();
}

/** `ratio`: pixels of the screen a pixel of the picture. */
function chosen(picture: LoadedPicture, inverted: boolean, ratio: number): Bitmap {
  if (picture.lines && ratio > 1 && !inverted) return picture.lines;
  const level = levelFor(picture.levels.length, ratio);
  return inverted ? picture.inverted(level) : (picture.levels[level] as Bitmap);
}

/** Where a picture will be, or would be if it could be shown. */
function drawFrame(
  pen: Pen,
  bounds: Bounds,
  failed: boolean,
  underlay: Underlay,
  palette: Palette,
  view: Viewport,
): void {
  const a = toScreen({ u: bounds.minU, v: bounds.maxV }, view);
  const b = toScreen({ u: bounds.maxU, v: bounds.minV }, view);
  pen.strokeStyle = palette.muted;
  pen.lineWidth = 1;
  pen.setLineDash([6, 4]);
  pen.strokeRect(a.x, a.y, b.x - a.x, b.y - a.y);
  pen.setLineDash([]);
  if (!failed) return;
  setText(pen, 12);
  pen.fillStyle = palette.muted;
  pen.textAlign = 'left';
  pen.textBaseline = 'top';
  pen.fillText(says.damaged(underlay.name ?? says.unnamed), a.x + 8, a.y + 8);
}
