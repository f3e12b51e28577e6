import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/graph/document.ts';
import * as edits from '../../src/graph/edits/index.ts';
import { angleBetween, distance, lerp, subtract } from '../../src/graph/vector.ts';
import { drawn, edited, nodeOf, segmentOf } from '../support/drawn.ts';

const coordinate = fc.double({ min: -10, max: 10, noNaN: true });
const place = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const fraction = fc.double({ min: 0.01, max: 0.99, noNaN: true });

const at = (scheme: ReturnType<typeof edited>['scheme'], id: string): Vec3 => {
  const node = nodeOf(scheme, id);
  if (!node) throw new Error(`no node ${id}`);
  return node.at;
};

describe('a node put into a leg and taken out again', () => {
  test('leaves the leg and its fitting where they were', () => {
    fc.assert(
      fc.property(fraction, (t) => {
        const { scheme } = edited((job) => {
          const { node } = edits.insertNode(job, 's1', 'd2', lerp([1, 0, 2.35], [1, 2, 2.35], t));
          edits.deleteSelection(job, 's1', { nodes: [node], segments: [] });
        });
        const leg = segmentOf(scheme, 'd2');
        expect(scheme.segments.map((s) => [s.id, s.from, s.to])).toEqual(
          drawn().schemes[0]?.segments.map((s) => [s.id, s.from, s.to]),
        );
        expect(leg?.fittings).toHaveLength(1);
        expect(leg?.fittings?.[0]?.at).toBeCloseTo(0.5, 9);
      }),
    );
  });

  test('keeps every fitting at its place in space while it is in', () => {
    fc.assert(
      fc.property(fraction, fc.array(fraction, { maxLength: 5 }), (t, parts) => {
        const from: Vec3 = [1, 0, 2.35];
        const to: Vec3 = [1, 2, 2.35];
        const { scheme, given } = edited((job) => {
          for (const part of parts) edits.addInline(job, 's1', 'd2', { kind: 'screen', at: part * 2 });
          return edits.insertNode(job, 's1', 'd2', lerp(from, to, t));
        });
        const places = [given.before, given.after].flatMap((id) => {
          const leg = segmentOf(scheme, id);
          const start = at(scheme, leg?.from ?? '');
          return (leg?.fittings ?? []).map((f) => start[1] + f.at);
        });
        const expected = [0.5, ...parts.map((part) => part * 2)].toSorted((a, b) => a - b);
        expect(places).toHaveLength(expected.length);
        for (const [i, y] of expected.entries()) expect(places[i]).toBeCloseTo(y, 9);
      }),
    );
  });
});

test('a leg takes the length that it is given, in the direction that it had, and every other leg keeps its own', () => {
  const length = fc.double({ min: 0.05, max: 20, noNaN: true });
  fc.assert(
    fc.property(place, place, length, fc.constantFrom('d1', 'd2', 'd3'), (second, third, wanted, id) => {
      fc.pre(distance(second, third) > 0.01 && distance(second, [1, 0, 1.75]) > 0.01);
      fc.pre(distance(third, [4, 2, 2.35]) > 0.01);
      const before = edited((job) => {
        edits.setNodePosition(job, 's1', 'n2', second);
        edits.setNodePosition(job, 's1', 'n3', third);
      });
      const { scheme } = edited((job) => edits.setLength(job, 's1', id, wanted), before.job);
      for (const leg of scheme.segments) {
        const was = subtract(at(before.scheme, leg.to), at(before.scheme, leg.from));
        const is = subtract(at(scheme, leg.to), at(scheme, leg.from));
        expect(distance([0, 0, 0], is)).toBeCloseTo(leg.id === id ? wanted : distance([0, 0, 0], was), 9);
        expect(angleBetween(was, is)).toBeLessThan(1e-4);
      }
      expect(at(scheme, 'n1')).toEqual([1, 0, 1.75]);
    }),
  );
});

test('turning a segment twice is turning it not at all', () => {
  const { scheme } = edited((job) => {
    edits.reverseSegment(job, 's1', 'd2');
    edits.reverseSegment(job, 's1', 'd2');
  });
  expect(scheme).toEqual(drawn().schemes[0]);
});

test('moving there and back ends where it began', () => {
  fc.assert(
    fc.property(place, (delta) => {
      const back = delta.map((x) => -x) as Vec3;
      const { scheme } = edited((job) => {
        edits.moveNodes(job, 's1', ['n2', 'n3', 'n4', 'n1'], delta);
        edits.moveNodes(job, 's1', ['n1', 'n2', 'n3', 'n4'], back);
      });
      for (const node of drawn().schemes[0]?.nodes ?? [])
        expect(distance(at(scheme, node.id), node.at)).toBeLessThan(1e-12);
    }),
  );
});
