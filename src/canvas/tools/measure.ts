import type { Vec3 } from '../../graph/document.ts';
import { depthOf, project } from '../../graph/sheet.ts';
import { distance } from '../../graph/vector.ts';
import { formatAngle, formatLength } from '../../units/index.ts';
import { actionOf } from './keys.ts';
import { onAxis } from './select/moving.ts';
import { snapShapes } from './show.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from './tool.ts';

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
    down: (at) => (at.button === 0 ? measuring(context, context.snapAt(at).at, at) : undefined),
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

/** One point is taken: the distance to the pointer is shown until a second click, and says so to all. */
function measuring(context: ToolContext, from: Vec3, press: PointerInput): Phase {
  const { sheet } = press;
  let pressed: PointerInput | null = press;
  let words = '';
  let kept = false;

  const show = (at: PointerInput) => {
    const snapped = context.snapAt(at, { from });
    const start = project(from, sheet);
    const square = at.modifiers.shift ? onAxis(start, snapped.point) : null;
    const end = square ?? snapped.point;
    const depth = Math.abs(depthOf(snapped.at, sheet) - depthOf(from, sheet));
    const length = square ? Math.hypot(end.u - start.u, end.v - start.v) : distance(from, snapped.at);
    words = measured(context, end.u - start.u, end.v - start.v, square ? 0 : depth, length);
    context.draw(sheet, [
      { kind: 'guide', from: start, to: end },
      { kind: 'measure', from: start, to: end, text: words },
      ...(square ? [] : snapShapes(snapped)),
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

/** "3'-4 1/2", 2'-0" across, 2'-8 3/4" up, 53.8°". */
function measured({ board }: ToolContext, u: number, v: number, depth: number, length: number): string {
  const { units } = board.getState();
  const slanted = Math.abs(u) > 1e-6 && Math.abs(v) > 1e-6;
  const text = (metres: number) => formatLength(Math.abs(metres), units);
  return [
    depth > 1e-6 ? `${text(length)} in space` : text(length),
    slanted ? `${text(u)} across  ${text(v)} up` : null,
    slanted ? formatAngle((Math.atan2(v, u) * 180) / Math.PI) : null,
  ]
    .filter((part) => part !== null)
    .join('  ');
}
