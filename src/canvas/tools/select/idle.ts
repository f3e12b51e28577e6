import { insertNode } from '../../../graph/edits/index.ts';
import { nothing } from '../../board.ts';
import type { Cursor, Phase, PointerInput, ToolContext } from '../tool.ts';
import { boxing } from './boxing.ts';
import { only } from './choice.ts';
import { editByKey } from './keyboard.ts';
import { pressing } from './pressing.ts';

/** The select tool at rest: shows what is under the pointer. */
export function selectIdle(context: ToolContext): Phase {
  const { board } = context;
  let cursor: Cursor = 'default';

  const hover = (at: PointerInput) => {
    const picked = context.pickAt(at);
    cursor = picked ? 'pointer' : 'default';
    context.hover(picked ? only(picked) : nothing);
  };

  const self: Phase = {
    name: 'select/idle',
    get cursor() {
      return cursor;
    },
    move(at) {
      hover(at);
      return undefined;
    },
    out() {
      cursor = 'default';
      context.hover(nothing);
    },
    down(at) {
      if (at.button !== 0) return undefined;
      const picked = context.pickAt(at);
      if (!picked) return boxing(context, at);
      if (picked.kind !== 'segment' || at.clicks !== 2) return pressing(context, at, picked);
      const { schemeId } = board.getState();
      let node: string | null = null;
      board.dispatch('insert node', (job) => {
        node = insertNode(job, schemeId, picked.id, picked.at).node;
      });
      if (node !== null) board.set({ selection: { nodes: [node], segments: [] } });
      return undefined;
    },
    key: (input) => editByKey(context, input),
    cancel: () => self,
  };
  return self;
}
