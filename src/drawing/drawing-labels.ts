import type { ScreenPoint, SheetId, SheetPoint } from '../graph/sheet.ts';
import { inkOnFill, textOn } from './colour.ts';
import { labelledLegs } from './detail.ts';
import { noteBoxesOn } from './drawing-annotations.ts';
import { arrowOf } from './flow-arrow.ts';
import { type Box, grown, LEADER_DOT, type Placed, placeLabels, type Wanted } from './label-place.ts';
import { labelsOf, lengthLabel, valueLabel } from './labels.ts';
import { type LayerId, type Mark, type Paint, PX, type TextMark } from './marks.ts';
import { busyPlaces, namesOn, screenBox } from './names.ts';
import { MIN_TEXT } from './palette.ts';
import type { Layered, Setting } from './sheet-drawing.ts';
import { circle, line } from './stroke.ts';
import { type Bounds, toSheet } from './viewport.ts';

/** Labels may stand this far round what is drawn, px of paper. */
const around = 110;

/**
 * Lengths, values, sizes, turns and names where there is room; of a view in space (`sheet` null) lengths and values.
 * They keep clear of what is already `said`, px of paper.
 */
export function labelMarks(
  setting: Setting,
  sheet: SheetId | null,
  core: Bounds,
  said: readonly Box[],
): readonly Layered[] {
  const { outline, paper, job, route } = setting;
  const labelled = labelledLegs(outline.legs, [], paper);
  const area = grown(screenBox(core, paper), around);
  const arrows = outline.legs.flatMap((leg) => arrowOf(leg, paper)?.box ?? []);
  const bodies = outline.drawables.filter(({ kind }) => kind === 'in-line');
  const kept: Box[] = [...said, ...arrows, ...bodies.map(({ bounds }) => screenBox(bounds, paper))];
  if (sheet) kept.push(...noteBoxesOn(setting, sheet));
  const input = { ...setting, by: setting.colourBy, units: job.units, view: paper, legs: labelled };
  const wanted: readonly Wanted[] = sheet
    ? labelsOf({
        ...input,
        sheet,
        selection: { nodes: [], segments: [] },
        names: namesOn(job, route.schemeId, sheet, outline.drawables),
      })
    : labelled.flatMap((leg) =>
        [lengthLabel(leg, input), valueLabel(leg, input)].flatMap((label, i) =>
          label && !leg.endOn ? [{ ...label, priority: 90 - i }] : [],
        ),
      );
  const room = sheet ? job : { exits: [], blocks: [] };
  const busy = busyPlaces(room, outline.drawables, sheet ?? 'floor', paper);
  return placeLabels(wanted, area, kept, busy).flatMap((label) => marked(label, setting));
}

function marked(label: Placed, setting: Setting): readonly Layered[] {
  const { outline, fills, paper } = setting;
  const { box, dimension, leader, kind, id: of } = label;
  const text = textOf(label, fills, paper);
  const at = (point: ScreenPoint) => toSheet(point, paper);
  if (!dimension) return [...(leader ? leaderMarks(leader, at, paper.scale, of) : []), [layerOf(kind), text]];
  const leg = outline.byId.get(of);
  const { from, to, extensions } = dimension;
  const mark: Mark = {
    kind: 'dimension',
    feet: leg ? [leg.from, leg.to] : [at(from), at(to)],
    line: [at(from), at(to)],
    extensions: extensions.map(([a, b]) => [at(a), at(b)] as const),
    value: leg?.segment.length ?? 0,
    text: {
      ...text,
      behind: { as: 'plate', paint: 'sheet' },
      width: (box.maxX - box.minX) * PX,
    },
    of,
  };
  return [['dimensions', mark]];
}

/** A leader's line, and the dot on what it leads from. */
function leaderMarks(
  [foot, end]: readonly [ScreenPoint, ScreenPoint],
  at: (point: ScreenPoint) => SheetPoint,
  scale: number,
  of: string,
): readonly Layered[] {
  const pen = { paint: 'muted', width: PX } as const;
  const dot = circle(at(foot), LEADER_DOT / scale);
  return [
    ['labels', { kind: 'line', strokes: [line(at(foot), at(end))], pen, of }],
    ['labels', { kind: 'fill', outline: [dot], paint: 'muted', of }],
  ];
}

function layerOf(kind: Placed['kind']): LayerId {
  return kind === 'name' ? 'names' : 'labels';
}

function textOf(
  { box, text, kind, inside, id: of }: Placed,
  fills: Setting['fills'],
  paper: Setting['paper'],
): TextMark {
  const fill = inside ? fills.get(inside) : undefined;
  const quiet = kind === 'name' || kind === 'turn';
  const ink: Paint = quiet ? 'muted' : 'ink';
  const plate = kind === 'name';
  return {
    kind: 'text',
    at: toSheet({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, paper),
    align: 'centre',
    text,
    size: MIN_TEXT * PX,
    weight: plate ? 400 : 500,
    paint: fill ? inkOnFill[textOn(fill)] : ink,
    behind: {
      as: plate ? 'plate' : 'rim',
      paint: (fill as Paint | undefined) ?? (inside ? 'unsolved' : 'sheet'),
    },
    width: (box.maxX - box.minX) * PX,
    height: (box.maxY - box.minY) * PX,
    of,
  };
}
