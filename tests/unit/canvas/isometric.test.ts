import { describe, expect, it } from 'vitest';
import { type Look, turnByKey } from '../../../src/canvas/isometric-input.ts';
import { inCrossingOrder } from '../../../src/drawing/crossing-order.ts';
import { outlineIn } from '../../../src/drawing/outline.ts';
import { between, box, shown } from '../../../src/drawing/solid.ts';
import { seen } from '../../../src/drawing/tube.ts';
import { draggedBy, isometric, turnedBy, turnedView, turnText } from '../../../src/drawing/turned.ts';
import { views } from '../../../src/drawing/view.ts';
import type { Vec3 } from '../../../src/graph/document.ts';
import { cross, dot, norm } from '../../../src/graph/vector.ts';
import { run } from '../drawing/drawing.ts';

const size = ({ u, v }: { u: number; v: number }) => Math.hypot(u, v);

describe('a turned view', () => {
  it('foreshortens all three axes alike in the isometric, by the root of two thirds', () => {
    const view = turnedView(isometric);
    for (const axis of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as Vec3[])
      expect(size(seen(axis, view))).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });

  it('has three directions of one metre, square to each other', () => {
    for (const turn of [isometric, { azimuth: 200, elevation: -30 }, { azimuth: 10, elevation: 89 }]) {
      const { right, up, toward } = turnedView(turn);
      for (const one of [right, up, toward]) expect(norm(one)).toBeCloseTo(1, 12);
      const made = cross(right, up);
      made.forEach((value, i) => {
        expect(value).toBeCloseTo(toward[i] as number, 12);
      });
    }
  });

  it('from the south and level is the section that looks north; from the east, the one that looks west', () => {
    for (const [azimuth, sheet] of [
      [0, 'section-x'],
      [90, 'section-y'],
    ] as const) {
      const { right, up, toward } = turnedView({ azimuth, elevation: 0 });
      const like = views[sheet];
      for (const [a, b] of [
        [right, like.right],
        [up, like.up],
        [toward, like.toward],
      ] as const)
        expect(dot(a, b)).toBeCloseTo(1, 12);
    }
  });

  it('turns all the way round, but stops short of the plumb line', () => {
    expect(turnedBy({ azimuth: 350, elevation: 80 }, 20, 40)).toEqual({ azimuth: 10, elevation: 89 });
    expect(turnedBy({ azimuth: 10, elevation: -80 }, -20, -40)).toEqual({ azimuth: 350, elevation: -89 });
  });

  it('follows the hand: dragged to the right, what is near goes right', () => {
    const near: Vec3 = [1, -1, 0];
    const before = seen(near, turnedView(isometric)).u;
    expect(seen(near, turnedView(draggedBy(isometric, 20, 0))).u).toBeGreaterThan(before);
  });

  it('says where the viewer stands', () => {
    expect(turnText(isometric)).toBe('from the south-east, 35° above');
    expect(turnText({ azimuth: 359, elevation: -20 })).toBe('from the south, 20° below');
    expect(turnText({ azimuth: 180, elevation: 0 })).toBe('from the north, level');
  });
});

describe('keys in the isometric', () => {
  const turned = (...keys: string[]) => {
    const look: Look = { turn: isometric, view: null, size: { width: 1, height: 1 }, fitted: true };
    const act = {
      redraw: () => undefined,
      show: () => undefined,
      see: () => undefined,
      turnTo(turn: Look['turn']) {
        look.turn = turn;
      },
    };
    for (const key of keys) {
      const used = turnByKey({ key, ctrlKey: false, metaKey: false, altKey: false }, look, act);
      expect(used, key).toBe(true);
    }
    return look.turn;
  };

  it('turn there and back, and Home brings back the isometric', () => {
    expect(turned('ArrowLeft').azimuth).toBe(60);
    expect(turned('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown').azimuth).toBe(45);
    expect(turned('ArrowLeft', 'ArrowUp', 'Home')).toEqual(isometric);
  });

  it('leave other keys, and keys with Control, alone', () => {
    const look: Look = { turn: isometric, view: null, size: { width: 1, height: 1 }, fitted: true };
    const act = { redraw() {}, show() {}, see() {}, turnTo() {} };
    expect(turnByKey({ key: 'd', ctrlKey: false, metaKey: false, altKey: false }, look, act)).toBe(false);
    expect(turnByKey({ key: '0', ctrlKey: true, metaKey: false, altKey: false }, look, act)).toBe(false);
  });
});

describe('a solid', () => {
  it('shows a box by the three faces that look at the viewer, and by one from straight above', () => {
    const cube = box([0, 0, 0], [1, 1, 1]);
    expect(shown(cube, turnedView(isometric)).fill).toHaveLength(3);
    expect(shown(cube, views.floor).fill).toHaveLength(1);
  });

  it('shows the same faces whichever way round their corners are given', () => {
    const ring = (z: number): Vec3[] => [
      [0, 0, z],
      [1, 0, z],
      [0, 1, z],
    ];
    const one = between(ring(0), ring(1));
    const other = one.map((face) => [...face].reverse());
    const view = turnedView({ azimuth: 20, elevation: 30 });
    expect(shown(other, view).fill).toHaveLength(shown(one, view).fill.length);
  });
});

describe('two legs that cross in the picture', () => {
  it('are drawn with the one that passes nearer last, wherever their middles are', () => {
    const lower = run([
      [0, 0, 1],
      [0, -8, 1],
    ]);
    const { route, job } = run([
      [-1, -2, 2],
      [1, -2, 2],
    ]);
    const above = new Map(
      [...route.segments].map(([, leg]) => ['top', { ...leg, id: 'top', from: 'a', to: 'b' }]),
    );
    const nodes = new Map([
      ...lower.route.nodes,
      ...[...route.nodes.values()].map(
        (node, i) => [i === 0 ? 'a' : 'b', { ...node, segments: ['top'] }] as const,
      ),
    ]);
    const both = { ...lower.route, nodes, segments: new Map([...lower.route.segments, ...above]) };
    const view = turnedView({ azimuth: 0, elevation: 45 });
    const outline = outlineIn(both, job, view);
    const legs = (items: typeof outline.drawables) =>
      items.filter(({ kind }) => kind === 'leg').map(({ id }) => id);
    expect(legs(outline.drawables)).toEqual(['top', 'd0']);
    expect(legs(inCrossingOrder(outline.drawables, outline.legs, view))).toEqual(['d0', 'top']);
  });
});
