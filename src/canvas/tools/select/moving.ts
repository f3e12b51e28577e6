import { boundsOn, gripsOf } from '../../../drawing/box-faces.ts';
import type { Vec3 } from '../../../graph/document.ts';
import { mergeNodes } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { depthOf, project, type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import type { Snap } from '../../../graph/snap.ts';
import { add, distance, norm, subtract } from '../../../graph/vector.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { nothing, type Recipe, type Selection } from '../../board.ts';
import { legOf } from '../draw/leg.ts';
import { fields, isTyped } from '../draw/show.ts';
import { erase, nextField, type Typing, typeKey, untyped } from '../draw/typing.ts';
import { actionOf, aims } from '../keys.ts';
import type { Under } from '../pick.ts';
import { snapShapes } from '../show.ts';
import { type KeyInput, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { isEmptyLoad, loadOf, moveLoad } from './choice.ts';
import { selectIdle } from './idle.ts';
import { boxOf } from './resizing.ts';

const says = words.tools.moving;

/** A node let go of closer than this to another one, m, in space, becomes one with it. */
const SAME_END = 1e-3;

export interface MoveStart {
  readonly sheet: SheetId;
  readonly picked: Under;
  /** What was selected before the press. */
  readonly before: Selection;
  /** `null` for a move that is typed alone. */
  readonly press: PointerInput | null;
  readonly first: PointerInput | null;
}

interface Step {
  readonly delta: Vec3;
  readonly recipe: Recipe;
}

/**
 * What is selected follows the pointer in the plane of the sheet, or goes by a typed distance and
 * direction. Every step is worked out anew from the document as it was at the press; letting go commits
 * the last one, and cancelling gives back the selection of `before` the press too.
 */
export function moving(context: ToolContext, start: MoveStart): Phase {
  const { board } = context;
  const { sheet, picked, before, press } = start;
  const state = board.getState();
  const { job, schemeId, units } = state;
  const scheme = schemeOf(job, schemeId);
  const load = loadOf(state, sheet);
  const exclude = new Set([...load.nodes, ...load.blocks, ...load.exits]);
  const grabbed = press ? grabbedAt(state.job, picked, press) : project(picked.at, sheet);
  const from = unproject(grabbed, sheet, depthOf(picked.at, sheet));
  const lone =
    load.nodes.length === 1 && load.blocks.length + load.exits.length === 0
      ? scheme.nodes.find(({ id }) => id === load.nodes[0])
      : undefined;
  const [neighbour, ...others] = scheme.segments.flatMap(({ from: a, to: b }) => {
    const far = lone && (a === lone.id ? b : b === lone.id ? a : undefined);
    return scheme.nodes.flatMap(({ id, at }) => (id === far ? [at] : []));
  });
  let pointer = start.first;
  let typing: Typing = untyped;
  let step: Step | null = null;

  const joinOf = (snapped: Snap, at: Vec3): string | undefined =>
    scheme.nodes.find(
      (node) => node.id === snapped.node && !exclude.has(node.id) && distance(node.at, at) < SAME_END,
    )?.id;

  const stepBy = (delta: Vec3, joins?: string): Step => ({
    delta,
    recipe(draft) {
      moveLoad(draft, schemeId, load, delta);
      if (lone && joins) mergeNodes(draft, schemeId, lone.id, joins);
    },
  });

  const snapOf = (at: PointerInput): Snap => {
    const point = press ? held(grabbed, press.point, at) : at.point;
    return context.snapAt(
      { ...at, sheet, point },
      {
        exclude,
        from: neighbour ?? from,
        anchors: others,
        depth: depthOf(picked.at, sheet),
        square: at.modifiers.shift ? grabbed : null,
      },
    );
  };

  const show = () => {
    const snapped = pointer ? snapOf(pointer) : null;
    if (isTyped(typing)) return showTyped();
    step = null;
    if (!snapped) {
      board.preview(null);
      context.draw(sheet, [{ kind: 'note', at: grabbed, text: says.howFar }]);
      return;
    }
    const delta = unproject({ u: snapped.point.u - grabbed.u, v: snapped.point.v - grabbed.v }, sheet, 0);
    const joins = lone ? joinOf(snapped, add(lone.at, delta)) : undefined;
    step = stepBy(delta, joins);
    board.preview(norm(delta) === 0 ? null : step.recipe);
    const shown = joins ? { ...snapped, reason: words.tools.draw.joins } : snapped;
    context.draw(sheet, snapShapes(shown));
  };

  /** A typed distance goes where the pointer is, by 15° of the sheet but for Alt. */
  const showTyped = () => {
    const aim = pointer && (press ? held(grabbed, press.point, pointer) : pointer.point);
    const angle = aim && typing.angle === '' ? degrees(grabbed, aim, pointer?.modifiers.alt ? 0 : 15) : null;
    const aimed = angle === null ? typing : { ...typing, angle };
    const result = legOf({ from, sheet, pointer: null, onward: null, typing: aimed, units });
    step = result.ok ? stepBy(subtract(result.leg.to, from)) : null;
    board.preview(step ? step.recipe : null);
    const unreadable = !result.ok && result.state === 'unreadable';
    context.announce(unreadable ? result.why : '');
    const at = result.ok ? project(result.leg.to, sheet) : grabbed;
    const text = `${says.move(fields(typing))}${unreadable ? '  ?' : ''}`;
    context.draw(sheet, [
      { kind: 'guide', from: grabbed, to: at },
      { kind: 'note', at, text, strong: true },
    ]);
  };

  const commit = (): Phase => {
    if (isTyped(typing) && !step) {
      context.announce(says.aim);
      return self;
    }
    const made = step;
    if (made && norm(made.delta) > 0) {
      board.dispatch(words.edits.room.move(load.name), made.recipe);
      context.announce(says.moved(load.name, formatLength(norm(made.delta), units)));
    }
    return selectIdle(context);
  };

  const type = (next: Typing | null): boolean => {
    if (!next) return false;
    typing = next;
    show();
    return true;
  };

  const self: Phase = {
    name: 'select/moving',
    cursor: 'move',
    get pressed() {
      return press !== null;
    },
    enter() {
      context.hover(nothing);
      show();
    },
    leave: () => putAway(context),
    move(at) {
      if (at.sheet !== sheet) return undefined;
      pointer = at;
      show();
      return undefined;
    },
    down: (at) => (press || at.button !== 0 ? undefined : commit()),
    up(at) {
      if (!press) return undefined;
      if (at.sheet === sheet && !isTyped(typing)) {
        pointer = at;
        show();
      }
      return commit();
    },
    key(input: KeyInput) {
      if (!input.modifiers.mod && !input.modifiers.alt && type(typeKey(typing, input.key))) return true;
      const action = actionOf(input, 'draw');
      switch (action) {
        case 'leg.commit':
          return commit();
        case 'leg.field':
          return type(nextField(typing));
        case 'leg.back':
          return type(erase(typing));
        case 'leg.up':
        case 'leg.down':
          return type({ ...untyped, length: typing.length, rise: action === 'leg.up' ? 1 : -1 });
        case 'aim.right':
        case 'aim.left':
        case 'aim.up':
        case 'aim.down':
          return type({ ...typing, field: 'length', rise: 0, angle: aims[action] });
        default:
          return actionOf(input, 'sheets') === 'cancel' ? self.cancel() : false;
      }
    },
    changed: () => selectIdle(context),
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
  return self;
}

/** Starts a move by typing, of all that is selected; `null` where nothing there can be moved. */
export function typedMove(context: ToolContext, sheet: SheetId): Phase | null {
  const state = context.board.getState();
  const load = loadOf(state, sheet);
  if (isEmptyLoad(load)) return null;
  const scheme = schemeOf(state.job, state.schemeId);
  const [id] = load.nodes;
  const box = [...state.job.blocks, ...state.job.exits].find((each) =>
    [...load.blocks, ...load.exits].includes(each.id),
  );
  const note = state.job.sheetNotes?.find((each) => load.notes.includes(each.id));
  const at =
    scheme.nodes.find((node) => node.id === id)?.at ??
    box?.min ??
    (note && unproject({ u: note.at[0], v: note.at[1] }, sheet, 0));
  if (!at) return null;
  const picked: Under = { kind: 'node', id: id ?? '', at };
  return moving(context, { sheet, picked, before: state.selection, press: null, first: null });
}

/** A block is held by its corner nearest to the pointer, so that corners come to lie on faces and the grid. */
function grabbedAt(job: Parameters<typeof boxOf>[1], picked: Under, press: PointerInput): SheetPoint {
  const box = boxOf(picked, job);
  if (!box) return project(picked.at, press.sheet);
  const away = ({ u, v }: SheetPoint) => Math.hypot(u - press.point.u, v - press.point.v);
  const corners = gripsOf(box, press.sheet)
    .slice(0, 4)
    .map(({ at }) => at);
  const { minU, minV } = boundsOn(box, press.sheet);
  return corners.reduce((best, corner) => (away(corner) < away(best) ? corner : best), { u: minU, v: minV });
}

/** Where the thing taken hold of would be if it kept its distance to the pointer. */
function held(grabbed: SheetPoint, press: SheetPoint, at: PointerInput): SheetPoint {
  return { u: grabbed.u + at.point.u - press.u, v: grabbed.v + at.point.v - press.v };
}

/** The direction from one point to another as text, degrees, rounded to a step; `null` for none. */
function degrees(from: SheetPoint, to: SheetPoint, step: number): string | null {
  if (Math.hypot(to.u - from.u, to.v - from.v) < 1e-3) return null;
  const angle = (Math.atan2(to.v - from.v, to.u - from.u) * 180) / Math.PI;
  return `${(((step > 0 ? Math.round(angle / step) * step : angle) % 360) + 360) % 360}`;
}
