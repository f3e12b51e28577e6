import { schemeOf } from '../../graph/infer.ts';
import { depthOf, type SheetId } from '../../graph/sheet.ts';
import type { BoardState } from '../board.ts';

/**
 * The coordinate that a sheet does not show, m, for a place that no node gives one: on the floor the
 * working height; on a section where it is cut, else that of the one node selected, else the nodes' mean to the millimetre.
 */
export function restingDepth(state: BoardState, sheet: SheetId): number {
  if (sheet === 'floor') return state.workingHeight;
  const cut = state.sectionDepth[sheet];
  if (cut !== null) return cut;
  const { nodes } = schemeOf(state.job, state.schemeId);
  const [picked, ...others] = state.selection.nodes;
  const one = others.length === 0 ? nodes.find(({ id }) => id === picked) : undefined;
  if (one) return depthOf(one.at, sheet);
  const sum = nodes.reduce((total, { at }) => total + depthOf(at, sheet), 0);
  return nodes.length === 0 ? 0 : Math.round((sum / nodes.length) * 1000) / 1000;
}
