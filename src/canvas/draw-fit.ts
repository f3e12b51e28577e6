import type { Palette } from '../drawing/palette.ts';
import type { Drawable } from '../drawing/stroke.ts';
import type { Viewport } from '../drawing/viewport.ts';
import type { Block } from '../graph/document.ts';
import type { Finding } from '../graph/route.ts';
import type { SheetId } from '../graph/sheet.ts';
import { drawHatch, rectOf } from './draw-background.ts';
import { type Pen, trace } from './pen.ts';

/** Duct nearer to a block than wanted is marked as far as this around the block, m. */
const nearMiss = 0.03;

/** One place where duct does not fit its room. */
interface Mark {
  readonly item: Drawable;
  readonly block: Block;
  readonly grave: boolean;
  readonly close: boolean;
}

/** What of the findings a sheet shows: duct and block of everything that does not fit. */
export function misfits(
  findings: readonly Finding[],
  drawables: readonly Drawable[],
  blocks: readonly Block[],
): Mark[] {
  const told = findings.filter(({ rule, blocks: met }) => rule.startsWith('fit-') && met && met.length > 0);
  if (told.length === 0) return [];
  const byId = new Map(blocks.map((block) => [block.id, block]));
  const shapes = new Map<string, Drawable[]>();
  for (const item of drawables) {
    const key = `${item.of} ${item.id}`;
    shapes.set(key, [...(shapes.get(key) ?? []), item]);
  }
  return told.flatMap(({ rule, severity, nodes, segments, blocks: met = [] }) => {
    const keys = [...nodes.map((id) => `node ${id}`), ...segments.map((id) => `segment ${id}`)];
    const items = keys.flatMap((key) => shapes.get(key) ?? []);
    return met.flatMap((id) => {
      const block = byId.get(id);
      if (!block) return [];
      const grave = severity === 'error' || severity === 'danger';
      return items.map((item) => ({ item, block, grave, close: rule === 'fit-clearance' }));
    });
  });
}

/** Hatches duct where it stands in a block, in the colour of danger; where it is only too near, in the accent and wider. */
export function drawMisfits(
  pen: Pen,
  marks: readonly Mark[],
  sheet: SheetId,
  palette: Palette,
  view: Viewport,
): void {
  for (const { item, block, grave, close } of marks) {
    const rect = rectOf(block, sheet, view);
    const by = close ? Math.max(4, nearMiss * view.scale) : 0;
    const place = {
      x: rect.x - by,
      y: rect.y - by,
      width: rect.width + 2 * by,
      height: rect.height + 2 * by,
    };
    const colour = grave ? palette.danger : palette.accent;
    pen.save();
    pen.beginPath();
    for (const path of item.fill)
      path.forEach((stroke, i) => {
        trace(pen, stroke, view, i > 0);
      });
    pen.clip();
    pen.fillStyle = colour;
    pen.globalAlpha = close ? 0.12 : 0.28;
    pen.fillRect(place.x, place.y, place.width, place.height);
    pen.globalAlpha = 1;
    pen.setLineDash([]);
    drawHatch(pen, place, colour, close ? 9 : 5);
    pen.restore();
    if (close) continue;
    pen.strokeStyle = colour;
    pen.lineWidth = 1.5;
    pen.setLineDash([4, 3]);
    pen.strokeRect(rect.x + 0.5, rect.y + 0.5, rect.width - 1, rect.height - 1);
    pen.setLineDash([]);
  }
}
