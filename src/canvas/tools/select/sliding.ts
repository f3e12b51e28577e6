import { changeInline } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { project } from '../../../graph/sheet.ts';
import { nearestOnSheet } from '../../../graph/spatial.ts';
import { distance, lerp } from '../../../graph/vector.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { Selection } from '../../board.ts';
import { only, partId, partOf } from '../../selection.ts';
import { inlineName } from '../part-names.ts';
import type { Under } from '../pick.ts';
import { snapStep } from '../snap-step.ts';
import { type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { selectIdle } from './idle.ts';

/** A part in line follows the pointer along its leg, from one end of the leg to the other. */
export function sliding(
  context: ToolContext,
  press: PointerInput,
  picked: Under,
  before: Selection,
  first: PointerInput,
): Phase {
  const { board } = context;
  const { job, schemeId, units } = board.getState();
  const { segment: id, index } = partOf(picked.id);
  const scheme = schemeOf(job, schemeId);
  const segment = scheme.segments.find((each) => each.id === id);
  const [from, to] = [segment?.from, segment?.to].map(
    (end) => scheme.nodes.find((node) => node.id === end)?.at,
  );
  const part = segment?.fittings?.[index];
  const { sheet } = press;
  let at: number | null = null;

  const follow = (pointer: PointerInput) => {
    if (!part || !from || !to) return;
    const [a, b] = [project(from, sheet), project(to, sheet)];
    const length = distance(from, to);
    const start = nearestOnSheet(press.point, a, b).t * length;
    const along = part.at + nearestOnSheet(pointer.point, a, b).t * length - start;
    const step = snapStep(context.surface(sheet)?.viewport().scale ?? 100, units);
    const stepped = pointer.modifiers.alt ? along : Math.round(along / step) * step;
    const place = Math.min(length, Math.max(0, stepped));
    at = place;
    board.preview(
      place === part.at ? null : (draft) => changeInline(draft, schemeId, id, index, { at: place }),
    );
    const spot = lerp(from, to, length > 0 ? place / length : 0);
    context.draw(sheet, [
      { kind: 'measure', from: a, to: project(spot, sheet), text: formatLength(place, units) },
      { kind: 'measure', from: project(spot, sheet), to: b, text: formatLength(length - place, units) },
    ]);
  };

  return {
    name: 'select/sliding',
    cursor: 'move',
    pressed: true,
    enter: () => follow(first),
    leave: () => putAway(context),
    move(pointer) {
      if (pointer.sheet === sheet) follow(pointer);
      return undefined;
    },
    up(pointer) {
      if (pointer.sheet === sheet) follow(pointer);
      const place = at;
      if (part && segment && place !== null && place !== part.at) {
        board.dispatch(words.edits.room.move(inlineName(part)), (draft) =>
          changeInline(draft, schemeId, id, index, { at: place }),
        );
        const others = (segment.fittings ?? []).filter((each) => each !== part);
        const order = others.filter((each, i) => each.at < place || (each.at === place && i < index)).length;
        board.set({ selection: only({ kind: 'part', id: partId(id, order) }) });
      }
      return selectIdle(context);
    },
    changed: () => selectIdle(context),
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}
