import { placeOfEnd, pulledTo } from '../../../drawing/dimension-lines.ts';
import type { Dimension, DimensionEnd } from '../../../graph/document.ts';
import { addDimension } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { project } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { actionOf } from '../keys.ts';
import { type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { dimensionReady } from './ready.ts';
import { type Chain, dimensionSecond } from './second.ts';

const says = words.tools.dimension;

/** Both ends are taken: the line follows the pointer, and a click puts it there and goes on as a chain. */
export function dimensionLine(
  context: ToolContext,
  from: DimensionEnd,
  to: DimensionEnd,
  first: PointerInput,
): Phase {
  const { board } = context;
  const { sheet } = first;
  let pressed = false;

  const made = (
    at: PointerInput,
  ): { readonly dimension: Omit<Dimension, 'id'>; readonly chain: Chain } | null => {
    const { job, schemeId } = board.getState();
    const scheme = schemeOf(job, schemeId);
    const [one, other] = [placeOfEnd(from, scheme, job), placeOfEnd(to, scheme, job)];
    if (!one || !other) return null;
    const [a, b] = [project(one, sheet), project(other, sheet)];
    const { point } = context.snapAt(at);
    const { along, offset } = pulledTo(a, b, point);
    const line = along === 'u' ? a.v + offset : along === 'v' ? a.u + offset : offset;
    return { dimension: { sheet, along, from, to, offset }, chain: { along, line } };
  };

  const show = (at: PointerInput) => {
    const { schemeId } = board.getState();
    const now = made(at);
    board.preview(now ? (job) => void addDimension(job, schemeId, now.dimension) : null);
    context.draw(sheet, [{ kind: 'note', at: at.point, text: says.clickLine }]);
  };

  return {
    name: 'dimension/line',
    cursor: 'move',
    get pressed() {
      return pressed;
    },
    enter: () => show(first),
    leave: () => putAway(context),
    move(at) {
      if (at.sheet === sheet) show(at);
      return undefined;
    },
    down(at) {
      pressed = at.button === 0 && at.sheet === sheet;
      return undefined;
    },
    up(at) {
      const now = pressed ? made(at) : null;
      pressed = false;
      if (!now) return undefined;
      const { schemeId } = board.getState();
      board.dispatch(words.edits.room.addDimension, (job) => void addDimension(job, schemeId, now.dimension));
      context.announce(says.added);
      return dimensionSecond(context, to, at, now.chain);
    },
    key: (input) => (actionOf(input, 'type') === 'type.cancel' ? dimensionReady(context) : false),
    changed: () => dimensionReady(context),
    cancel: () => dimensionReady(context),
  };
}
