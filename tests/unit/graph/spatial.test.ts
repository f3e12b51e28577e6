import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scheme, Vec3 } from '../../../src/graph/document.ts';
import { project, type SheetId } from '../../../src/graph/sheet.ts';
import { boxSelect, buildSpatialIndex, hitTest, spatialIndex } from '../../../src/graph/spatial.ts';
import { drawn, schemeOf } from '../../support/drawn.ts';

const scheme = schemeOf(drawn());
const floor = buildSpatialIndex(scheme, 'floor');
const sectionX = buildSpatialIndex(scheme, 'section-x');
const hits = (index: typeof floor, u: number, v: number, tolerance = 0.05) =>
  hitTest(index, { u, v }, tolerance).map((hit) => hit.id);

describe('what is under the pointer', () => {
  test('is the node before the legs that meet there', () => {
    expect(hits(floor, 1.02, 2.01)[0]).toBe('n3');
    expect(hits(floor, 1.02, 2.01).slice(1).toSorted()).toEqual(['d2', 'd3']);
  });

  test('is the leg away from its nodes, with its exact distance and its place along', () => {
    const [hit] = hitTest(floor, { u: 2.5, v: 2.03 }, 0.05);
    expect(hit).toMatchObject({ kind: 'segment', id: 'd3', t: 0.5, depth: 2.35 });
    expect(hit?.distance).toBeCloseTo(0.03, 12);
  });

  test('is a leg anywhere in the width of its duct', () => {
    expect(hits(floor, 2.5, 2.1, 0.01)).toEqual(['d3']);
    expect(hits(floor, 2.5, 2.11, 0.01)).toEqual([]);
  });

  test('is a flat leg within its width on the floor, and within its height on a section', () => {
    const flat: Scheme['defaults']['duct'] = { shape: 'rectangular', width: 0.254, height: 0.08 };
    const run = { ...scheme, defaults: { ...scheme.defaults, duct: flat } };
    expect(hits(buildSpatialIndex(run, 'floor'), 2.5, 2.12, 0.01)).toEqual(['d3']);
    expect(hits(buildSpatialIndex(run, 'section-x'), 2.5, 2.38, 0.01)).toEqual(['d3']);
    expect(hits(buildSpatialIndex(run, 'section-x'), 2.5, 2.4, 0.01)).toEqual([]);
  });

  test('is nothing where nothing is', () => {
    expect(hits(floor, 3, 1)).toEqual([]);
  });

  test('is no leg whose box alone is hit', () => {
    const slanted: Scheme = {
      ...scheme,
      nodes: [
        { id: 'n1', at: [0, 0, 0], role: 'turn' },
        { id: 'n2', at: [4, 4, 0], role: 'turn' },
      ],
      segments: [{ id: 'd1', from: 'n1', to: 'n2' }],
    };
    expect(hits(buildSpatialIndex(slanted, 'floor'), 3, 1)).toEqual([]);
  });

  test('on a riser seen from above is its top, then its foot, then the riser', () => {
    expect(hits(floor, 1, 0)).toEqual(['n2', 'n1', 'd2', 'd1']);
  });

  test('on a section is what stands nearest to the viewer', () => {
    expect(hits(sectionX, 1, 2.35).slice(0, 2)).toEqual(['n2', 'n3']);
  });

  test('on the other section is what stands farthest east', () => {
    expect(hits(buildSpatialIndex(scheme, 'section-y'), 2, 2.35).slice(0, 2)).toEqual(['n4', 'n3']);
  });

  test('is never a segment whose end is missing', () => {
    const torn = { ...scheme, segments: [...scheme.segments, { id: 'd9', from: 'n1', to: 'n9' }] };
    expect(buildSpatialIndex(torn, 'floor').segments.has('d9')).toBe(false);
  });

  test('is found as by measuring everything', () => {
    const place = fc.tuple(
      ...([0, 0, 0].map(() => fc.integer({ min: 0, max: 20 })) as [never, never, never]),
    );
    const graph = fc.array(place as unknown as fc.Arbitrary<Vec3>, { minLength: 2, maxLength: 40 });
    const sheet = fc.constantFrom<SheetId>('floor', 'section-x', 'section-y');
    const point = fc.record({
      u: fc.double({ min: 0, max: 20, noNaN: true }),
      v: fc.double({ min: 0, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(graph, sheet, point, (places, on, at) => {
        const nodes = places.map((p, i): Scheme['nodes'][0] => ({ id: `n${i}`, at: p, role: 'turn' }));
        const segments = nodes.slice(1).map((node, i) => ({ id: `d${i}`, from: `n${i}`, to: node.id }));
        const index = buildSpatialIndex({ ...scheme, nodes, segments }, on);
        const found = hitTest(index, at, 1).filter((hit) => hit.kind === 'node');
        const near = nodes.filter((n) => {
          const p = project(n.at, on);
          return Math.hypot(p.u - at.u, p.v - at.v) <= 1;
        });
        expect(found.map((hit) => hit.id).toSorted()).toEqual(near.map((n) => n.id).toSorted());
        for (const [i, hit] of found.entries())
          expect(hit.distance + 1e-6).toBeGreaterThanOrEqual(found[i - 1]?.distance ?? 0);
      }),
    );
  });
});

test('the index of a scheme is built once', () => {
  expect(spatialIndex(scheme, 'floor')).toBe(spatialIndex(scheme, 'floor'));
  expect(spatialIndex({ ...scheme }, 'floor')).not.toBe(spatialIndex(scheme, 'floor'));
});

describe('a box', () => {
  test('holds the nodes in it and the legs wholly in it', () => {
    const held = boxSelect(floor, { u: 5, v: 3 }, { u: 0.5, v: 1 });
    expect(held.nodes.toSorted()).toEqual(['n3', 'n4']);
    expect(held.segments).toEqual(['d3']);
  });

  test('that need only touch holds the legs that pass through too', () => {
    const held = boxSelect(floor, { u: 0.5, v: 1 }, { u: 5, v: 3 }, { touching: true });
    expect(held.segments.toSorted()).toEqual(['d2', 'd3']);
  });

  test('that a leg passes through from side to side is touched', () => {
    const held = boxSelect(floor, { u: 2, v: 1.9 }, { u: 3, v: 2.1 }, { touching: true });
    expect(held).toEqual({ nodes: [], segments: ['d3'] });
  });

  test('beside a leg, within its width, does not touch its centre line', () => {
    expect(boxSelect(floor, { u: 2, v: 2.02 }, { u: 3, v: 2.5 }, { touching: true }).segments).toEqual([]);
  });
});
