import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../../src/drawing/outline.ts';
import { capDrawable } from '../../../src/drawing/outline-cap.ts';
import { pointsOf } from '../../../src/drawing/stroke.ts';
import { views } from '../../../src/drawing/view.ts';
import { capBody, inlineBody } from '../../../src/graph/bodies.ts';
import type { Block, Job, Scheme } from '../../../src/graph/document.ts';
import { fitFindings } from '../../../src/graph/fit.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { caps } from '../../../src/hydraulics/catalogue.ts';
import { drawn } from '../../support/drawn.ts';

const half = 0.2032 / 2;

/** Hood at [0,0,2], up to 2.6, north to a cap at y = 4; a silencer in the middle of the level leg where one is asked for. */
function job(
  blocks: readonly Omit<Block, 'name'>[],
  change: (job: Job, scheme: Scheme) => void = () => {},
): Job {
  const base = structuredClone(drawn());
  const scheme = base.schemes[0] as Scheme;
  scheme.nodes = [
    { id: 'n1', at: [0, 0, 2], role: 'hood', hood: 'h1' },
    { id: 'n2', at: [0, 0, 2.6], role: 'turn' },
    { id: 'n3', at: [0, 4, 2.6], role: 'cap', cap: 'wall-hooded' },
  ];
  scheme.segments = [
    { id: 'd1', from: 'n1', to: 'n2' },
    { id: 'd2', from: 'n2', to: 'n3' },
  ];
  base.kitchen.mountingHeight = 0.7;
  change(base, scheme);
  return { ...base, blocks: blocks.map((block) => ({ name: block.id, ...block })) };
}

const found = (made: Job) =>
  fitFindings(made, inferRoute(made, 's1')).map(({ rule, severity, nodes, segments, blocks }) => ({
    rule,
    severity,
    at: [...nodes, ...segments],
    blocks,
  }));

const body = (at: string, block: string) => ({
  rule: 'fit-body',
  severity: 'warning',
  at: [at],
  blocks: [block],
});

describe('the body of a hood', () => {
  const wide = (width: number) => (made: Job) => {
    for (const hood of made.hoods) hood.width = width;
  };
  /** A cabinet east of the hood at the height of its lip. */
  const cabinet = (west: number): Omit<Block, 'name'> => ({
    id: 'right cabinet',
    kind: 'cabinet',
    min: [west, -0.2, 1.4],
    max: [west + 0.6, 0.2, 2.2],
  });

  test('that is wider than the gap between cabinets stands in one of them', () => {
    expect(found(job([cabinet(0.44)], wide(0.9)))).toEqual([body('n1', 'right cabinet')]);
  });

  test('that just fits between them does not', () => {
    expect(found(job([cabinet(0.45)], wide(0.9)))).toEqual([]);
  });

  test('that does not say how wide it is, is not guessed at', () => {
    expect(found(job([cabinet(0.3)]))).toEqual([]);
  });

  test('may stand in the cabinet that holds its collar', () => {
    const around: Omit<Block, 'name'> = {
      id: 'hood cabinet',
      kind: 'cabinet',
      min: [-0.4, -0.3, 1.5],
      max: [0.4, 0.3, 2.3],
    };
    expect(found(job([around], wide(0.9)))).toEqual([]);
  });
});

describe('the body of a cap', () => {
  /** A post in front of the cap, its near side so far beyond the end of the duct. */
  const post = (gap: number): Omit<Block, 'name'> => ({
    id: 'post',
    kind: 'obstacle',
    min: [-0.1, 4 + gap, 0],
    max: [0.1, 4.6, 3],
  });

  test('stands in what is nearer to the wall than it is deep', () => {
    expect(found(job([post(1.35 * half - 0.01)]))).toEqual([body('n3', 'post')]);
  });

  test('is clear of what is farther off', () => {
    expect(found(job([post(1.35 * half + 0.02)]))).toEqual([]);
  });

  test('an open end has none', () => {
    const open = job([post(0.05)], (_, scheme) => {
      for (const node of scheme.nodes) if (node.role === 'cap') node.cap = 'open';
    });
    expect(found(open).filter(({ rule }) => rule === 'fit-body')).toEqual([]);
  });
});

describe('the body of a part in line', () => {
  const silencer = (_: Job, scheme: Scheme) => {
    for (const segment of scheme.segments)
      if (segment.id === 'd2') segment.fittings = [{ kind: 'silencer', at: 2 }];
  };
  /** A joist over the level leg, so far above its outside, across the middle of it. */
  const joist = (gap: number, y = 2): Omit<Block, 'name'> => ({
    id: 'joist 4',
    kind: 'joist',
    min: [-1, y, 2.6 + half + 0.0006 + gap],
    max: [1, y + 0.04, 3],
  });

  test('stands in a joist that its duct alone would clear', () => {
    expect(found(job([joist(0.02)], silencer))).toEqual([body('d2', 'joist 4')]);
    expect(found(job([joist(0.02)]))).toEqual([]);
  });

  test('clears one that is as far off as the part is thicker', () => {
    expect(found(job([joist(0.35 * half + 0.01)], silencer))).toEqual([]);
  });

  test('clears one beyond its ends', () => {
    expect(found(job([joist(0.02, 2.3)], silencer))).toEqual([]);
  });

  test('is not told of a block that its duct runs into already', () => {
    expect(found(job([joist(-0.05)], silencer)).map(({ rule }) => rule)).toEqual(['fit-clash']);
  });
});

describe('bodies are those that the sheets draw', () => {
  const made = job([]);
  const route = inferRoute(made, 's1');
  const node = route.nodes.get('n3');
  const leg = outlineOf(route, made, 'section-y').byId.get('d2');
  if (!node || !leg) throw new Error('the run has a cap at the end of its leg');

  test.each(caps.map(({ id }) => id))('the cap %s lies within its drawing', (id) => {
    const cap = capBody(id);
    if (!cap) return expect(['open', 'open-screened', 'weather-cap']).toContain(id);
    const { bounds } = capDrawable(node, id, leg, views['section-y']);
    expect(4 + cap.to * half).toBeLessThanOrEqual(bounds.maxU + 1e-9);
    expect(2.6 - cap.reach * half).toBeGreaterThanOrEqual(bounds.minV - 1e-9);
    expect(2.6 + cap.reach * half).toBeLessThanOrEqual(bounds.maxV + 1e-9);
  });

  test('a part in line is drawn as long and as high as it counts', () => {
    const with_ = job([], (_, scheme) => {
      for (const segment of scheme.segments)
        if (segment.id === 'd2') segment.fittings = [{ kind: 'silencer', at: 2 }];
    });
    const drawing = outlineOf(inferRoute(with_, 's1'), with_, 'section-y').drawables.find(
      ({ kind }) => kind === 'in-line',
    );
    const [along, across] = inlineBody('silencer');
    const points = (drawing?.walls ?? []).flatMap(pointsOf);
    expect(Math.max(...points.map(({ u }) => u))).toBeCloseTo(2 + along * half, 9);
    expect(Math.max(...points.map(({ v }) => v))).toBeCloseTo(2.6 + across * half, 9);
  });
});
