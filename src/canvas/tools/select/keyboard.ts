import { joinNodes, splitRun } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import { INCH } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { bendGrip } from '../../bend-grip.ts';
import { nothing } from '../../board.ts';
import { isEmpty, only, single } from '../../selection.ts';
import { repeating } from '../box/repeating.ts';
import { type Action, actionOf } from '../keys.ts';
import type { KeyInput, Phase, ToolContext } from '../tool.ts';
import { bending } from './bending.ts';
import { isEmptyLoad, loadOf, moveLoad } from './choice.ts';
import { deleteSelected } from './delete.ts';
import { editItem } from './editing.ts';
import { typedMove } from './moving.ts';

const says = words.tools.select;

/** One press of an arrow key moves by this much, m. */
export const nudgeStep = { imperial: INCH, metric: 0.01 } as const;

const arrows: Partial<Record<Action, SheetPoint>> = {
  'nudge.left': { u: -1, v: 0 },
  'nudge.right': { u: 1, v: 0 },
  'nudge.up': { u: 0, v: 1 },
  'nudge.down': { u: 0, v: -1 },
  'nudge.far.left': { u: -10, v: 0 },
  'nudge.far.right': { u: 10, v: 0 },
  'nudge.far.up': { u: 0, v: 10 },
  'nudge.far.down': { u: 0, v: -10 },
};

/** What keys do to a selection at rest: the phase that follows, or whether the key was used. */
export function editByKey(context: ToolContext, input: KeyInput): Phase | boolean {
  const { board } = context;
  const { selection, job, schemeId } = board.getState();
  const action = actionOf(input, 'select') ?? actionOf(input, 'sheets');
  if (action === undefined) return false;
  if (action === 'select.all') {
    const { nodes, segments } = schemeOf(job, schemeId);
    board.set({ selection: { nodes: nodes.map(({ id }) => id), segments: segments.map(({ id }) => id) } });
    return true;
  }
  if (isEmpty(selection)) return false;
  const item = single(selection);
  switch (action) {
    case 'cancel':
      board.set({ selection: nothing });
      return true;
    case 'delete':
      board.dispatch(words.edits.route.delete, (draft) => deleteSelected(draft, schemeId, selection));
      board.set({ selection: nothing });
      context.announce(words.commands.edit.delete.done);
      return true;
    case 'edit':
      return item ? editItem(context, item, input.sheet) : false;
    case 'move':
      return typedMove(context, input.sheet) ?? false;
    case 'radius':
      return radius(context, input.sheet) ?? false;
    case 'repeat':
      return item?.kind === 'block' ? repeating(context, item.id, input.sheet) : false;
    case 'join':
      return joinEnds(context);
    case 'split':
      return splitHere(context);
    default: {
      const arrow = arrows[action];
      if (arrow) nudge(context, input.sheet, arrow);
      return arrow !== undefined;
    }
  }
}

function nudge({ board }: ToolContext, sheet: SheetId, by: SheetPoint): void {
  const state = board.getState();
  const load = loadOf(state, sheet);
  if (isEmptyLoad(load)) return;
  const step = nudgeStep[state.units];
  const delta = unproject({ u: by.u * step, v: by.v * step }, sheet, 0);
  board.dispatch(words.edits.room.nudge(load.name), (draft) => moveLoad(draft, state.schemeId, load, delta));
}

function radius(context: ToolContext, sheet: SheetId): Phase | null {
  const { solution, selection } = context.board.getState();
  const scale = context.surface(sheet)?.viewport().scale ?? 100;
  const grip = bendGrip(solution.route, selection, sheet, scale);
  if (grip) return bending(context, grip, sheet, null);
  context.announce(says.noRadius);
  return null;
}

/** Joins the two ends that are selected, and says why where it cannot. */
function joinEnds(context: ToolContext): boolean {
  const { board } = context;
  const { selection, schemeId } = board.getState();
  const [one, other, ...more] = selection.nodes;
  if (one === undefined || other === undefined || more.length > 0) {
    context.announce(says.selectTwoEnds);
    return true;
  }
  let made: ReturnType<typeof joinNodes> = null;
  board.dispatch(words.edits.route.joinEnds, (job) => {
    made = joinNodes(job, schemeId, one, other);
  });
  context.announce(made ? words.commands.run.join.done : words.tools.join.refused);
  return true;
}

function splitHere(context: ToolContext): boolean {
  const { board } = context;
  const { selection, schemeId } = board.getState();
  const item = single(selection);
  if (item?.kind !== 'node') {
    context.announce(says.selectOneTurn);
    return true;
  }
  let ends: string[] = [];
  board.dispatch(words.edits.route.splitRun, (job) => {
    ends = splitRun(job, schemeId, item.id);
  });
  const [end] = ends;
  if (end !== undefined) board.set({ selection: only({ kind: 'node', id: end }) });
  context.announce(end === undefined ? says.nothingRunsOn : says.split);
  return true;
}
