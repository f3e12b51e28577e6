import { gridStep, multiples, RULER, rulerText, scaleBar } from '../drawing/grid.ts';
import type { Box } from '../drawing/label-place.ts';
import type { Palette } from '../drawing/palette.ts';
import { type Size, type Viewport, visibleBounds } from '../drawing/viewport.ts';
import type { UnitSystem } from '../graph/document.ts';
import { words } from '../words/index.ts';
import { crisp, type Pen, setText } from './pen.ts';

/** Rulers and scale bar: drawn last, over all else. */
export function drawFrame(pen: Pen, units: UnitSystem, palette: Palette, view: Viewport, size: Size): void {
  drawRulers(pen, units, palette, view, size);
  drawScaleBar(pen, units, palette, view, size);
}

/** Where the scale bar and the word of figures left out stand, which labels keep clear of, px. */
export function frameBoxes(size: Size): Box[] {
  return [
    { minX: RULER, minY: size.height - 34, maxX: RULER + 186, maxY: size.height },
    { minX: size.width - 150, minY: size.height - 26, maxX: size.width, maxY: size.height },
  ];
}

/** Says in the corner of a sheet how many figures have no room at this zoom; nothing where all have. */
export function drawMore(pen: Pen, more: number, palette: Palette, size: Size): void {
  if (more === 0) return;
  setText(pen, 11, 400);
  const text = words.sheets.labels.more(more);
  const width = Math.ceil(pen.measureText(text).width) + 12;
  const [x, y] = [size.width - width - 6, size.height - 24];
  pen.fillStyle = palette.sheet;
  pen.fillRect(x, y, width, 18);
  pen.fillStyle = palette.muted;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillText(text, x + 6, y + 9.5);
}

function drawRulers(pen: Pen, units: UnitSystem, palette: Palette, view: Viewport, size: Size): void {
  const { minor, major } = gridStep(view.scale, units);
  const seen = visibleBounds(view, size);
  pen.fillStyle = palette.ruler;
  pen.fillRect(0, 0, size.width, RULER);
  pen.fillRect(0, 0, RULER, size.height);
  pen.setLineDash([]);
  pen.lineWidth = 1;
  pen.strokeStyle = palette.hairline;
  pen.beginPath();
  pen.moveTo(RULER - 0.5, RULER - 0.5);
  pen.lineTo(size.width, RULER - 0.5);
  pen.moveTo(RULER - 0.5, RULER - 0.5);
  pen.lineTo(RULER - 0.5, size.height);
  for (const [every, tick] of [
    [minor, 4],
    [major, 8],
  ] as const) {
    for (const u of multiples(seen.minU, seen.maxU, every)) {
      const x = crisp(u * view.scale + view.panX);
      if (x < RULER) continue;
      pen.moveTo(x, RULER);
      pen.lineTo(x, RULER - tick);
    }
    for (const v of multiples(seen.minV, seen.maxV, every)) {
      const y = crisp(view.panY - v * view.scale);
      if (y < RULER) continue;
      pen.moveTo(RULER, y);
      pen.lineTo(RULER - tick, y);
    }
  }
  pen.stroke();
  setText(pen, 11, 400);
  pen.fillStyle = palette.muted;
  pen.textBaseline = 'alphabetic';
  pen.textAlign = 'left';
  for (const u of multiples(seen.minU, seen.maxU, major)) {
    const x = Math.round(u * view.scale + view.panX);
    if (x >= RULER - 2 && x < size.width - 24) pen.fillText(rulerText(u, units), x + 4, 13);
  }
  for (const v of multiples(seen.minV, seen.maxV, major)) {
    const y = Math.round(view.panY - v * view.scale);
    if (y >= RULER + 30 && y < size.height) drawUpright(pen, rulerText(v, units), 13, y - 4);
  }
  pen.fillStyle = palette.ruler;
  pen.fillRect(0, 0, RULER - 1, RULER - 1);
  pen.fillStyle = palette.muted;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(units === 'imperial' ? 'ft' : 'm', RULER / 2, RULER / 2 + 0.5);
}

function drawUpright(pen: Pen, text: string, x: number, y: number): void {
  pen.save();
  pen.translate(x, y);
  pen.rotate(-Math.PI / 2);
  pen.fillText(text, 0, 0);
  pen.restore();
}

function drawScaleBar(pen: Pen, units: UnitSystem, palette: Palette, view: Viewport, size: Size): void {
  const bar = scaleBar(view, units, 110);
  const width = Math.round(bar.length * view.scale);
  // To the right of the mark of a cut, which waits in the corner.
  const x = RULER + 26;
  const y = size.height - 16;
  setText(pen, 11, 400);
  pen.fillStyle = palette.sheet;
  pen.fillRect(x - 4, y - 6, width + Math.ceil(pen.measureText(bar.text).width) + 15, 16);
  pen.fillStyle = palette.ink;
  pen.fillRect(x, y, Math.round(width / 2), 4);
  pen.strokeStyle = palette.ink;
  pen.lineWidth = 1;
  pen.strokeRect(x + 0.5, y + 0.5, width - 1, 3);
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillStyle = palette.ink;
  pen.fillText(bar.text, x + width + 7, y + 2);
}
