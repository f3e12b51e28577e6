import { describe, expect, test } from 'vitest';
import type { Block, Job, Scheme, Vec3 } from '../../../src/graph/document.ts';
import { gapBetween, wayOut } from '../../../src/graph/fit/gap.ts';
import { arcTubes, chordError, type Tube } from '../../../src/graph/fit/tube.ts';
import { fitFindings, usualClearance } from '../../../src/graph/fit.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import type { Finding } from '../../../src/graph/route.ts';
import { distance } from '../../../src/graph/vector.ts';
import { drawn } from '../../support/drawn.ts';

const diameter = 0.2032;
/** Of the duct in the small job: half its diameter and its wall of sheet metal. */
const outside = diameter / 2 + 0.0006;

/** Hood at [0,0,1.75], up to 2.35, north to y = 4; a mitre at the turn unless a bend is given. */
function job(blocks: readonly Omit<Block, 'name'>[], change: (scheme: Scheme) => void = () => {}): Job {
  const base = structuredClone(drawn());
  const scheme = base.schemes[0] as Scheme;
  scheme.nodes = [
    { id: 'n1', at: [0, 0, 1.75], role: 'hood', hood: 'h1' },
    { id: 'n2', at: [0, 0, 2.35], role: 'turn', bend: { kind: 'mitred' } },
    { id: 'n3', at: [0, 4, 2.35], role: 'cap', cap: 'wall-flap' },
  ];
  scheme.segments = [
    { id: 'd1', from: 'n1', to: 'n2' },
    { id: 'd2', from: 'n2', to: 'n3' },
  ];
  change(scheme);
  return { ...base, blocks: blocks.map((block) => ({ name: block.id, ...block })) };
}

const findingsOf = (made: Job): readonly Finding[] => fitFindings(made, inferRoute(made, 's1'));
const rulesOf = (made: Job) => findingsOf(made).map(({ rule }) => rule);

const joist = (bottom: number): Omit<Block, 'name'> => ({
  id: 'joist 4',
  kind: 'joist',
  min: [-2, 2, bottom],
  max: [2, 2.04, bottom + 0.24],
});

describe('a duct against a block', () => {
  test('says how far it passes into a joist, and how to be clear of it', () => {
    const half = 0.0127;
    const [found] = findingsOf(job([joist(2.35 + outside - half)]));
    expect(found).toMatchObject({
      rule: 'fit-clash',
      severity: 'error',
      segments: ['d2'],
      blocks: ['joist 4'],
      message: 'The leg from the turn to the cap passes 1/2" into joist 4.',
    });
    expect(found?.remedy).toMatch(/^Move it 1\/2" down/);
  });

  test('has a finding of clearance where it passes nearer than is usual, with its source', () => {
    const [found] = findingsOf(job([joist(2.35 + outside + 0.00635)]));
    expect(found).toMatchObject({ rule: 'fit-clearance', severity: 'warning', source: 'common practice' });
    expect(found?.message).toContain('leaves 1/4" to joist 4; 1/2" is wanted');
  });

  test('has nothing to say where it passes farther off', () => {
    expect(findingsOf(job([joist(2.35 + outside + usualClearance + 1e-6)]))).toEqual([]);
  });

  test('is held to the clearance that the job asks for', () => {
    const asked = { ...job([joist(2.35 + outside + 0.04)]), clearance: 0.05 };
    expect(rulesOf(asked)).toEqual(['fit-clearance']);
    expect(findingsOf(asked)[0]?.source).toBeUndefined();
  });

  test('is larger by its insulation', () => {
    const block = joist(2.35 + outside + 0.02);
    const wrapped = job([block], (scheme) => {
      for (const segment of scheme.segments) segment.insulation = 0.025;
    });
    expect(rulesOf(job([block]))).toEqual([]);
    expect(rulesOf(wrapped)).toEqual(['fit-clash']);
  });

  test('counts the height of flat duct upwards and its width sideways', () => {
    const flat = (bottom: number) =>
      job([joist(bottom)], (scheme) => {
        scheme.defaults.duct = { shape: 'rectangular', width: 0.25, height: 0.08 };
      });
    expect(rulesOf(flat(2.35 + 0.06))).toEqual([]);
    expect(rulesOf(flat(2.35 + 0.03))).toEqual(['fit-clash']);
  });

  test('tells of all the blocks that a leg runs into in one finding, the deepest first', () => {
    const deep = joist(2.3);
    const found = findingsOf(
      job([{ ...joist(2.44), id: 'shallow', min: [-2, 3, 2.44], max: [2, 3.04, 2.7] }, deep]),
    );
    expect(found).toHaveLength(1);
    expect(found[0]?.blocks).toEqual(['joist 4', 'shallow']);
  });

  test('that is a cabinet loses room, which is a warning', () => {
    const found = findingsOf(job([{ ...joist(2.3), id: 'pantry', kind: 'cabinet' }]));
    expect(found.map(({ rule, severity }) => `${rule} ${severity}`)).toEqual(['fit-clash warning']);
  });
});

describe('what a duct may pass', () => {
  const wall: Omit<Block, 'name'> = { id: 'wall', kind: 'wall', min: [-3, 3.8, 0], max: [3, 3.95, 3] };

  test('a wall, where its leg ends outside through an exit face in that wall', () => {
    const through = job([wall]);
    expect(rulesOf(through)).toEqual(['fit-clash']);
    const face = { id: 'x1', name: 'north wall', kind: 'wall' as const, min: wall.min, max: wall.max };
    expect(rulesOf({ ...through, exits: [face] })).toEqual([]);
  });

  test('a wall, but not one beside the exit face that it leaves by', () => {
    const face = {
      id: 'x1',
      name: 'window',
      kind: 'wall' as const,
      min: [1, 3.8, 0] as Vec3,
      max: [3, 3.95, 3] as Vec3,
    };
    expect(rulesOf({ ...job([wall]), exits: [face] })).toEqual(['fit-clash']);
  });

  test('the cabinet that its hood hangs in, up from the collar', () => {
    const cabinet = {
      id: 'c',
      kind: 'cabinet' as const,
      min: [-0.4, -0.2, 1.75] as Vec3,
      max: [0.4, 0.2, 2.1] as Vec3,
    };
    expect(rulesOf(job([cabinet]))).toEqual([]);
  });

  test('a wall that a chase leads through, but not a pipe in that chase', () => {
    const inner: Omit<Block, 'name'> = { id: 'inner', kind: 'wall', min: [-3, 2, 0], max: [3, 2.1, 3] };
    const chase: Omit<Block, 'name'> = {
      id: 'chase',
      kind: 'chase',
      min: [-0.2, 1, 2.2],
      max: [0.2, 3, 2.5],
    };
    const pipe: Omit<Block, 'name'> = {
      id: 'pipe',
      kind: 'obstacle',
      min: [-0.2, 2.5, 2.2],
      max: [0.2, 2.55, 2.3],
    };
    expect(rulesOf(job([inner]))).toEqual(['fit-clash']);
    expect(rulesOf(job([inner, chase]))).toEqual([]);
    expect(rulesOf(job([inner, chase, pipe]))).toEqual(['fit-clash']);
  });
});

describe('a duct in a chase', () => {
  const chase = (east: number): Omit<Block, 'name'> => ({
    id: 'soffit',
    kind: 'chase',
    min: [-0.15, 1, 2.2],
    max: [east, 3, 2.5],
  });

  test('fits, and may go in at one end and out at the other', () => {
    expect(rulesOf(job([chase(0.15)]))).toEqual([]);
  });

  test('is told by how much it stands out of a side', () => {
    const [found] = findingsOf(job([chase(outside - 0.0254)]));
    expect(found).toMatchObject({ rule: 'fit-chase', segments: ['d2'], blocks: ['soffit'] });
    expect(found?.message).toContain('stands 1" out of the east side of the soffit');
  });

  test('may stand out of it into another chase', () => {
    const beside: Omit<Block, 'name'> = {
      ...chase(1),
      id: 'bay',
      min: [0.05, 0.9, 2.1],
      max: [0.4, 3.1, 2.6],
    };
    expect(rulesOf(job([chase(0.05), beside]))).toEqual([]);
  });

  test('cuts into its side where it grazes it from outside', () => {
    const beside = { ...chase(1), min: [outside - 0.0127, 1, 2.2] as Vec3 };
    const [found] = findingsOf(job([beside]));
    expect(found?.message).toContain('cuts 1/2" into the side of the soffit');
  });

  test('turns in it only where the chase has room for the bend', () => {
    const shaft = (depth: number): Omit<Block, 'name'> => ({
      id: 'shaft',
      kind: 'chase',
      min: [-0.15, -0.15, 1.8],
      max: [0.15, depth, 2.5],
    });
    const bent = (depth: number) =>
      job([shaft(depth)], (scheme) => {
        const turn = scheme.nodes[1] as Scheme['nodes'][0];
        turn.bend = { kind: 'smooth', radiusRatio: 1.5 };
      });
    expect(rulesOf(bent(0.4))).toEqual([]);
    const [found] = findingsOf(bent(0.15));
    expect(found).toMatchObject({ rule: 'fit-bend', nodes: ['n2'], blocks: ['shaft'] });
    expect(found?.message).toContain('its bend takes 1\'-0" from the corner and has 5 7/8"');
  });
});

test('a cone is as wide as the duct before it', () => {
  const beside = (from: number): Omit<Block, 'name'> => ({
    id: 'stud',
    kind: 'obstacle',
    min: [-1, from, 2.35 + 0.085],
    max: [1, from + 0.04, 2.6],
  });
  const reduced = (at: number) =>
    job([beside(at)], (scheme) => {
      scheme.nodes.push({ id: 'n4', at: [0, 1, 2.35], role: 'turn' });
      scheme.segments = [
        { id: 'd1', from: 'n1', to: 'n2' },
        { id: 'd2', from: 'n2', to: 'n4' },
        { id: 'd3', from: 'n4', to: 'n3', duct: { shape: 'round', diameter: 0.1524 } },
      ];
    });
  const route = inferRoute(reduced(3), 's1');
  const cone = route.nodes.get('n4')?.transition?.length ?? 0;
  expect(cone).toBeGreaterThan(0.05);
  expect(rulesOf(reduced(1 + cone + 0.01))).not.toContain('fit-clash');
  expect(rulesOf(reduced(1 + cone - 0.01))).toContain('fit-clash');
});

test('an arc keeps clear of a block in the corner that it cuts off', () => {
  const corner: Omit<Block, 'name'> = {
    id: 'post',
    kind: 'beam',
    min: [-0.1, -0.1, 2.38],
    max: [0.1, 0.02, 2.6],
  };
  const arc = job([corner], (scheme) => {
    (scheme.nodes[1] as Scheme['nodes'][0]).bend = { kind: 'smooth', radiusRatio: 1.5 };
  });
  expect(rulesOf(job([corner]))).toContain('fit-clash');
  expect(rulesOf(arc)).toEqual([]);
});

test('the chords of an arc stray from it by no more than they say', () => {
  const made = job([], (scheme) => {
    (scheme.nodes[1] as Scheme['nodes'][0]).bend = { kind: 'smooth', radiusRatio: 1.5 };
  });
  const route = inferRoute(made, 's1');
  const node = route.nodes.get('n2');
  if (!node?.bend) throw new Error('no bend');
  const tubes = arcTubes(node, route);
  const { radius } = node.bend;
  const centre: Vec3 = [0, radius, 2.35 - radius];
  for (const { a, b } of tubes) {
    expect(distance(a, centre)).toBeCloseTo(radius, 9);
    const middle: Vec3 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
    expect(radius - distance(middle, centre)).toBeLessThanOrEqual(chordError);
  }
  expect(tubes[0]?.a[2]).toBeCloseTo(2.35 - radius, 9);
  expect(tubes.at(-1)?.b[1]).toBeCloseTo(radius, 9);
});

describe('distance to a box', () => {
  const box = { min: [1, 1, 1] as Vec3, max: [2, 3, 4] as Vec3 };
  const tube = (a: Vec3, b: Vec3, change: Partial<Tube> = {}): Tube => ({
    a,
    b,
    across: [
      [1, 0, 0],
      [0, 1, 0],
    ],
    half: [0, 0],
    rounding: 0,
    ...change,
  });

  test('is that of round duct to the nearest edge', () => {
    expect(gapBetween(tube([0, 0, 0], [0, 0, 9], { rounding: 0.3 }), box)).toBeCloseTo(Math.SQRT2 - 0.3, 12);
  });

  test('ends where the duct ends', () => {
    expect(gapBetween(tube([1.5, 2, 0], [1.5, 2, 0.8], { rounding: 0.3 }), box)).toBeCloseTo(0.2, 12);
  });

  test('of sloping duct is the least over its length', () => {
    const [a, b]: [Vec3, Vec3] = [
      [-1, 0, 0],
      [3, 0.5, 6],
    ];
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 20000; i += 1) {
      const p = ([0, 1, 2] as const).map((k) => a[k] + ((b[k] - a[k]) * i) / 20000);
      least = Math.min(
        least,
        Math.hypot(
          ...([0, 1, 2] as const).map((k) => Math.max(box.min[k] - (p[k] ?? 0), (p[k] ?? 0) - box.max[k], 0)),
        ),
      );
    }
    expect(gapBetween(tube(a, b), box)).toBeCloseTo(least, 6);
  });

  test('of sloping flat duct counts its corners', () => {
    const s = Math.SQRT1_2;
    const flat = tube([-2, 2, 0], [0, 2, 2], {
      across: [
        [0, 1, 0],
        [s, 0, -s],
      ],
      half: [0.2, 0.1],
    });
    let least = Number.POSITIVE_INFINITY;
    const n = 400;
    for (let i = 0; i <= n; i += 1)
      for (const e of [-1, 1]) {
        const x = -2 + (2 * i) / n + 0.1 * e * s;
        const z = (2 * i) / n - 0.1 * e * s;
        least = Math.min(least, Math.hypot(Math.max(1 - x, 0), Math.max(1 - z, 0)));
      }
    expect(gapBetween(flat, box)).toBeCloseTo(least, 4);
  });

  test('the way out is the least of six', () => {
    const out = wayOut(
      tube([1.5, 0, 1.05], [1.5, 5, 1.05], {
        rounding: 0.2,
        across: [
          [1, 0, 0],
          [0, 0, 1],
        ],
      }),
      box,
    );
    expect(out).toMatchObject({ axis: 2, sense: -1 });
    expect(out.distance).toBeCloseTo(0.25, 4);
  });
});

test('a route and blocks that are looked at again are not measured again', () => {
  const made = job([joist(2.3)]);
  expect(findingsOf(made)).toBe(findingsOf(made));
});

test('of thousands of blocks those near the route are found', () => {
  const many = Array.from({ length: 4000 }, (_, i): Omit<Block, 'name'> => {
    const [x, y] = [5 + (i % 64), Math.floor(i / 64)];
    return { id: `b${i}`, kind: 'obstacle', min: [x, y, 0], max: [x + 0.5, y + 0.5, 3] };
  });
  const found = findingsOf(job([...many, joist(2.3)]));
  expect(found.map(({ blocks }) => blocks)).toEqual([['joist 4']]);
});
