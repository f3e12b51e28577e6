import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scheme, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { depthOrder, isometric, project } from '../../../src/graph/isometric.ts';
import { project as onSheet, type SheetId } from '../../../src/graph/sheet.ts';
import { drawn } from '../../support/drawn.ts';

const at: Vec3 = [1.25, -2, 3];

describe('the projection', () => {
  test.each([
    ['floor', { turn: 0, tilt: 90 }],
    ['section-x', { turn: 0, tilt: 0 }],
    ['section-y', { turn: 90, tilt: 0 }],
  ] as const)('shows what the %s sheet shows', (sheet: SheetId, view) => {
    const { u, v } = project(at, view);
    expect(u).toBeCloseTo(onSheet(at, sheet).u, 12);
    expect(v).toBeCloseTo(onSheet(at, sheet).v, 12);
  });

  test('shows the three axes equally short in the isometric', () => {
    const lengths = (
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as Vec3[]
    ).map((axis) => {
      const { u, v } = project(axis, isometric);
      return Math.hypot(u, v);
    });
    for (const length of lengths) expect(length).toBeCloseTo(Math.sqrt(2 / 3), 12);
    expect(project([0, 0, 1], isometric).u).toBeCloseTo(0, 12);
  });

  test('keeps every length, its depth counted in, however it is turned', () => {
    const angle = fc.double({ min: -360, max: 360, noNaN: true });
    const far = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(far, far, far, angle, angle, (x, y, z, turn, tilt) => {
        const { u, v, depth } = project([x, y, z], { turn, tilt });
        expect(Math.hypot(u, v, depth)).toBeCloseTo(Math.hypot(x, y, z), 9);
      }),
    );
  });

  test('takes what is higher for nearer from above, and what is farther north for farther off from the south', () => {
    const above = { turn: 0, tilt: 90 };
    expect(project([0, 0, 2], above).depth).toBeLessThan(project([0, 0, 1], above).depth);
    const south = { turn: 0, tilt: 20 };
    expect(project([0, 2, 0], south).depth).toBeGreaterThan(project([0, 1, 0], south).depth);
  });
});

describe('the order of depth', () => {
  const legs = (...lines: [Vec3, Vec3][]) => {
    const job = structuredClone(drawn());
    const scheme = job.schemes[0] as Scheme;
    scheme.nodes = lines.flatMap(([a, b], i) => [
      { id: `a${i}`, at: a, role: 'turn' as const },
      { id: `b${i}`, at: b, role: 'turn' as const },
    ]);
    scheme.segments = lines.map((_, i) => ({ id: `d${i}`, from: `a${i}`, to: `b${i}` }));
    return inferRoute(job, 's1');
  };

  test('draws the leg that passes below before the one above it, from above', () => {
    const low: [Vec3, Vec3] = [
      [0, 1, 1],
      [2, 1, 1],
    ];
    const high: [Vec3, Vec3] = [
      [1, 0, 2],
      [1, 2, 2],
    ];
    expect(depthOrder(legs(low, high), { turn: 0, tilt: 90 })).toEqual(['d0', 'd1']);
    expect(depthOrder(legs(high, low), { turn: 0, tilt: 90 })).toEqual(['d1', 'd0']);
  });

  test('goes by the depth where legs cross, not by how near they come elsewhere', () => {
    const rising: [Vec3, Vec3] = [
      [0, 0, 0],
      [10, 0, 10],
    ];
    const level: [Vec3, Vec3] = [
      [1, -1, 3],
      [1, 1, 3],
    ];
    expect(depthOrder(legs(rising, level), { turn: 0, tilt: 90 })).toEqual(['d0', 'd1']);
  });

  test('takes legs in a ring as they come, each once', () => {
    const ring = legs(
      [
        [0, 0, 0],
        [4, 0, 2],
      ],
      [
        [3, -1, 0],
        [3, 4, 2],
      ],
      [
        [4, 3, 0],
        [-1, 3, 2],
      ],
      [
        [0.5, 4, 0],
        [0.5, -1, 2],
      ],
    );
    expect([...depthOrder(ring, { turn: 0, tilt: 90 })].sort()).toEqual(['d0', 'd1', 'd2', 'd3']);
  });
});
