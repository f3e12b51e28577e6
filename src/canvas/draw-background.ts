import { isFaceOn } from '../drawing/box-faces.ts';
import { gridStep, multiples } from '../drawing/grid.ts';
import type { Palette } from '../drawing/palette.ts';
import { cooktopsOn, exitHatch, hatchSpacing } from '../drawing/room.ts';
import { type Size, toScreen, type Viewport, visibleBounds } from '../drawing/viewport.ts';
import type { Block, Job } from '../graph/document.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import { standing } from './cut.ts';
import { crisp, type Pen, setText, strokeAll } from './pen.ts';

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Paper and grid, what `onPaper` draws on them, floor and ceiling, exits, blocks and the cooktop:
 * everything behind the duct.
 * On a section with a `plane` what lies behind it is an outline, and what lies before it is left out.
 */
export function drawBackground(
  pen: Pen,
  job: Job,
  schemeId: string,
  sheet: SheetId,
  palette: Palette,
  view: Viewport,
  size: Size,
  onPaper: () => void,
  plane: number | null = null,
): void {
  pen.fillStyle = palette.sheet;
  pen.fillRect(0, 0, size.width, size.height);
  drawGrid(pen, job, palette, view, size);
  onPaper();
  const draw = (box: Pick<Block, 'min' | 'max'>, look: Look) => {
    const stands = plane === null ? null : standing(box.min, box.max, sheet, plane);
    if (stands !== 'before') drawBox(pen, box, sheet, look, stands === 'beyond', palette, view);
  };
  for (const face of job.exits) draw(face, { fill: palette.exit, edge: palette.ok, hatch: exitHatch });
  for (const block of job.blocks) {
    const edge = block.kind === 'joist' ? palette.hatch : palette.muted;
    draw(block, { fill: palette.block, edge, hatch: hatchSpacing[block.kind] });
  }
  if (sheet !== 'floor') drawLevels(pen, job, palette, view, size);
  drawCooktops(pen, job, schemeId, sheet, palette, view);
}

function drawGrid(pen: Pen, job: Job, palette: Palette, view: Viewport, size: Size): void {
  const step = gridStep(view.scale, job.units);
  const seen = visibleBounds(view, size);
  pen.lineWidth = 1;
  pen.setLineDash([]);
  for (const [every, colour] of [
    [step.minor, palette.gridMinor],
    [step.major, palette.gridMajor],
  ] as const) {
    pen.strokeStyle = colour;
    pen.beginPath();
    for (const u of multiples(seen.minU, seen.maxU, every)) {
      const x = crisp(u * view.scale + view.panX);
      pen.moveTo(x, 0);
      pen.lineTo(x, size.height);
    }
    for (const v of multiples(seen.minV, seen.maxV, every)) {
      const y = crisp(view.panY - v * view.scale);
      pen.moveTo(0, y);
      pen.lineTo(size.width, y);
    }
    pen.stroke();
  }
}

/** A box of space as a sheet shows it, on whole pixels and never thinner than two. */
export function rectOf(box: Pick<Block, 'min' | 'max'>, sheet: SheetId, view: Viewport): Rect {
  const a = toScreen(project(box.min, sheet), view);
  const b = toScreen(project(box.max, sheet), view);
  const x = Math.round(Math.min(a.x, b.x));
  const y = Math.round(Math.min(a.y, b.y));
  return {
    x,
    y,
    width: Math.max(2, Math.round(Math.abs(a.x - b.x))),
    height: Math.max(2, Math.round(Math.abs(a.y - b.y))),
  };
}

interface Look {
  readonly fill: string;
  readonly edge: string;
  readonly hatch: number | null;
}

/** A box in its colour, hatched where the sheet cuts through it; one seen face on, or `beyond`, is a faint outline. */
function drawBox(
  pen: Pen,
  box: Pick<Block, 'min' | 'max'>,
  sheet: SheetId,
  look: Look,
  beyond: boolean,
  palette: Palette,
  view: Viewport,
): void {
  const r = rectOf(box, sheet, view);
  const faceOn = isFaceOn(box, sheet) && look.hatch !== null;
  if (!faceOn && !beyond) {
    pen.fillStyle = look.fill;
    pen.fillRect(r.x, r.y, r.width, r.height);
    if (look.hatch) drawHatch(pen, r, palette.hatch, look.hatch);
  }
  if (faceOn) pen.setLineDash([8, 4]);
  pen.strokeStyle = look.edge;
  pen.globalAlpha = faceOn || beyond ? 0.6 : 1;
  pen.lineWidth = 1;
  pen.strokeRect(r.x + 0.5, r.y + 0.5, r.width - 1, r.height - 1);
  pen.globalAlpha = 1;
  pen.setLineDash([]);
}

/** Lines at 45° across a rectangle. */
export function drawHatch(pen: Pen, r: Rect, colour: string, every: number): void {
  pen.save();
  pen.beginPath();
  pen.rect(r.x, r.y, r.width, r.height);
  pen.clip();
  pen.strokeStyle = colour;
  pen.lineWidth = 1;
  pen.beginPath();
  for (let d = -r.height; d < r.width; d += every * Math.SQRT2) {
    pen.moveTo(r.x + d, r.y + r.height);
    pen.lineTo(r.x + d + r.height, r.y);
  }
  pen.stroke();
  pen.restore();
}

/** The finished floor with ground below it, and the ceiling. */
function drawLevels(pen: Pen, job: Job, palette: Palette, view: Viewport, size: Size): void {
  const floor = crisp(view.panY);
  const ceiling = crisp(view.panY - job.kitchen.ceilingHeight * view.scale);
  drawHatch(pen, { x: 0, y: Math.round(floor), width: size.width, height: 7 }, palette.hatch, 5);
  pen.strokeStyle = palette.ink;
  pen.lineWidth = 1.5;
  line(pen, 0, floor, size.width, floor);
  pen.strokeStyle = palette.muted;
  pen.lineWidth = 1;
  pen.setLineDash([14, 4, 3, 4]);
  line(pen, 0, ceiling, size.width, ceiling);
  pen.setLineDash([]);
  setText(pen, 11, 400);
  pen.fillStyle = palette.muted;
  pen.textAlign = 'right';
  pen.textBaseline = 'bottom';
  pen.strokeStyle = palette.sheet;
  pen.lineWidth = 3.5;
  pen.lineJoin = 'round';
  for (const { text, y } of [
    { text: words.sheets.levels.ceiling, y: ceiling },
    { text: words.sheets.levels.floor, y: floor },
  ]) {
    pen.strokeText(text, size.width - 8, y - 3);
    pen.fillText(text, size.width - 8, y - 3);
  }
}

function drawCooktops(
  pen: Pen,
  job: Job,
  schemeId: string,
  sheet: SheetId,
  palette: Palette,
  view: Viewport,
): void {
  pen.lineWidth = 1;
  for (const { solid, dashed, burners } of cooktopsOn(job, schemeId, sheet)) {
    pen.strokeStyle = palette.muted;
    strokeAll(pen, solid, view);
    pen.setLineDash([5, 3]);
    strokeAll(pen, dashed, view);
    pen.setLineDash([]);
    pen.strokeStyle = palette.hairline;
    strokeAll(pen, burners, view);
  }
}

function line(pen: Pen, x1: number, y1: number, x2: number, y2: number): void {
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
}
