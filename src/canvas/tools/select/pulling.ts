import { dimensionShape, offsetTo } from '../../../drawing/dimension-lines.ts';
import { moveDimension } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { words } from '../../../words/index.ts';
import type { Selection } from '../../board.ts';
import type { Under } from '../pick.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { selectIdle } from './idle.ts';

/** The line of a dimension is pulled nearer to what it measures, or farther off. */
export function pulling(
  context: ToolContext,
  press: PointerInput,
  picked: Under,
  before: Selection,
  first: PointerInput,
): Phase {
  const { board } = context;
  const { job, schemeId } = board.getState();
  const scheme = schemeOf(job, schemeId);
  const dimension = scheme.dimensions?.find(({ id }) => id === picked.id);
  const shape = dimension && dimensionShape(dimension, scheme, job);
  let offset = dimension?.offset ?? 0;

  const follow = (at: PointerInput) => {
    if (!dimension || !shape) return;
    const { point } = context.snapAt({ ...at, sheet: press.sheet });
    const pulled = offsetTo(...shape.ends, dimension.along, point);
    offset = pulled;
    board.preview((draft) => void moveDimension(draft, schemeId, dimension.id, pulled));
  };

  return {
    name: 'select/pulling',
    cursor: 'move',
    pressed: true,
    enter: () => follow(first),
    leave: () => board.preview(null),
    move(at) {
      if (at.sheet === press.sheet) follow(at);
      return undefined;
    },
    up(at) {
      if (at.sheet === press.sheet) follow(at);
      if (dimension && offset !== dimension.offset)
        board.dispatch(
          words.edits.room.moveDimension,
          (draft) => void moveDimension(draft, schemeId, dimension.id, offset),
        );
      return selectIdle(context);
    },
    changed: () => selectIdle(context),
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}
