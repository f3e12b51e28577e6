import type { Vec3 } from '../../../graph/document.ts';
import { mergeNodes, moveNodes } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { depthOf, project, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import type { Snap } from '../../../graph/snap.ts';
import { add, distance, norm } from '../../../graph/vector.ts';
import { formatLength } from '../../../units/index.ts';
import { nothing, type Recipe, type Selection } from '../../board.ts';
import type { Pick } from '../pick.ts';
import { snapShapes } from '../show.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { movingNodes, nameOf } from './choice.ts';
import { selectIdle } from './idle.ts';

/** A node let go of closer than this to another one, m, in space, becomes one with it. */
const SAME_END = 1e-3;

/**
 * What is selected follows the pointer in the plane of the sheet. Every step is worked out anew from
 * the document as it was at the press; letting go commits the last one, and cancelling gives back the
 * selection of `before` the press too.
 */
export function moving(
  context: ToolContext,
  press: PointerInput,
  picked: Pick,
  before: Selection,
  first: PointerInput,
): Phase {
  const { board } = context;
  const { job, schemeId, selection, units } = board.getState();
  const scheme = schemeOf(job, schemeId);
  const { sheet } = press;
  const ids = movingNodes(scheme, selection, sheet);
  const name = nameOf(scheme, selection, ids);
  const exclude = new Set(ids);
  const grabbed = project(picked.at, sheet);
  const lone = ids.length === 1 ? scheme.nodes.find(({ id }) => id === ids[0]) : undefined;
  const leg = scheme.segments.find(({ from, to }) => lone && (from === lone.id || to === lone.id));
  const neighbour = scheme.nodes.find(
    ({ id }) => leg && id !== lone?.id && (id === leg.from || id === leg.to),
  );
  let step: { readonly delta: Vec3; readonly recipe: Recipe } | null = null;

  const follow = (at: PointerInput) => {
    const point = held(grabbed, press.point, at);
    const snapped = context.snapAt(
      { ...at, sheet, point },
      { exclude, from: neighbour?.at ?? picked.at, depth: depthOf(picked.at, sheet) },
    );
    const end = at.modifiers.shift ? onAxis(grabbed, snapped.point) : snapped.point;
    const delta = unproject({ u: end.u - grabbed.u, v: end.v - grabbed.v }, sheet, 0);
    const joins = lone ? joinOf(snapped, add(lone.at, delta)) : undefined;
    step = {
      delta,
      recipe(draft) {
        moveNodes(draft, schemeId, ids, delta);
        if (lone && joins) mergeNodes(draft, schemeId, lone.id, joins);
      },
    };
    board.preview(norm(delta) === 0 ? null : step.recipe);
    const shown = joins ? { ...snapped, reason: 'joins' } : snapped;
    context.draw(sheet, snapped.point === end ? snapShapes(shown) : []);
  };

  const joinOf = (snapped: Snap, at: Vec3): string | undefined =>
    scheme.nodes.find(
      (node) => node.id === snapped.node && !exclude.has(node.id) && distance(node.at, at) < SAME_END,
    )?.id;

  return {
    name: 'select/moving',
    cursor: 'move',
    pressed: true,
    enter() {
      context.hover(nothing);
      follow(first);
    },
    leave() {
      board.preview(null);
      context.draw(null, []);
    },
    move(at) {
      if (at.sheet === sheet) follow(at);
      return undefined;
    },
    up(at) {
      if (at.sheet === sheet) follow(at);
      if (step && norm(step.delta) > 0) {
        board.dispatch(`move ${name}`, step.recipe);
        context.announce(`Moved ${name} by ${formatLength(norm(step.delta), units)}.`);
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

/** Where the thing taken hold of would be if it kept its distance to the pointer. */
function held(grabbed: SheetPoint, press: SheetPoint, at: PointerInput): SheetPoint {
  return { u: grabbed.u + at.point.u - press.u, v: grabbed.v + at.point.v - press.v };
}

/** The nearer of the two directions of the sheet. */
function onAxis(from: SheetPoint, to: SheetPoint): SheetPoint {
  return Math.abs(to.u - from.u) >= Math.abs(to.v - from.v) ? { u: to.u, v: from.v } : { u: from.u, v: to.v };
}
