import { project } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { actionOf } from '../keys.ts';
import { snapShapes } from '../show.ts';
import type { Phase, ToolContext } from '../tool.ts';
import { endOf } from './ends.ts';
import { dimensionSecond } from './second.ts';

/** The dimension tool before its first point. */
export function dimensionReady(context: ToolContext): Phase {
  const self: Phase = {
    name: 'dimension/ready',
    cursor: 'crosshair',
    leave: () => context.draw(null, []),
    out: () => context.draw(null, []),
    move(at) {
      const { end, snapped } = endOf(context, at);
      const held = 'node' in end;
      context.draw(
        at.sheet,
        held
          ? [{ kind: 'snap', at: project(snapped.at, at.sheet), reason: words.tools.dimension.fromNode }]
          : snapShapes(snapped),
      );
      return undefined;
    },
    down(at) {
      if (at.button !== 0) return undefined;
      return dimensionSecond(context, endOf(context, at).end, at, null);
    },
    key(input) {
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      context.board.set({ tool: 'select' });
      return true;
    },
    cancel: () => self,
  };
  return self;
}
