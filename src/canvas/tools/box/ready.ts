import type { SheetPoint } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { actionOf } from '../keys.ts';
import { snapShapes } from '../show.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { kindByKey, kindInHand } from '../tool-kinds.ts';
import { boxCorner } from './corner.ts';
import type { BoxKind } from './kinds.ts';

/** The block tool before its first corner. */
export function blockReady(context: ToolContext): Phase {
  return boxReady(context, 'block');
}

/** The exit tool before its first corner. */
export function exitReady(context: ToolContext): Phase {
  return boxReady(context, 'exit');
}

/** Before the first corner: Tab and figures take another kind. */
export function boxReady(context: ToolContext, what: BoxKind['what']): Phase {
  const { board } = context;
  let last: PointerInput | null = null;

  const show = (at: PointerInput) => {
    const snapped = context.snapAt(at);
    const { name } = kindInHand(board.getState(), what);
    context.draw(at.sheet, [
      ...snapShapes(snapped),
      { kind: 'note', at: snapped.point, text: words.tools.box.firstCorner(name.toLowerCase()) },
    ]);
  };

  const self: Phase = {
    name: 'box/ready',
    cursor: 'crosshair',
    leave: () => context.draw(null, []),
    out() {
      last = null;
      context.draw(null, []);
    },
    move(at) {
      last = at;
      show(at);
      return undefined;
    },
    down(at) {
      if (at.button !== 0) return undefined;
      const from: SheetPoint = context.snapAt(at).point;
      return boxCorner(context, { what, from, press: at });
    },
    kindTaken() {
      if (last) show(last);
    },
    key(input) {
      if (actionOf(input, 'type') === 'type.cancel') {
        board.set({ tool: 'select' });
        return true;
      }
      const taken = kindByKey(board, what, input);
      if (taken) context.announce(`${taken.name}.`);
      return taken !== null;
    },
    cancel: () => self,
  };
  return self;
}
