import { setCap } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { project, type SheetId } from '../../../graph/sheet.ts';
import type { Snap } from '../../../graph/snap.ts';
import { distance, lerp, subtract } from '../../../graph/vector.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { nothing } from '../../board.ts';
import { capForDirection, exitAt, usualCap } from '../exits.ts';
import { actionOf, aims } from '../keys.ts';
import { dragged, type KeyInput, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { drawLeg } from './commit.ts';
import { type Leg, type LegResult, legOf } from './leg.ts';
import { drawReady } from './ready.ts';
import { headOf, onwardFrom, placeOf, previousTo, type Run, refusal, surviving, type Target } from './run.ts';
import { legShapes } from './show.ts';
import { erase, nextField, type Typing, typeKey, untyped } from './typing.ts';

const says = words.tools.draw;

/** An end closer to a node or a centre line than this, m, in space, joins it. */
const SAME_END = 1e-3;

/** Pixels within which the end of a leg belongs to an exit face. */
const EXIT_REACH = 8;

/** What undo calls a leg. */
const LEG = words.edits.route.drawLeg;

/**
 * A leg in hand. It is previewed in the document itself, so that its bend, its walls and its numbers
 * are the real ones; each commit is one undo step and goes on from the new end.
 */
export function drawing(context: ToolContext, start: Run, sheet: SheetId, press: PointerInput | null): Phase {
  const { board } = context;
  let run = start;
  let on = sheet;
  let typing: Typing = untyped;
  let pointer: PointerInput | null = press;
  let pressedAt: PointerInput | null = press;
  /** The press that began the run only ends a leg once it has been dragged. */
  let opening = press !== null;

  const ready = () => drawReady(context);
  const scheme = () => schemeOf(board.getState().job, board.getState().schemeId);

  const look = () => {
    const { units } = board.getState();
    const anchor = headOf(run);
    const from = placeOf(anchor, scheme());
    if (!from) return null;
    const onward = onwardFrom(anchor, scheme());
    const exclude = anchor.kind === 'node' ? new Set([anchor.id]) : undefined;
    const previous = previousTo(anchor, scheme());
    const square = pointer?.modifiers.shift ? project(from, on) : null;
    const snapped = pointer ? context.snapAt(pointer, { from, previous, exclude, square }) : null;
    const result = legOf({ from, sheet: on, pointer: snapped?.point ?? null, onward, typing, units });
    const target = result.ok ? targetOf(result.leg, snapped) : null;
    const why = target && refusal(anchor, target, scheme());
    const checked: LegResult = why ? { ok: false, why, state: 'refused' } : result;
    return { anchor, from, onward, snapped, target, units, result: checked };
  };

  /** A node or a segment under the end is joined where it really is there, and not only looks so. */
  const targetOf = (leg: Leg, snapped: Snap | null): Target => {
    const { nodes, segments } = scheme();
    const node = nodes.find(
      ({ id, at }) => (snapped?.node === id || leg.typed) && distance(at, leg.to) < SAME_END,
    );
    if (node) return { kind: 'node', id: node.id };
    const segment = segments.find(({ id }) => id === snapped?.segment?.id);
    const [start, end] = [segment?.from, segment?.to].map((id) => nodes.find((each) => each.id === id)?.at);
    if (segment && snapped?.segment && start && end) {
      const at = lerp(start, end, snapped.segment.t);
      if (distance(at, leg.to) < SAME_END) return { kind: 'segment', id: segment.id, at };
    }
    const { job } = board.getState();
    const reach = EXIT_REACH / (context.surface(on)?.viewport().scale ?? 1000);
    const exit = exitAt(job, leg.to, leg.typed ? SAME_END : reach);
    return { kind: 'place', at: leg.to, cap: exit ? usualCap[exit.kind] : null };
  };

  const show = () => {
    const seen = look();
    if (!seen) return;
    const { anchor, target, result } = seen;
    const { schemeId } = board.getState();
    if (result.ok && target) board.preview((job) => void drawLeg(job, schemeId, anchor, target));
    else board.preview(null);
    context.draw(on, legShapes({ ...seen, sheet: on, typing, ending: endingOf(target) }));
  };

  const commit = (ended: 'open' | 'cap'): Phase | undefined => {
    const seen = look();
    if (!seen) return ready();
    const { anchor, result } = seen;
    let { target } = seen;
    if (!result.ok || !target) {
      if (!result.ok) context.announce(result.why);
      show();
      return undefined;
    }
    if (ended === 'cap' && target.kind === 'place' && !target.cap)
      target = { ...target, cap: capForDirection(subtract(result.leg.to, result.leg.from)) };
    const { schemeId, units } = board.getState();
    let end: string | null = null;
    const aimed = target;
    board.dispatch(LEG, (job) => {
      end = drawLeg(job, schemeId, anchor, aimed);
    });
    if (end === null) return ready();
    context.announce(says.drawn(formatLength(result.leg.length, units)));
    typing = untyped;
    if (aimed.kind !== 'place' || aimed.cap) {
      board.set({ selection: { nodes: [end], segments: [] } });
      return ready();
    }
    run = [...run, { kind: 'node', id: end }];
    show();
    return undefined;
  };

  const takeBack = (): Phase | undefined => {
    if (run.length === 1) return ready();
    if (board.getState().undoLabel !== LEG) {
      context.announce(says.changedSince);
      return undefined;
    }
    board.undo();
    return resume();
  };

  /** Goes on from what is left of the run. */
  const resume = (): Phase | undefined => {
    const left = surviving(run, scheme());
    if (!left) return ready();
    run = left;
    show();
    return undefined;
  };

  const type = (next: Typing | null): boolean => {
    if (!next) return false;
    typing = next;
    const result = look()?.result;
    context.announce(result?.ok === false && result.state === 'unreadable' ? result.why : '');
    show();
    return true;
  };

  const act = (input: KeyInput): Phase | boolean => {
    const action = actionOf(input, 'draw') ?? actionOf(input, 'sheets');
    switch (action) {
      case 'cancel':
        return ready();
      case 'leg.commit':
        return isBlank(typing) ? ready() : (commit('open') ?? true);
      case 'leg.field':
        return type(nextField(typing));
      case 'leg.back':
        return type(erase(typing)) || (takeBack() ?? true);
      case 'leg.up':
      case 'leg.down':
        return type({ ...untyped, length: typing.length, rise: action === 'leg.up' ? 1 : -1 });
      case 'leg.cap':
        return capHere() ?? true;
      case 'aim.right':
      case 'aim.left':
      case 'aim.up':
      case 'aim.down':
        return type({ ...typing, field: 'length', rise: 0, angle: aims[action] });
      default:
        return false;
    }
  };

  /** Ends with a cap: the leg in hand where there is one, else the end that the run has come to. */
  const capHere = (): Phase | undefined => {
    const seen = look();
    if (seen?.result.ok) return commit('cap');
    if (seen?.anchor.kind !== 'node' || run.length === 1) {
      context.announce(says.aimLast);
      return undefined;
    }
    const { id } = seen.anchor;
    const { schemeId } = board.getState();
    board.dispatch(
      words.edits.route.placeCap,
      (job) => void setCap(job, schemeId, id, capForDirection(seen.onward)),
    );
    return ready();
  };

  return {
    name: 'draw/leg',
    cursor: 'crosshair',
    get pressed() {
      return pressedAt !== null;
    },
    enter() {
      context.hover(nothing);
      show();
    },
    leave: () => putAway(context),
    move(at) {
      pointer = at;
      on = at.sheet;
      show();
      return undefined;
    },
    down(at) {
      if (at.button !== 0) return undefined;
      pointer = at;
      on = at.sheet;
      if (at.clicks === 2 && run.length > 1) return ready();
      pressedAt = at;
      opening = false;
      show();
      return undefined;
    },
    up(at) {
      const from = pressedAt;
      pressedAt = null;
      if (!from || (opening && !dragged(from, at))) {
        opening = false;
        return undefined;
      }
      opening = false;
      pointer = at;
      on = at.sheet;
      return commit('open');
    },
    key(input) {
      if (input.sheet !== on) pointer = null;
      on = input.sheet;
      if (!input.modifiers.mod && !input.modifiers.alt && type(typeKey(typing, input.key))) return true;
      return act(input);
    },
    out() {
      pointer = null;
      show();
    },
    changed: resume,
    cancel() {
      if (opening || !pressedAt) return ready();
      pressedAt = null;
      pointer = null;
      show();
      return this;
    },
  };
}

function endingOf(target: Target | null): string | null {
  if (target?.kind === 'node') return says.joins;
  if (target?.kind === 'segment') return says.joinsWithBranch;
  return target?.cap ? says.endsWithCap : null;
}

function isBlank(typing: Typing): boolean {
  return typing.length === '' && typing.angle === '' && typing.rise === 0;
}
