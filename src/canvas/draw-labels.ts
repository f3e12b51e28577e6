import { inkOnFill, textOn } from '../drawing/colour.ts';
import { type Box, type DimensionLines, LEADER_DOT, type Placed } from '../drawing/label-place.ts';
import { MIN_TEXT, type Palette } from '../drawing/palette.ts';
import { type Pen, setText } from './pen.ts';

/** Draws placed labels: dimension lines and leaders first, then every text over them. */
export function drawLabels(
  pen: Pen,
  labels: readonly Placed[],
  palette: Palette,
  colours: ReadonlyMap<string, string>,
): void {
  pen.setLineDash([]);
  for (const label of labels) if (label.dimension) drawDimension(pen, label.dimension, label, palette);
  drawLeaders(pen, labels, palette);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const label of labels) {
    setText(pen, MIN_TEXT, label.kind === 'name' ? 400 : 500);
    const x = Math.round((label.box.minX + label.box.maxX) / 2);
    const y = Math.round((label.box.minY + label.box.maxY) / 2) + 0.5;
    const fill = label.inside ? colours.get(label.inside) : undefined;
    const quiet = label.kind === 'name' || label.kind === 'turn';
    const ink = quiet ? palette.muted : palette.ink;
    pen.strokeStyle = fill ?? palette.sheet;
    pen.lineWidth = 3.5;
    pen.lineJoin = 'round';
    if (label.kind === 'name') plate(pen, label.box, palette);
    else pen.strokeText(label.text, x, y);
    pen.fillStyle = fill ? inkOnFill[textOn(fill)] : ink;
    pen.fillText(label.text, x, y);
  }
}

/** Thin lines from texts to what they are about, each with a dot at its foot. */
function drawLeaders(pen: Pen, labels: readonly Placed[], palette: Palette): void {
  pen.strokeStyle = palette.muted;
  pen.fillStyle = palette.muted;
  pen.lineWidth = 1;
  for (const { leader } of labels) {
    if (!leader) continue;
    const [foot, end] = leader;
    pen.beginPath();
    pen.moveTo(snap(foot.x, end.x), snap(foot.y, end.y));
    pen.lineTo(snap(end.x, foot.x), snap(end.y, foot.y));
    pen.stroke();
    pen.beginPath();
    pen.arc(snap(foot.x, end.x), snap(foot.y, end.y), LEADER_DOT, 0, 2 * Math.PI);
    pen.fill();
  }
}

/** Paper behind a text, so that hatching and edges do not run through it. */
function plate(pen: Pen, box: Box, palette: Palette): void {
  pen.globalAlpha = 0.86;
  pen.fillStyle = palette.sheet;
  pen.fillRect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
  pen.globalAlpha = 1;
}

/** Dimension and extension lines with architects' slashes; the line leaves a gap where the text stands. */
function drawDimension(pen: Pen, lines: DimensionLines, label: Placed, palette: Palette): void {
  const { from, to, extensions } = lines;
  pen.strokeStyle = palette.muted;
  pen.lineWidth = 1;
  pen.beginPath();
  for (const [a, b] of extensions) {
    pen.moveTo(snap(a.x, b.x), snap(a.y, b.y));
    pen.lineTo(snap(b.x, a.x), snap(b.y, a.y));
  }
  pen.moveTo(snap(from.x, to.x), snap(from.y, to.y));
  pen.lineTo(snap(to.x, from.x), snap(to.y, from.y));
  pen.stroke();
  pen.strokeStyle = palette.ink;
  pen.lineWidth = 1.5;
  pen.beginPath();
  for (const end of [from, to]) {
    pen.moveTo(end.x - 4, end.y + 4);
    pen.lineTo(end.x + 4, end.y - 4);
  }
  pen.stroke();
  const { box } = label;
  pen.fillStyle = palette.sheet;
  pen.fillRect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
}

/** Puts an upright or level line on the middle of a pixel; a slanted one stays where it is. */
function snap(at: number, other: number): number {
  return Math.abs(at - other) < 0.5 ? Math.floor(at) + 0.5 : at;
}
