import { draggedBy, isometric, type Turn, turnedBy } from '../drawing/turned.ts';
import { panBy, type Size, type Viewport, zoomAt } from '../drawing/viewport.ts';
import { type Board, type BoardState, nothing } from './board.ts';
import { pickInScene, sceneOf } from './isometric-painter.ts';

/** Pixels that a press may wander before it turns the picture. */
const SLOP = 4;
/** Degrees for an arrow key. */
const KEY_STEP = 15;
const ZOOM_STEP = 1.25;

/** How the picture lies in its element, and whether it still is as it was fitted. */
export interface Look {
  turn: Turn;
  view: Viewport | null;
  size: Size;
  fitted: boolean;
}

export interface Acts {
  redraw(all: boolean): void;
  show(): void;
  turnTo(turn: Turn): void;
  see(view: Viewport): void;
}

function reset(look: Look, act: Acts): void {
  look.fitted = true;
  act.turnTo(isometric);
}

/** Turns, resets, fits and zooms by keys; true where the key was one of them. */
export function turnByKey(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'>,
  look: Look,
  act: Acts,
): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const turn = (azimuth: number, elevation: number) => act.turnTo(turnedBy(look.turn, azimuth, elevation));
  const zoom = (factor: number) => {
    const middle = { x: look.size.width / 2, y: look.size.height / 2 };
    if (look.view) act.see(zoomAt(look.view, middle, factor));
  };
  switch (event.key) {
    case 'ArrowLeft':
      turn(KEY_STEP, 0);
      return true;
    case 'ArrowRight':
      turn(-KEY_STEP, 0);
      return true;
    case 'ArrowUp':
      turn(0, KEY_STEP);
      return true;
    case 'ArrowDown':
      turn(0, -KEY_STEP);
      return true;
    case 'Home':
      reset(look, act);
      return true;
    case '0':
      act.show();
      return true;
    case '+':
    case '=':
      zoom(ZOOM_STEP);
      return true;
    case '-':
      zoom(1 / ZOOM_STEP);
      return true;
    default:
      return false;
  }
}

/** Pointer, wheel and fingers: one turns or clicks, two pan and zoom, and so do wheel and trackpad. */
export function listen(element: HTMLElement, board: Board, look: Look, act: Acts): () => void {
  const stop = new AbortController();
  const options = { signal: stop.signal };
  const fingers = new Map<number, { x: number; y: number }>();
  let press: { x: number; y: number; turn: Turn; turning: boolean } | null = null;
  const at = (event: MouseEvent) => {
    const { left, top } = element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const pick = (point: { x: number; y: number }) =>
    look.view && pickInScene(sceneOf(board.getState(), look.turn), point, look.view);

  element.addEventListener(
    'pointerdown',
    (event) => {
      if (event.button !== 0 && event.button !== 1) return;
      event.preventDefault();
      element.focus({ preventScroll: true });
      element.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, at(event));
      press = fingers.size === 1 ? { ...at(event), turn: look.turn, turning: false } : null;
    },
    options,
  );
  element.addEventListener(
    'pointermove',
    (event) => {
      const point = at(event);
      const before = fingers.get(event.pointerId);
      if (!before) {
        const over = pick(point) ?? nothing;
        if (!sameIds(board.getState().hover, over)) board.set({ hover: over });
        element.style.cursor = over === nothing ? 'grab' : 'pointer';
        return;
      }
      const others = [...fingers].filter(([id]) => id !== event.pointerId);
      fingers.set(event.pointerId, point);
      const [other] = others;
      if (other && look.view) {
        const [, fixed] = other;
        const factor =
          Math.hypot(point.x - fixed.x, point.y - fixed.y) /
          Math.max(1, Math.hypot(before.x - fixed.x, before.y - fixed.y));
        const moved = panBy(look.view, (point.x - before.x) / 2, (point.y - before.y) / 2);
        act.see(zoomAt(moved, { x: (point.x + fixed.x) / 2, y: (point.y + fixed.y) / 2 }, factor));
        return;
      }
      if (!press) return;
      const [dx, dy] = [point.x - press.x, point.y - press.y];
      if ((event.buttons & 4) !== 0 || event.shiftKey) {
        if (look.view) act.see(panBy(look.view, point.x - before.x, point.y - before.y));
        press.turning = true;
        return;
      }
      if (!press.turning && Math.hypot(dx, dy) <= SLOP) return;
      if (!press.turning) element.style.cursor = 'grabbing';
      press.turning = true;
      act.turnTo(draggedBy(press.turn, dx, dy));
    },
    options,
  );
  const end = (event: PointerEvent) => {
    fingers.delete(event.pointerId);
    element.style.cursor = 'grab';
    if (event.type === 'pointerup' && press && !press.turning && event.button === 0)
      board.set({ selection: pick(at(event)) ?? nothing });
    press = null;
  };
  for (const type of ['pointerup', 'pointercancel', 'lostpointercapture'] as const)
    element.addEventListener(type, end, options);
  element.addEventListener(
    'pointerleave',
    () => {
      if (fingers.size === 0 && board.getState().hover !== nothing) board.set({ hover: nothing });
    },
    options,
  );
  element.addEventListener('dblclick', () => reset(look, act), options);
  element.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      if (!look.view) return;
      if (event.ctrlKey || event.metaKey)
        act.see(zoomAt(look.view, at(event), Math.exp(-Math.max(-25, Math.min(25, event.deltaY)) * 0.01)));
      else act.see(panBy(look.view, -event.deltaX, -event.deltaY));
    },
    { ...options, passive: false },
  );
  element.style.cursor = 'grab';
  return () => stop.abort();
}

function sameIds(a: BoardState['selection'], b: BoardState['selection']): boolean {
  return a.nodes.join() === b.nodes.join() && a.segments.join() === b.segments.join();
}
