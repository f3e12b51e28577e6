import type { Finding } from '../../../graph/route.ts';
import { words } from '../../../words/index.ts';
import { POINT } from '../../pdf/font.ts';
import type { At, Page } from '../../pdf/page.ts';
import type { DrawingBlock } from '../types.ts';
import { drawMarks, lieOf } from './draw-marks.ts';
import type { Drawn } from './drawn.ts';
import { fitDrawing } from './fit-drawing.ts';
import { drawKeys, drawLetter, drawNumber } from './keys.ts';
import { type Area, inks, pen, sizes, style, type Type } from './look.ts';
import { drawScaleBar, scaleBarHeight } from './scale-bar.ts';
import { drawCircle, drawLine, drawPolygon } from './shapes.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';
import { inside } from './title-block.ts';

/** Width of the column beside a drawing, mm. */
const columnWidth = 58;
/** Paper left free in the column, mm. */
const free = 4;

/** Draws one sheet at the largest standard scale that its page has room for, and says which. */
export function drawDrawingPage(page: Page, block: DrawingBlock, drawn: Drawn, type: Type): string {
  const whole = inside(page);
  const area: Area = { ...whole, width: whole.width - columnWidth };
  const column: Area = { ...whole, x: area.x + area.width, width: columnWidth };
  const { drawing, middle } = fitDrawing(block.drawing, drawn, area, type);
  const lie = lieOf(area, drawing.scale, middle);
  drawMarks(page, drawing, lie, type);
  drawKeys(page, drawing, lie, drawn, type);
  drawLine(
    page,
    { line: pen('edge') },
    { x: column.x, y: column.y },
    { x: column.x, y: column.y + column.height },
  );
  drawColumn(page, column, block, drawing.scale, drawn, type);
  return block.drawing === 'isometric'
    ? words.paper.block.noScale
    : words.drawings.scaleInBlock(drawing.scale);
}

/** Beside the drawing: what it is, its scale, what is marked on it, and its key. */
function drawColumn(
  page: Page,
  column: Area,
  block: DrawingBlock,
  scale: number,
  drawn: Drawn,
  type: Type,
): void {
  const say = words.paper.drawing;
  const [x, width] = [column.x + free, column.width - 2 * free];
  const head = style(type, sizes.section, 'semibold', inks.ink, true);
  const quiet = style(type, sizes.small, 'regular', inks.muted, true);
  let y = column.y + free;
  y +=
    drawLines(
      page,
      { x, y },
      wrapped(block.caption, block.drawing === 'floor' ? width - 8 : width, head),
      head,
    ) + 1;
  if (block.drawing === 'floor') drawNorth(page, { x: x + width - 3, y: column.y + free + 4.5 }, type);
  if (block.drawing === 'isometric')
    y += drawLines(page, { x, y }, wrapped(say.isometric, width, quiet), quiet);
  else {
    y += drawLines(page, { x, y }, [words.drawings.scaleInBlock(scale)], style(type, sizes.heading)) + 1.5;
    drawScaleBar(page, { x, y }, width, scale, drawn.job.units, type);
    y += scaleBarHeight;
    y += drawLines(page, { x, y }, wrapped(say.figures, width, quiet), quiet);
  }
  const entries = keyEntries(block, drawn, type);
  const keyTop = column.y + column.height - free - entries.length * 5.2 - 5;
  drawFindings(page, { x, y: y + 4, width, height: keyTop - y - 8 }, drawn, type);
  drawLine(page, { line: pen('fine') }, { x, y: keyTop - 2 }, { x: x + width, y: keyTop - 2 });
  page.text({ x, y: keyTop + 2.4 }, say.key, style(type, sizes.small, 'semibold', inks.ink, true));
  entries.forEach(({ sign, text }, i) => {
    const at = { x: x + 4, y: keyTop + 7 + i * 5.2 };
    sign(page, at);
    page.text({ x: x + 11, y: at.y + 0.9 }, text, style(type, 6.4, 'regular', inks.ink, true));
  });
}

const rank = { danger: 0, error: 1, warning: 2, note: 3 } as const;

/** What is marked on the drawing, the gravest first, as many as there is room for. */
function drawFindings(page: Page, area: Area, { lettered }: Drawn, type: Type): void {
  const say = words.paper.drawing;
  const head = style(type, sizes.small, 'semibold', inks.ink, true);
  const text = style(type, sizes.small, 'regular', inks.ink, true);
  const quiet = { ...text, colour: inks.muted };
  page.text({ x: area.x, y: area.y + 2.4 }, say.findings, head);
  let y = area.y + 5;
  if (lettered.length === 0) {
    drawLines(page, { x: area.x, y }, wrapped(say.noFindings, area.width, quiet), quiet);
    return;
  }
  const sorted = [...lettered].sort((a, b) => rank[a.finding.severity] - rank[b.finding.severity]);
  for (const [i, { letter, finding }] of sorted.entries()) {
    const lines = wrapped(saidOf(finding), area.width - 6, text);
    const height = lines.length * lineHeight(text) + 1.8;
    const last = i === sorted.length - 1;
    if (y + height + (last ? 0 : lineHeight(quiet)) > area.y + area.height) {
      drawLines(page, { x: area.x, y }, [say.more(sorted.length - i)], quiet);
      return;
    }
    drawLetter(page, { x: area.x + 1.8, y: y + 2 }, letter, finding.severity, type);
    drawLines(page, { x: area.x + 6, y }, lines, text);
    y += height;
  }
}

function saidOf({ message, remedy, severity }: Finding): string {
  const grave = severity === 'danger' || severity === 'error';
  return grave && remedy ? `${message} ${remedy}` : message;
}

interface KeyEntry {
  readonly text: string;
  readonly sign: (page: Page, at: At) => void;
}

function keyEntries({ drawing }: DrawingBlock, { route, lettered }: Drawn, type: Type): readonly KeyEntry[] {
  const say = words.paper.drawing;
  const flat = drawing !== 'isometric';
  const along = [...route.segments.values()].some(({ direction }) => {
    const depth = drawing === 'floor' ? direction[2] : drawing === 'section-x' ? direction[1] : direction[0];
    return flat && Math.abs(depth) > 0.996;
  });
  const severities = new Set(lettered.map(({ finding }) => finding.severity));
  const grave = severities.has('danger') || severities.has('error');
  return [
    { text: say.leg, sign: (page, at) => drawNumber(page, at, '1', type) },
    ...(grave
      ? [{ text: say.grave, sign: (page: Page, at: At) => drawLetter(page, at, 'A', 'danger', type) }]
      : []),
    ...(severities.has('warning')
      ? [{ text: say.warning, sign: (page: Page, at: At) => drawLetter(page, at, 'A', 'warning', type) }]
      : []),
    { text: say.flow, sign: drawArrow },
    { text: say.centre, sign: drawCentreSign },
    ...(along
      ? [
          { text: say.toward, sign: (page: Page, at: At) => drawRiser(page, at, true) },
          { text: say.away, sign: (page: Page, at: At) => drawRiser(page, at, false) },
        ]
      : []),
  ];
}

function drawArrow(page: Page, { x, y }: At): void {
  const corners = [
    { x: x + 2, y },
    { x: x - 2, y: y - 1.3 },
    { x: x - 1, y },
    { x: x - 2, y: y + 1.3 },
  ];
  drawPolygon(page, { fill: inks.paper, line: pen('edge') }, ...corners);
}

function drawCentreSign(page: Page, { x, y }: At): void {
  const line = pen('edge', inks.muted, [2.6, 0.8, 0.5, 0.8]);
  drawLine(page, { line }, { x: x - 4, y }, { x: x + 4, y });
}

/** A riser as the sheets draw it: half of it inked where the air comes at the viewer, crossed where it goes away. */
function drawRiser(page: Page, at: At, toward: boolean): void {
  const radius = 1.7;
  const corner = radius * Math.SQRT1_2;
  drawCircle(page, at, radius, { fill: inks.wash, line: pen('edge') });
  if (toward)
    page.draw({ fill: inks.ink }, (path) => {
      path.arc(at, radius, Math.PI / 4, (5 * Math.PI) / 4);
      path.close();
    });
  for (const side of toward ? [-1] : [-1, 1])
    drawLine(
      page,
      { line: pen('fine') },
      { x: at.x - corner, y: at.y - side * corner },
      { x: at.x + corner, y: at.y + side * corner },
    );
}

function drawNorth(page: Page, at: At, type: Type): void {
  drawCircle(page, at, 3, { line: pen('fine') });
  drawPolygon(
    page,
    { fill: inks.ink },
    { x: at.x, y: at.y - 3 },
    { x: at.x - 1.1, y: at.y + 1.6 },
    { x: at.x, y: at.y + 0.8 },
    { x: at.x + 1.1, y: at.y + 1.6 },
  );
  const set = style(type, sizes.small, 'semibold', inks.ink, true);
  page.text({ x: at.x, y: at.y + 3 + sizes.small * POINT }, words.paper.drawing.north, set, 'middle');
}
