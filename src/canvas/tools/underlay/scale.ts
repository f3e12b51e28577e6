import type { Underlay, UnitSystem } from '../../../graph/document.ts';
import { scaleUnderlay } from '../../../graph/edits/index.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { formatLength, type Parsed, parseLength } from '../../../units/index.ts';
import type { ActiveShape } from '../../sheet-handle.ts';
import { erase, type Typing, typeKey, untyped } from '../draw/typing.ts';
import { actionOf } from '../keys.ts';
import type { KeyInput, Phase, PointerInput, ToolContext } from '../tool.ts';
import { edgeOf, nameOf, underlayAt } from './pick.ts';

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
      const text = underlay ? `first point on ${nameOf(underlay)}` : 'no underlay here';
      context.draw(at.sheet, [...(underlay ? edgeOf(underlay) : []), { kind: 'note', at: at.point, text }]);
      return undefined;
    },
    down(at) {
      if (at.button !== 0 || at.clicks === 2) return undefined;
      const underlay = underlayAt(context, at);
      if (underlay) return toSecond(context, underlay.id, at);
      context.announce('There is no underlay here. Place one from the File menu.');
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
    enter: () => context.announce('Now click a second point whose distance from the first you know.'),
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
      context.announce('The two points are too close for a scale. Choose points far apart.');
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
    const text = typing.length === '' ? 'type the real distance' : `${typing.length}`;
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
    board.dispatch('set underlay scale', (draft) => {
      scaleUnderlay(draft, id, [from.u, from.v], [to.u, to.v], read.value);
    });
    board.set({ tool: 'select', underlay: null });
    context.announce(`The two points are now ${formatLength(read.value, units)} apart.`);
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
      context.announce('Type the real distance between the two points, then press Enter.');
      if (byFinger)
        context.ask({
          sheet,
          at: middle,
          label: 'Real distance between the two points',
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
  if (text.trim() === '') return { ok: false, message: "Type the real distance, such as 10' or 3.2 m." };
  const read = parseLength(text, units);
  if (!read.ok) return read;
  if (!(read.value > 0)) return { ok: false, message: 'The distance must be more than nothing.' };
  if (read.value > 1000) return { ok: false, message: 'A kilometre or more is no distance in a kitchen.' };
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
