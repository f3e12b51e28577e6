import type { Snap } from '../../graph/snap.ts';
import { distance } from '../../graph/vector.ts';
import { formatAngle, formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { actionOf } from './keys.ts';
import { snapShapes } from './show.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from './tool.ts';

const says = words.tools.measure;

/** The measure tool before its first point; what was measured last may still show. */
export function measureReady(context: ToolContext, showing = false): Phase {
  let shown = showing;
  const self: Phase = {
    name: 'measure/ready',
    cursor: 'crosshair',
    leave: () => context.draw(null, []),
    move(at) {
      if (!shown) context.draw(at.sheet, snapShapes(context.snapAt(at)));
      return undefined;
    },
    out() {
      if (!shown) context.draw(null, []);
    },
    down: (at) => (at.button === 0 ? measuring(context, context.snapAt(at), at) : undefined),
    key(input) {
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      if (!shown) context.board.set({ tool: 'select' });
      context.draw(null, []);
      shown = false;
      return true;
    },
    cancel: () => self,
  };
  return self;
}

/** One point is taken: the distance to the pointer is shown until a second click, and is then said. */
function measuring(context: ToolContext, from: Snap, press: PointerInput): Phase {
  const { sheet } = press;
  let pressed: PointerInput | null = press;
  let words = '';
  let kept = false;

  const show = (at: PointerInput) => {
    const square = at.modifiers.shift ? from.point : null;
    const to = context.snapAt(at, { from: from.at, square });
    words = measured(context, from, to);
    context.draw(sheet, [
      ...snapShapes(to, true),
      { kind: 'measure', from: from.point, to: to.point, text: words },
    ]);
  };

  return {
    name: 'measure/second',
    cursor: 'crosshair',
    get pressed() {
      return pressed !== null;
    },
    enter: () => show(press),
    leave() {
      if (!kept) context.draw(null, []);
    },
    move(at) {
      if (at.sheet === sheet) show(at);
      return undefined;
    },
    down(at) {
      if (at.button === 0 && at.sheet === sheet) pressed = at;
      return undefined;
    },
    up(at) {
      const begun = pressed;
      pressed = null;
      if (!begun || (begun === press && !dragged(press, at))) return undefined;
      if (at.sheet === sheet) show(at);
      kept = true;
      context.announce(`${words}.`);
      return measureReady(context, true);
    },
    key: (input) => (actionOf(input, 'sheets') === 'cancel' ? measureReady(context) : false),
    cancel: () => measureReady(context),
  };
}

/** "3'-4 1/2"  2'-0" across  2'-8 3/4" up  53.8°"; between two nodes the true distance too, where it is another. */
function measured({ board }: ToolContext, from: Snap, to: Snap): string {
  const { units } = board.getState();
  const [u, v] = [to.point.u - from.point.u, to.point.v - from.point.v];
  const slanted = Math.abs(u) > 1e-6 && Math.abs(v) > 1e-6;
  const text = (metres: number) => formatLength(Math.abs(metres), units);
  const [flat, full] = [Math.hypot(u, v), distance(from.at, to.at)];
  return [
    text(flat),
    slanted ? says.across(text(u), text(v), formatAngle((Math.atan2(v, u) * 180) / Math.PI)) : null,
    from.node && to.node && full - flat > 1e-6 ? says.inSpace(text(full)) : null,
  ]
    .filter((part) => part !== null)
    .join('  ');
}
