import type { Underlay, UnitSystem } from '../../../graph/document.ts';
import { scaleUnderlay } from '../../../graph/edits/index.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { formatLength, type Parsed, parseLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { ActiveShape } from '../../sheet-handle.ts';
import { erase, type Typing, typeKey, untyped } from '../draw/typing.ts';
import { actionOf } from '../keys.ts';
import type { KeyInput, Phase, PointerInput, ToolContext } from '../tool.ts';
import { edgeOf, nameOf, underlayAt } from './pick.ts';

const says = words.tools.underlay;

/** Points closer than this, pixels, give no scale. */
const APART = 12;

/** The scale tool before its first point: a click on an underlay gives it, and it will stay where it is. */
export function scaleReady(context: ToolContext): Phase {
  const { board } = context;
  const clear = () => context.draw(null, []);
  const self: Phase = {
    name: 'scale/ready',
    cursor: 'crosshair',
    leave: clear,
    out: clear,
    move(at) {
      const underlay = underlayAt(context, at);
      const text = underlay ? says.firstPoint(nameOf(underlay)) : says.none;
      context.draw(at.sheet, [...(underlay ? edgeOf(underlay) : []), { kind: 'note', at: at.point, text }]);
      return undefined;
    },
    down(at) {
      if (at.button !== 0 || at.clicks === 2) return undefined;
      const underlay = underlayAt(context, at);
      if (underlay) return toSecond(context, underlay.id, at);
      context.announce(says.placeFirst);
      return undefined;
    },
    key(input) {
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      board.set({ tool: 'select', underlay: null });
      return true;
    },
    cancel: () => self,
  };
  return self;
}

/** With the first point given, a click gives the second; with Shift level or plumb from the first. */
function toSecond(context: ToolContext, id: string, first: PointerInput): Phase {
  const { board } = context;
  const endOf = (at: PointerInput): SheetPoint => {
    if (!at.modifiers.shift) return at.point;
    const [du, dv] = [at.point.u - first.point.u, at.point.v - first.point.v];
    return Math.abs(du) >= Math.abs(dv)
      ? { u: at.point.u, v: first.point.v }
      : { u: first.point.u, v: at.point.v };
  };
  const back = () => scaleReady(context);
  return {
    name: 'scale/second',
    cursor: 'crosshair',
    enter: () => context.announce(says.secondPoint),
    leave: () => context.draw(null, []),
    move(at) {
      if (at.sheet === first.sheet) {
        const to = endOf(at);
        const { units } = board.getState();
        context.draw(first.sheet, [line(first.point, to, formatLength(apart(first.point, to), units))]);
      }
      return undefined;
    },
    down(at) {
      if (at.button !== 0 || at.sheet !== first.sheet) return undefined;
      const to = endOf(at);
      const scale = context.surface(at.sheet)?.viewport().scale ?? 1;
      if (apart(first.point, to) * scale >= APART)
        return typingLength(context, id, first, to, at.pointerType === 'touch');
      context.announce(says.tooClose);
      return undefined;
    },
    key: (input) => (actionOf(input, 'sheets') === 'cancel' ? back() : false),
    changed: () => (has(context, id) ? undefined : back()),
    cancel: back,
  };
}

/**
 * With both points given, the real distance is typed; Enter scales the underlay about the first point.
 * A finger gets a field to type into, which brings its keyboard.
 */
function typingLength(
  context: ToolContext,
  id: string,
  { sheet, point: from }: PointerInput,
  to: SheetPoint,
  byFinger: boolean,
): Phase {
  const { board } = context;
  const middle = { u: (from.u + to.u) / 2, v: (from.v + to.v) / 2 };
  let typing: Typing = untyped;
  const back = () => scaleReady(context);

  const show = () => {
    const text = typing.length === '' ? says.typeDistance : `${typing.length}`;
    context.draw(sheet, [
      { kind: 'node', at: from },
      { kind: 'node', at: to },
      { kind: 'guide', from, to },
      { kind: 'note', at: middle, text, strong: typing.length !== '' },
    ]);
  };

  /** A sentence where the text is no distance. */
  const take = (text: string): string | null => {
    const { units } = board.getState();
    const read = distanceOf(text, units);
    if (!read.ok) return read.message;
    board.dispatch(words.edits.underlay.scale, (draft) => {
      scaleUnderlay(draft, id, [from.u, from.v], [to.u, to.v], read.value);
    });
    board.set({ tool: 'select', underlay: null });
    context.announce(says.scaled(formatLength(read.value, units)));
    return null;
  };

  const type = (input: KeyInput): boolean => {
    const letter = input.key.length === 1 && !input.modifiers.mod;
    const next = letter ? typeKey(typing, input.key) : input.key === 'Backspace' ? erase(typing) : null;
    if (next) {
      typing = next;
      show();
    }
    return letter || input.key === 'Backspace';
  };

  return {
    name: 'scale/length',
    cursor: 'default',
    enter() {
      show();
      context.announce(says.typeThenEnter);
      if (byFinger)
        context.ask({
          sheet,
          at: middle,
          label: says.distance,
          value: '',
          commit: take,
        });
    },
    leave() {
      context.draw(null, []);
      if (byFinger) context.ask(null);
    },
    down(at) {
      return at.button === 0 && at.sheet === sheet ? toSecond(context, id, at) : undefined;
    },
    key(input) {
      if (actionOf(input, 'sheets') === 'cancel') return back();
      if (input.key !== 'Enter') return type(input);
      const complaint = take(typing.length);
      if (complaint) context.announce(complaint);
      return true;
    },
    changed: () => (has(context, id) ? undefined : back()),
    cancel: back,
  };
}

function distanceOf(text: string, units: UnitSystem): Parsed {
  if (text.trim() === '') return { ok: false, message: says.distanceExample };
  const read = parseLength(text, units);
  if (!read.ok) return read;
  if (!(read.value > 0)) return { ok: false, message: says.distanceRefused };
  if (read.value > 1000) return { ok: false, message: says.distanceTooLong };
  return read;
}

function has({ board }: ToolContext, id: Underlay['id']): boolean {
  return board.getState().job.underlays.some((each) => each.id === id);
}

function line(from: SheetPoint, to: SheetPoint, text: string): ActiveShape {
  return { kind: 'measure', from, to, text };
}

function apart(a: SheetPoint, b: SheetPoint): number {
  return Math.hypot(a.u - b.u, a.v - b.v);
}
