import type { SheetPoint } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { actionOf } from '../keys.ts';
import { snapShapes } from '../show.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { boxCorner } from './corner.ts';
import { type BoxKind, blockKinds, exitKinds } from './kinds.ts';

/** The block tool before its first corner. */
export function blockReady(context: ToolContext): Phase {
  return boxReady(context, blockKinds, 0);
}

/** The exit tool before its first corner. */
export function exitReady(context: ToolContext): Phase {
  return boxReady(context, exitKinds, 0);
}

/** Before the first corner: Tab takes the next kind. */
export function boxReady(context: ToolContext, kinds: readonly BoxKind[], chosen: number): Phase {
  const { board } = context;
  let place = chosen;
  let last: PointerInput | null = null;

  const show = (at: PointerInput) => {
    const snapped = context.snapAt(at);
    context.draw(at.sheet, [
      ...snapShapes(snapped),
      {
        kind: 'note',
        at: snapped.point,
        text: words.tools.box.firstCorner((kinds[place] ?? kinds[0])?.name.toLowerCase() ?? ''),
      },
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
      return boxCorner(context, { kinds, place, from, press: at });
    },
    key(input) {
      const action = actionOf(input, 'type');
      if (action === 'type.cancel') {
        board.set({ tool: 'select' });
        return true;
      }
      if (action !== 'type.next' && action !== 'type.back') return false;
      place = (place + (action === 'type.next' ? 1 : -1) + kinds.length) % kinds.length;
      context.announce(`${kinds[place]?.name}.`);
      if (last) show(last);
      return true;
    },
    cancel: () => self,
  };
  return self;
}
