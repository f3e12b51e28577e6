import { insertNode } from '../../graph/edits/index.ts';
import { project } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import { nothing } from '../board.ts';
import { placing } from './placing.ts';
import { snapShapes } from './show.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';

/** The insert tool: a click on a leg puts a node there, to be moved into a turn or to take another part. */
export function insertReady(context: ToolContext): Phase {
  const { board } = context;

  const placeAt = (at: PointerInput) => {
    const picked = context.pickAt(at);
    if (picked?.kind !== 'segment') return null;
    const snapped = context.snapAt(at);
    return snapped.segment?.id === picked.id
      ? { segment: picked.id, at: snapped.at, snapped }
      : { segment: picked.id, at: picked.at, snapped: null };
  };

  return placing(context, {
    name: 'insert/ready',
    show(at) {
      const place = placeAt(at);
      context.hover(place ? { nodes: [], segments: [place.segment] } : nothing);
      const shapes = place ? [{ kind: 'node', at: project(place.at, at.sheet) } as const] : [];
      context.draw(at.sheet, [...shapes, ...(place?.snapped ? snapShapes(place.snapped) : [])]);
    },
    place(at) {
      const place = placeAt(at);
      if (!place) {
        context.announce(words.tools.insert.onLeg);
        return;
      }
      const { schemeId } = board.getState();
      let node: string | null = null;
      board.dispatch(words.edits.route.insertNode, (job) => {
        node = insertNode(job, schemeId, place.segment, place.at).node;
      });
      if (node !== null) board.set({ selection: { nodes: [node], segments: [] } });
    },
  });
}
