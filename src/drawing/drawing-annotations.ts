import { schemeOf } from '../graph/infer.ts';
import type { ScreenPoint, SheetId } from '../graph/sheet.ts';
import { formatLength } from '../units/index.ts';
import { type DimensionShape, dimensionShape } from './dimension-lines.ts';
import type { Box } from './label-place.ts';
import { PX, type TextMark } from './marks.ts';
import { NOTE_LINE, NOTE_PADDING, noteSize } from './note-box.ts';
import { MIN_TEXT } from './palette.ts';
import { boundsOutline } from './room.ts';
import type { Layered, Setting } from './sheet-drawing.ts';
import { circle } from './stroke.ts';
import { toScreen, toSheet, type Viewport } from './viewport.ts';

/** What people have pinned to a sheet: dimensions and notes. */
export function annotationMarks(setting: Setting, sheet: SheetId): readonly Layered[] {
  return [...dimensionMarks(setting, sheet), ...noteMarks(setting, sheet)];
}

function dimensionMarks({ job, route, paper, measure }: Setting, sheet: SheetId): Layered[] {
  const scheme = schemeOf(job, route.schemeId);
  return (scheme.dimensions ?? []).flatMap((dimension): Layered[] => {
    const shape = dimension.sheet === sheet ? dimensionShape(dimension, scheme, job) : null;
    if (!shape) return [];
    const { line: ends, value } = shape;
    const text = formatLength(value, job.units);
    const mark: TextMark = {
      kind: 'text',
      at: { u: (ends[0].u + ends[1].u) / 2, v: (ends[0].v + ends[1].v) / 2 },
      align: 'centre',
      text,
      size: MIN_TEXT * PX,
      weight: 600,
      paint: 'ink',
      behind: { as: 'plate', paint: 'sheet' },
      width: (measure(text) + 8) * PX,
      height: 18 * PX,
    };
    const extensions = extensionsOf(shape, paper);
    return [
      [
        'dimensions',
        { kind: 'dimension', feet: shape.ends, line: ends, extensions, value, text: mark, of: dimension.id },
      ],
    ];
  });
}

/** From a little off what is measured to a little beyond the dimension line; none where the line is on it. */
function extensionsOf({ ends, line }: DimensionShape, paper: Viewport) {
  return ([0, 1] as const).flatMap((which) => {
    const [end, to] = [toScreen(ends[which], paper), toScreen(line[which], paper)];
    const length = Math.hypot(to.x - end.x, to.y - end.y);
    if (length < 8) return [];
    const by = (px: number): ScreenPoint => ({
      x: end.x + ((to.x - end.x) / length) * px,
      y: end.y + ((to.y - end.y) / length) * px,
    });
    return [[toSheet(by(6), paper), toSheet(by(length + 5), paper)] as const];
  });
}

/** Where notes stand on a sheet at its scale, px of paper: other labels keep clear of them. */
export function noteBoxesOn({ job, paper }: Pick<Setting, 'job' | 'paper'>, sheet: SheetId): Box[] {
  return (job.sheetNotes ?? []).flatMap((note) => {
    if (note.sheet !== sheet) return [];
    const { x, y } = toScreen({ u: note.at[0], v: note.at[1] }, paper);
    const { width, height } = noteSize(note.text);
    return [{ minX: x, minY: y, maxX: x + width, maxY: y + height }];
  });
}

function noteMarks({ job, paper }: Setting, sheet: SheetId): Layered[] {
  return (job.sheetNotes ?? []).flatMap((note): Layered[] => {
    if (note.sheet !== sheet) return [];
    const corner = toScreen({ u: note.at[0], v: note.at[1] }, paper);
    const { width, height, lines } = noteSize(note.text);
    const [a, b] = [
      toSheet({ x: corner.x, y: corner.y + height }, paper),
      toSheet({ x: corner.x + width, y: corner.y }, paper),
    ];
    const plate = boundsOutline({ minU: a.u, minV: a.v, maxU: b.u, maxV: b.v });
    const { id: of } = note;
    return [
      ['notes', { kind: 'fill', outline: [plate], paint: 'sheet', of }],
      ['notes', { kind: 'line', strokes: [plate], pen: { paint: 'muted', width: PX }, of }],
      [
        'notes',
        {
          kind: 'fill',
          outline: [circle({ u: note.at[0], v: note.at[1] }, 3 / paper.scale)],
          paint: 'muted',
          of,
        },
      ],
      ...lines.map((text, i): Layered => {
        const y = corner.y + NOTE_PADDING / 2 + (i + 0.5) * NOTE_LINE;
        const at = toSheet({ x: corner.x + NOTE_PADDING, y }, paper);
        const size = { width: (width - 2 * NOTE_PADDING) * PX, height: NOTE_LINE * PX };
        const mark: TextMark = {
          ...{ kind: 'text', at, align: 'left', text, size: MIN_TEXT * PX, weight: 400, paint: 'ink' },
          ...size,
          of,
        };
        return ['notes', mark];
      }),
    ];
  });
}
