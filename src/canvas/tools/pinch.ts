import type { ScreenPoint } from '../../graph/sheet.ts';

/** What two fingers did since the last look. */
export interface PinchStep {
  /** Where they are now, half way between them. */
  readonly around: ScreenPoint;
  readonly dx: number;
  readonly dy: number;
  /** Spread over the spread before. */
  readonly factor: number;
}

/** Follows two fingers by id; the first two that came down count. */
export interface Fingers {
  readonly count: number;
  down(id: number, at: ScreenPoint): void;
  move(id: number, at: ScreenPoint): PinchStep | null;
  up(id: number): void;
  clear(): void;
}

/** Closer than this, pixels, two fingers say nothing about size. */
const LEAST_SPREAD = 10;

export function followFingers(): Fingers {
  const fingers = new Map<number, ScreenPoint>();
  const pair = () => {
    const [a, b] = fingers.values();
    return a && b
      ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, spread: Math.hypot(a.x - b.x, a.y - b.y) }
      : null;
  };
  return {
    get count() {
      return fingers.size;
    },
    down: (id, at) => void fingers.set(id, at),
    move(id, at) {
      const before = pair();
      if (!fingers.has(id)) return null;
      fingers.set(id, at);
      const now = pair();
      if (!before || !now) return null;
      const factor = Math.min(before.spread, now.spread) < LEAST_SPREAD ? 1 : now.spread / before.spread;
      return { around: { x: now.x, y: now.y }, dx: now.x - before.x, dy: now.y - before.y, factor };
    },
    up: (id) => void fingers.delete(id),
    clear: () => fingers.clear(),
  };
}
