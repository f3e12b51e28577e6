import { insertNode, splitRun } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { project } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import { nothing } from '../board.ts';
import { only } from '../selection.ts';
import { placing } from './placing.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';

const says = words.tools.split;

/** The split tool: a click parts the legs that meet at a node, or cuts a leg in two ends. */
export function splitReady(context: ToolContext): Phase {
  const { board } = context;

  const placeAt = (at: PointerInput) => {
    const picked = context.pickAt(at);
    if (picked?.kind !== 'node') return picked;
    const { job, schemeId } = board.getState();
    const { segments } = schemeOf(job, schemeId);
    const legs = segments.filter(({ from, to }) => from === picked.id || to === picked.id).length;
    return legs > 1 ? picked : null;
  };

  return placing(context, {
    name: 'split/ready',
    show(at) {
      const place = placeAt(at);
      context.hover(place ? only(place) : nothing);
      context.draw(
        at.sheet,
        place ? [{ kind: 'snap', at: project(place.at, at.sheet), reason: says.here }] : [],
      );
    },
    place(at) {
      const place = placeAt(at);
      if (!place) {
        context.announce(says.openLeg);
        return;
      }
      const { schemeId } = board.getState();
      let ends: string[] = [];
      board.dispatch(words.edits.route.splitRun, (job) => {
        const node = place.kind === 'node' ? place.id : insertNode(job, schemeId, place.id, place.at).node;
        ends = splitRun(job, schemeId, node);
      });
      const [end] = ends;
      if (end === undefined) return;
      board.set({ tool: 'select', selection: only({ kind: 'node', id: end }) });
      context.announce(says.done);
    },
  });
}
