import type { Node } from '../../graph/document.ts';
import { setCap } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { project } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import { nothing } from '../board.ts';
import { onwardFrom } from './draw/run.ts';
import { capForDirection, exitAt, usualCap } from './exits.ts';
import { placing } from './placing.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';

const says = words.tools.cap;

/** An end closer to an exit face than this, m, goes out through it. */
const AT_EXIT = 0.05;

/** The cap tool: a click on the end of a run closes it with the cap that is usual there. */
export function capReady(context: ToolContext): Phase {
  const { board } = context;

  const scheme = () => schemeOf(board.getState().job, board.getState().schemeId);

  /** The end of a run under the pointer. */
  const endAt = (at: PointerInput): Node | undefined => {
    const picked = context.pickAt(at, { endsFirst: true });
    const { nodes, segments } = scheme();
    const node = picked?.kind === 'node' ? nodes.find(({ id }) => id === picked.id) : undefined;
    if (!node || (node.role !== 'turn' && node.role !== 'cap')) return undefined;
    return segments.filter(({ from, to }) => from === node.id || to === node.id).length === 1
      ? node
      : undefined;
  };

  return placing(context, {
    name: 'cap/ready',
    show(at) {
      const end = endAt(at);
      context.hover(end ? { nodes: [end.id], segments: [] } : nothing);
      const reason = end?.role === 'cap' ? says.hasCap : says.here;
      context.draw(at.sheet, end ? [{ kind: 'snap', at: project(end.at, at.sheet), reason }] : []);
    },
    place(at) {
      const end = endAt(at);
      if (!end) {
        context.announce(says.openEnd);
        return;
      }
      const { job, schemeId } = board.getState();
      const exit = exitAt(job, end.at, AT_EXIT);
      const onward = onwardFrom({ kind: 'node', id: end.id }, scheme());
      const cap = exit ? usualCap[exit.kind] : capForDirection(onward);
      if (end.role !== 'cap')
        board.dispatch(words.edits.route.placeCap, (draft) => void setCap(draft, schemeId, end.id, cap));
      board.set({ tool: 'select', selection: { nodes: [end.id], segments: [] } });
      context.announce(end.role === 'cap' ? says.saidHasCap : words.commands.run.cap.done);
    },
  });
}
