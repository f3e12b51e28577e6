import { boundsOn } from '../../../drawing/box-faces.ts';
import { dimensionShape } from '../../../drawing/dimension-lines.ts';
import { changeNote, renameBlock, renameExit, setLength } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { placesOf } from '../../../graph/places.ts';
import { project, type SheetId, type SheetPoint } from '../../../graph/sheet.ts';
import { formatLength, parseRelativeLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { BoardState } from '../../board.ts';
import type { Item } from '../../selection.ts';
import type { ToolContext } from '../tool.ts';
import { boxOf } from './resizing.ts';

const says = words.tools.editing;

/** The shortest length that a leg can be given, m. */
const SHORTEST = 1e-3;

/**
 * Opens a field over the number or the words of a thing: a leg's length, a dimension's where it spans a
 * leg, a note's words, a block's name. `false` where the thing has nothing to type.
 */
export function editItem(context: ToolContext, item: Item, sheet: SheetId): boolean {
  switch (item.kind) {
    case 'segment':
      return editLength(context, item.id, sheet, null);
    case 'dimension':
      return editDimension(context, item.id, sheet);
    case 'note':
      return editNote(context, item.id);
    case 'block':
    case 'exit':
      return editName(context, item, sheet);
    default:
      return false;
  }
}

function editLength(context: ToolContext, id: string, sheet: SheetId, at: SheetPoint | null): boolean {
  const { board } = context;
  const { solution, units, schemeId } = board.getState();
  const leg = solution.route.segments.get(id);
  const [from, to] = [leg?.from, leg?.to].map((end) => end && solution.route.nodes.get(end));
  if (!leg || !from || !to) return false;
  const [a, b] = [project(from.at, sheet), project(to.at, sheet)];
  const surface = context.surface(sheet);
  const label = surface?.labelOf('dimension', id) ?? surface?.labelOf('riser', id);
  context.ask({
    sheet,
    at: at ?? label ?? { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 },
    label: says.length(placesOf(solution.route).leg(id)),
    value: formatLength(leg.length, units, { atLeast: 16 }),
    commit: whileThere(context, { kind: 'segment', id }, (text) => {
      const typed = parseRelativeLength(text, units, leg.length);
      if (!typed.ok) return typed.message;
      if (typed.value < SHORTEST) return words.tools.draw.legTooShort;
      if (typed.value > 1000) return words.tools.draw.legTooLong;
      board.dispatch(words.edits.route.setLength, (job) => void setLength(job, schemeId, id, typed.value));
      context.announce(says.lengthSet(formatLength(typed.value, units)));
      return null;
    }),
  });
  return true;
}

/** A dimension that measures a leg from end to end changes it; any other only measures. */
function editDimension(context: ToolContext, id: string, sheet: SheetId): boolean {
  const { job, schemeId } = context.board.getState();
  const scheme = schemeOf(job, schemeId);
  const dimension = scheme.dimensions?.find((each) => each.id === id);
  const shape = dimension && dimensionShape(dimension, scheme, job);
  if (!dimension || !shape) return false;
  const ends = [dimension.from, dimension.to].map((end) => ('node' in end ? end.node : null));
  const leg = scheme.segments.find(({ from, to }) => ends.includes(from) && ends.includes(to));
  const whole = leg && Math.abs(lengthOf(context, leg.id) - shape.value) < 1e-6;
  if (leg && whole) {
    const [a, b] = shape.line;
    return editLength(context, leg.id, sheet, { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 });
  }
  context.announce(says.measuresOnly);
  return true;
}

function lengthOf({ board }: ToolContext, segment: string): number {
  return board.getState().solution.route.segments.get(segment)?.length ?? Number.NaN;
}

/** Opens a field over a note's words; words taken away take the note along. */
function editNote(context: ToolContext, id: string): boolean {
  const { board } = context;
  const note = board.getState().job.sheetNotes?.find((each) => each.id === id);
  if (!note) return false;
  context.ask({
    sheet: note.sheet,
    at: { u: note.at[0], v: note.at[1] },
    label: words.tools.note.text,
    value: note.text,
    lines: true,
    commit: whileThere(context, { kind: 'note', id }, (text) => {
      if (text.trim() === '') return words.tools.note.empty;
      board.dispatch(words.edits.room.changeNote, (job) => void changeNote(job, id, { text: text.trim() }));
      return null;
    }),
  });
  return true;
}

function editName(context: ToolContext, item: Item, sheet: SheetId): boolean {
  const { board } = context;
  const { job } = board.getState();
  const box = boxOf(item, job);
  if (!box) return false;
  const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
  context.ask({
    sheet,
    at: { u: (minU + maxU) / 2, v: (minV + maxV) / 2 },
    label: item.kind === 'block' ? says.blockName : says.exitName,
    value: box.name,
    commit: whileThere(context, item, (text) => {
      const rename = item.kind === 'block' ? renameBlock : renameExit;
      board.dispatch(
        item.kind === 'block' ? words.edits.room.renameBlock : words.edits.room.renameExit,
        (draft) => rename(draft, item.id, text),
      );
      return null;
    }),
  });
  return true;
}

/** A field may stay open while an undo takes away what it is about: then it says so. */
function whileThere(
  { board }: ToolContext,
  item: Item,
  commit: (text: string) => string | null,
): (text: string) => string | null {
  return (text) => (isThere(board.getState(), item) ? commit(text) : says.gone);
}

function isThere({ job, solution }: BoardState, item: Item): boolean {
  if (item.kind === 'segment') return solution.route.segments.has(item.id);
  if (item.kind === 'note') return job.sheetNotes?.some(({ id }) => id === item.id) ?? false;
  return boxOf(item, job) !== undefined;
}
