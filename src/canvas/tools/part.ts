import { addInline } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { project } from '../../graph/sheet.ts';
import { distance } from '../../graph/vector.ts';
import { words } from '../../words/index.ts';
import { nothing } from '../board.ts';
import { only, partId } from '../selection.ts';
import { inlineName } from './part-names.ts';
import { placing } from './placing.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';
import { kindByKey, kindInHand } from './tool-kinds.ts';

const says = words.tools.part;

/** The part tool: a click on a leg puts a part in line there; Tab and figures take another kind of part. */
export function partReady(context: ToolContext): Phase {
  const { board } = context;
  const kind = () => kindInHand(board.getState(), 'part').id;

  const placeAt = (at: PointerInput) => {
    const picked = context.pickAt(at);
    if (picked?.kind !== 'segment') return null;
    const { job, schemeId } = board.getState();
    const scheme = schemeOf(job, schemeId);
    const segment = scheme.segments.find(({ id }) => id === picked.id);
    const start = scheme.nodes.find(({ id }) => id === segment?.from);
    if (!start) return null;
    const snapped = context.snapAt(at);
    const place = snapped.segment?.id === picked.id ? snapped.at : picked.at;
    return { segment: picked.id, at: place, along: distance(start.at, place) };
  };

  return placing(context, {
    name: 'part/ready',
    show(at) {
      const place = placeAt(at);
      context.hover(place ? only({ kind: 'segment', id: place.segment }) : nothing);
      const spot = place ? project(place.at, at.sheet) : at.point;
      context.draw(at.sheet, [
        ...(place ? [{ kind: 'node', at: spot } as const] : []),
        { kind: 'note', at: spot, text: inlineName({ kind: kind() }) },
      ]);
    },
    place(at) {
      const place = placeAt(at);
      if (!place) {
        context.announce(says.onLeg);
        return;
      }
      const { schemeId } = board.getState();
      const name = inlineName({ kind: kind() });
      let index = 0;
      board.dispatch(words.edits.route.placePart(name), (job) => {
        index = addInline(job, schemeId, place.segment, { kind: kind(), at: place.along });
      });
      board.set({ tool: 'select', selection: only({ kind: 'part', id: partId(place.segment, index) }) });
      context.announce(says.placed(name));
    },
    key(input) {
      const taken = kindByKey(board, 'part', input);
      if (taken) context.announce(says.chosen(inlineName({ kind: taken.id })));
      return taken !== null;
    },
  });
}
