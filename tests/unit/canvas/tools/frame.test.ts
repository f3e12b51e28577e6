import { describe, expect, it } from 'vitest';
import { coalesce } from '../../../../src/canvas/tools/frame.ts';
import { followFingers } from '../../../../src/canvas/tools/pinch.ts';

function bench() {
  const seen: number[] = [];
  const waiting = new Map<number, () => void>();
  let next = 1;
  const frames = coalesce<number>(
    (move) => seen.push(move),
    (run) => {
      waiting.set(next, run);
      return next++;
    },
    (id) => waiting.delete(id),
  );
  const tick = () => {
    const runs = [...waiting.values()];
    waiting.clear();
    for (const run of runs) run();
  };
  return { frames, seen, tick, waiting };
}

describe('moves between two frames', () => {
  it('are acted on once, the newest', () => {
    const { frames, seen, tick } = bench();
    for (const move of [1, 2, 3]) frames.push(move);
    expect(seen).toEqual([]);
    tick();
    expect(seen).toEqual([3]);
    expect(frames.counts).toEqual({ received: 3, delivered: 1 });
  });

  it('ask for one frame', () => {
    const { frames, waiting } = bench();
    for (const move of [1, 2, 3]) frames.push(move);
    expect(waiting.size).toBe(1);
  });

  it('are acted on at once before a press, and not again', () => {
    const { frames, seen, tick } = bench();
    frames.push(1);
    frames.flush();
    tick();
    expect(seen).toEqual([1]);
  });

  it('are forgotten when the gesture is dropped', () => {
    const { frames, seen, tick } = bench();
    frames.push(1);
    frames.drop();
    tick();
    frames.flush();
    expect(seen).toEqual([]);
  });
});

describe('two fingers', () => {
  it('say how far they moved and how much they spread', () => {
    const fingers = followFingers();
    fingers.down(1, { x: 0, y: 0 });
    fingers.down(2, { x: 100, y: 0 });
    expect(fingers.move(2, { x: 200, y: 0 })).toEqual({
      around: { x: 100, y: 0 },
      dx: 50,
      dy: 0,
      factor: 2,
    });
  });

  it('say nothing when one has gone', () => {
    const fingers = followFingers();
    fingers.down(1, { x: 0, y: 0 });
    fingers.down(2, { x: 100, y: 0 });
    fingers.up(1);
    expect(fingers.move(2, { x: 200, y: 0 })).toBeNull();
    expect(fingers.count).toBe(1);
  });

  it('move without zooming where they are too close to tell', () => {
    const fingers = followFingers();
    fingers.down(1, { x: 0, y: 0 });
    fingers.down(2, { x: 4, y: 0 });
    expect(fingers.move(2, { x: 8, y: 0 })?.factor).toBe(1);
  });
});
