import { deleteSelection, moveNodes } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import { INCH } from '../../../units/index.ts';
import { nothing } from '../../board.ts';
import { type Action, actionOf } from '../keys.ts';
import type { KeyInput, ToolContext } from '../tool.ts';
import { isEmpty, movingNodes, nameOf } from './choice.ts';

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

/** What keys do to a selection at rest; `true` where the key was used. */
export function editByKey(context: ToolContext, input: KeyInput): boolean {
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
  if (action === 'cancel') {
    board.set({ selection: nothing });
    return true;
  }
  if (action === 'delete') {
    board.dispatch('delete', (draft) => deleteSelection(draft, schemeId, selection));
    board.set({ selection: nothing });
    context.announce('Deleted.');
    return true;
  }
  const arrow = arrows[action];
  if (arrow) nudge(context, input.sheet, arrow);
  return arrow !== undefined;
}

function nudge({ board }: ToolContext, sheet: SheetId, by: SheetPoint): void {
  const { selection, job, schemeId, units } = board.getState();
  const scheme = schemeOf(job, schemeId);
  const ids = movingNodes(scheme, selection, sheet);
  const step = nudgeStep[units];
  const delta = unproject({ u: by.u * step, v: by.v * step }, sheet, 0);
  board.dispatch(`nudge ${nameOf(scheme, selection, ids)}`, (draft) =>
    moveNodes(draft, schemeId, ids, delta),
  );
}
