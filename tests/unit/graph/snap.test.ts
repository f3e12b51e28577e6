import { describe, expect, test } from 'vitest';
import type { Block, Scheme, Vec3 } from '../../../src/graph/document.ts';
import type { SheetId } from '../../../src/graph/sheet.ts';
import { type SnapRequest, snap } from '../../../src/graph/snap.ts';
import { buildSpatialIndex } from '../../../src/graph/spatial.ts';
import { drawn, places, schemeOf } from '../../support/drawn.ts';

const scheme = schemeOf(drawn());
const bare: Scheme = { ...scheme, nodes: [], segments: [] };

function at(u: number, v: number, ask: Partial<SnapRequest> & { sheet?: SheetId; of?: Scheme } = {}) {
  const { sheet = 'floor', of = scheme, ...rest } = ask;
  const index = buildSpatialIndex(of, sheet);
  return snap({ index, point: { u, v }, tolerance: 0.05, workingDepth: 2.3, units: 'imperial', ...rest });
}

const close = (place: Vec3, expected: Vec3) => {
  for (const i of [0, 1, 2] as const) expect(place[i]).toBeCloseTo(expected[i], 9);
};

test('where nothing attracts, the point stays where it is, at the working depth', () => {
  expect(at(3, 1)).toEqual({ at: [3, 1, 2.3], point: { u: 3, v: 1 }, reason: '', guides: [] });
});

describe('a node', () => {
  test('takes the pointer to its place in space', () => {
    expect(at(1.03, 2.02)).toMatchObject({ at: places.n3, node: 'n3', reason: 'on node' });
    expect(at(4.01, 2)).toMatchObject({ node: 'n4', reason: 'on cap' });
  });

  test('wins over a centre line that is nearer', () => {
    expect(at(1.04, 2).node).toBe('n3');
  });

  test('at the working depth wins over one above it', () => {
    expect(at(1, 0, { workingDepth: 1.75 }).node).toBe('n1');
    expect(at(1, 0, { workingDepth: 2.35 }).node).toBe('n2');
  });

  test('that is being moved does not attract, and its legs do not either', () => {
    const held = at(1.03, 2.02, { exclude: new Set(['n3']) });
    expect(held.node).toBeUndefined();
    expect(held.segment).toBeUndefined();
  });
});

describe('a centre line', () => {
  test('takes the pointer to the duct itself', () => {
    const held = at(2.5, 2.03);
    expect(held).toMatchObject({ reason: 'on centre line', segment: { id: 'd3', t: 0.5 } });
    close(held.at, [2.5, 2, 2.35]);
  });

  test('meets a direction where they cross', () => {
    const held = at(2.51, 2.03, { from: [2.5, 0.5, 2.35], previous: [1.5, 0.5, 2.35], workingDepth: 2.35 });
    expect(held.reason).toBe('on centre line, 90° from last turn');
    close(held.at, [2.5, 2, 2.35]);
    expect(held.segment?.t).toBeCloseTo(0.5, 12);
  });

  test('above the leg that is drawn to it promises no angle', () => {
    const held = at(2.51, 2.03, { from: [2.5, 0.5, 2], previous: [1.5, 0.5, 2], workingDepth: 2 });
    expect(held.reason).toBe('on centre line');
    close(held.at, [2.5, 2, 2.35]);
  });

  test('of a riser is met at the working depth', () => {
    const held = at(1.01, 0.01, { workingDepth: 2 });
    expect(held.reason).toBe('on riser');
    close(held.at, [1, 0, 2]);
    expect(held.segment?.id).toBe('d1');
    expect(held.segment?.t).toBeCloseTo(0.25 / 0.6, 12);
  });
});

describe('a direction', () => {
  const from: Vec3 = [0, 0, 2.3];

  test.each([
    [2, 0.02, 'straight on', [2, 0, 2.3]],
    [0.02, -2, '90° from last turn', [0, -2, 2.3]],
    [2, 2.02, '45° from last turn', [2.01, 2.01, 2.3]],
    [-2, 2.02, '135° from last turn', [-2.01, 2.01, 2.3]],
  ] as const)('to (%d, %d) is %s', (u, v, reason, place) => {
    const held = at(u, v, { of: bare, from, previous: [-1, 0, 2.3] });
    expect(held.reason).toBe(reason);
    close(held.at, [...place]);
  });

  test('counts from a leg that lies askew on the sheet', () => {
    const tilt = (10 * Math.PI) / 180;
    const previous: Vec3 = [-Math.cos(tilt), -Math.sin(tilt), 2.3];
    const held = at(2 * Math.cos(4 * tilt + 5 * (Math.PI / 180) + tilt), 2 * Math.sin((55 * Math.PI) / 180), {
      of: bare,
      from,
      previous,
    });
    expect(held.reason).toBe('45° from last turn');
  });

  test('back along the leg before is not offered', () => {
    expect(at(-2, -0.02, { of: bare, from, previous: [-1, 0, 2.3] }).reason).toBe('');
  });

  test('from each of two neighbours makes a corner square to both', () => {
    const held = at(3.02, 4.03, { of: bare, from: [3, 0, 2.3], anchors: [[0, 4, 2.3]] });
    expect(held.reason).toBe('due north, due east');
    close(held.at, [3, 4, 2.3]);
    expect(held.guides).toHaveLength(2);
  });

  test('after a riser is square to it, whichever way it goes', () => {
    expect(at(2, 1.16, { of: bare, from, previous: [0, 0, 1] }).reason).toBe('90° from last turn');
  });

  test('without a leg before it is named on the sheet', () => {
    expect(at(2, 2.02, { of: bare, from }).reason).toBe('45° on the sheet');
    expect(at(0.02, 2, { of: bare, from }).reason).toBe('due north');
    const section = { of: bare, sheet: 'section-x', from, workingDepth: 0 } as const;
    expect(at(0.02, 4, section).reason).toBe('plumb');
    expect(at(2, 2.32, section).reason).toBe('level');
  });

  test('of a leg that leaves the plane of the sheet claims no angle in space', () => {
    const held = at(2, 0.02, { of: bare, from, previous: [-1, 0, 2.3], workingDepth: 2 });
    expect(held.reason).toBe('0° on the sheet');
  });

  test('is not offered between the 15° steps', () => {
    expect(at(2, 2 * Math.tan((7.5 * Math.PI) / 180), { of: bare, from }).reason).toBe('');
  });

  test('shows where it comes from', () => {
    expect(at(2, 0.02, { of: bare, from }).guides).toEqual([
      [
        { u: 0, v: 0 },
        { u: 2, v: 0 },
      ],
    ]);
  });

  test('stops where the leg is as long as the one before', () => {
    const held = at(1.52, 0.02, { of: bare, from, previous: [-1.5, 0, 2.3] });
    expect(held.reason).toBe('straight on, same length as previous leg');
    close(held.at, [1.5, 0, 2.3]);
  });

  test('stops in line with a node', () => {
    const held = at(4.02, 0.52, { from: [2, 0.5, 2.3] });
    expect(held.reason).toBe('due east, in line with cap');
    close(held.at, [4, 0.5, 2.3]);
  });

  test('goes by whole steps of the grid from where the leg starts', () => {
    const held = at(2.009, 0.012, { of: bare, from: [0.01, 0.01, 2.3], gridStep: 0.0254 });
    expect(held.reason).toBe('due east, grid 1"');
    expect((held.at[0] - 0.01) / 0.0254).toBeCloseTo(79, 9);
    expect(held.at[1]).toBeCloseTo(0.01, 12);
  });
});

test('a leg in no direction may be as long as the one before', () => {
  const angle = (7 * Math.PI) / 180;
  const held = at(1.53 * Math.cos(angle), 1.53 * Math.sin(angle), {
    of: bare,
    from: [0, 0, 2.3],
    previous: [-1.5, 0, 2.3],
    tolerance: 0.035,
  });
  expect(held.reason).toBe('same length as previous leg');
  expect(Math.hypot(held.at[0], held.at[1])).toBeCloseTo(1.5, 12);
});

describe('a face', () => {
  const joist: Block = { id: 'b1', name: 'joist 4', kind: 'joist', min: [2, -1, 2.2], max: [2.04, 1, 2.44] };

  test('takes the pointer to it, by name', () => {
    const held = at(1.98, 0.33, { of: bare, blocks: [joist] });
    expect(held.reason).toBe('face of joist 4');
    close(held.at, [2, 0.33, 2.3]);
    expect(held.guides).toEqual([
      [
        { u: 2, v: -1 },
        { u: 2, v: 1 },
      ],
    ]);
  });

  test('reaches no farther than the block', () => {
    expect(at(1.98, 1.2, { of: bare, blocks: [joist] }).reason).toBe('');
  });

  test('of an exit stops a leg that goes straight at it', () => {
    const wall = { id: 'x1', name: 'north wall', kind: 'wall', min: [0, 5, 0], max: [6, 5, 3] } as const;
    const exits = [{ ...wall, min: [...wall.min] as Vec3, max: [...wall.max] as Vec3 }];
    const held = at(3.02, 4.98, { of: bare, exits, from: [3, 0, 2.3] });
    expect(held.reason).toBe('due north, face of north wall');
    close(held.at, [3, 5, 2.3]);
  });
});

test('a place in line with two nodes is held by both', () => {
  const held = at(4.02, 0.03);
  expect(held.reason).toBe('in line with cap, in line with hood');
  close(held.at, [4, 0, 2.3]);
});

describe('the grid', () => {
  test('takes a pointer that nothing else takes', () => {
    const held = at(0.51, 0.26, { of: bare, gridStep: 0.25 });
    expect(held).toMatchObject({ at: [0.5, 0.25, 2.3], reason: 'grid 9 13/16"' });
  });

  test('is named in the units of the job', () => {
    expect(at(0.51, 0.26, { of: bare, gridStep: 0.05, units: 'metric' }).reason).toBe('grid 50 mm');
  });

  test('does not reach beyond the tolerance', () => {
    expect(at(0.35, 0.35, { of: bare, gridStep: 0.25 }).reason).toBe('');
  });
});

test('what is held is within the tolerance of the pointer, and is what the sheet shows of its place', () => {
  for (let i = 0; i < 400; i += 1) {
    const [u, v] = [(i % 20) * 0.23, Math.floor(i / 20) * 0.131];
    const held = at(u, v, { from: [0.4, 0.7, 2.35], previous: [0.4, 0, 2.35], gridStep: 0.0254 });
    expect(Math.hypot(held.point.u - u, held.point.v - v)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect([held.at[0], held.at[1]]).toEqual([held.point.u, held.point.v]);
  }
});
