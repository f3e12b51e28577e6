import { dimensionShape, placeOfEnd } from '../../../drawing/dimension-lines.ts';
import type { Dimension, DimensionEnd } from '../../../graph/document.ts';
import { addDimension } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { project } from '../../../graph/sheet.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { actionOf } from '../keys.ts';
import { snapShapes } from '../show.ts';
import { dragged, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { endOf, sameEnd } from './ends.ts';
import { dimensionLine } from './line.ts';
import { dimensionReady } from './ready.ts';

/** A chain goes on in the line of the dimension before. */
export interface Chain {
  readonly along: Dimension['along'];
  /** Where its line is: the sheet's `v` for `u`, its `u` for `v`, the offset for a straight one; m. */
  readonly line: number;
}

/** One end is taken. The next click takes the other: of a chain it makes the dimension at once. */
export function dimensionSecond(
  context: ToolContext,
  from: DimensionEnd,
  press: PointerInput,
  chain: Chain | null,
): Phase {
  const { board } = context;
  const { sheet } = press;
  let pressed: PointerInput | null = chain ? null : press;

  const chained = (to: DimensionEnd): Omit<Dimension, 'id'> | null => {
    const { job, schemeId } = board.getState();
    const place = placeOfEnd(from, schemeOf(job, schemeId), job);
    if (!chain || !place || sameEnd(from, to)) return null;
    const start = project(place, sheet);
    const offset =
      chain.along === 'u' ? chain.line - start.v : chain.along === 'v' ? chain.line - start.u : chain.line;
    return { sheet, along: chain.along, from, to, offset };
  };

  const show = (at: PointerInput) => {
    const state = board.getState();
    const scheme = schemeOf(state.job, state.schemeId);
    const { end, snapped } = endOf(context, at);
    const made = chained(end);
    board.preview(made ? (job) => void addDimension(job, state.schemeId, made) : null);
    const straight = { sheet, along: 'straight', from, to: end, offset: 0 } as const;
    const shape = made ? null : dimensionShape(straight, scheme, state.job);
    context.draw(sheet, [
      ...(shape
        ? [
            {
              kind: 'measure',
              from: shape.line[0],
              to: shape.line[1],
              text: formatLength(shape.value, state.units),
            } as const,
          ]
        : []),
      ...('node' in end
        ? [{ kind: 'node', at: project(snapped.at, sheet) } as const]
        : snapShapes(snapped, true)),
    ]);
  };

  const take = (at: PointerInput): Phase | undefined => {
    const { schemeId } = board.getState();
    const { end } = endOf(context, at);
    if (sameEnd(from, end)) {
      context.announce(words.tools.dimension.twoPlaces);
      return undefined;
    }
    const made = chained(end);
    if (!made || !chain) return dimensionLine(context, from, end, at);
    board.dispatch(words.edits.room.addDimension, (job) => void addDimension(job, schemeId, made));
    return dimensionSecond(context, end, at, chain);
  };

  return {
    name: chain ? 'dimension/chain' : 'dimension/second',
    cursor: 'crosshair',
    get pressed() {
      return pressed !== null;
    },
    enter() {
      if (!chain) show(press);
    },
    leave: () => putAway(context),
    move(at) {
      if (at.sheet === sheet) show(at);
      return undefined;
    },
    down(at) {
      if (at.button !== 0 || at.sheet !== sheet) return undefined;
      if (chain && at.clicks === 2) return dimensionReady(context);
      pressed = at;
      return undefined;
    },
    up(at) {
      const begun = pressed;
      pressed = null;
      if (!begun || at.sheet !== sheet || (begun === press && !dragged(press, at))) return undefined;
      return take(at);
    },
    key(input) {
      const action = actionOf(input, 'type');
      return action === 'type.cancel' || (chain && action === 'type.commit')
        ? dimensionReady(context)
        : false;
    },
    changed: () => dimensionReady(context),
    cancel: () => dimensionReady(context),
  };
}
