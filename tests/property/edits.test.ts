import fc from 'fast-check';
import type { Draft } from 'immer';
import { describe, expect, test } from 'vitest';
import { readJob } from '../../src/files/read.ts';
import { writeJob } from '../../src/files/write.ts';
import type { Job, Scheme, Vec3 } from '../../src/graph/document.ts';
import * as edits from '../../src/graph/edits/index.ts';
import { commit, startHistory, undo } from '../../src/graph/history.ts';
import { angleBetween, distance, lerp, subtract } from '../../src/graph/vector.ts';
import { drawn, edited, nodeOf, segmentOf, unsound } from '../support/drawn.ts';

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

/** Whichever node, segment, block and the like the numbers choose. */
interface Chosen {
  readonly a: number;
  readonly b: number;
  readonly at: Vec3;
  readonly size: number;
}

type Edit = (job: Draft<Job>, scheme: Draft<Scheme>, chosen: Chosen) => unknown;

const picked = (job: Draft<Job>, scheme: Draft<Scheme>, { a, b }: Chosen) => ({
  nodes: scheme.nodes.filter((_, i) => (a >> (i % 8)) & 1).map(({ id }) => id),
  segments: scheme.segments.filter((_, i) => (b >> (i % 8)) & 1).map(({ id }) => id),
  blocks: job.blocks.filter((_, i) => (a + i) & 1).map(({ id }) => id),
});
const one = <T>(rows: readonly T[] | undefined, index: number): T[] =>
  rows && rows.length > 0 ? [rows[index % rows.length] as T] : [];
const opposite = (at: Vec3, size: number): Vec3 => [at[0] + size, at[1] - size, at[2] + size / 2];

const kinds: Readonly<Record<string, Edit>> = {
  addBlock: (job, _s, { at, size, a }) =>
    edits.addBlock(job, {
      name: 'block',
      kind: a % 2 ? 'chase' : 'joist',
      min: at,
      max: opposite(at, size),
    }),
  moveBlock: (job, _s, { a, at }) => one(job.blocks, a).map(({ id }) => edits.moveBlock(job, id, at)),
  resizeBlock: (job, _s, { a, at, size }) =>
    one(job.blocks, a).map(({ id }) => edits.resizeBlock(job, id, at, opposite(at, size))),
  removeBlock: (job, _s, { a }) => one(job.blocks, a).map(({ id }) => edits.removeBlock(job, id)),
  addExit: (job, _s, { at, size }) =>
    edits.addExit(job, { name: 'wall', kind: 'wall', min: at, max: opposite(at, size) }),
  moveExit: (job, _s, { a, at }) => one(job.exits, a).map(({ id }) => edits.moveExit(job, id, at)),
  removeExit: (job, _s, { a }) => one(job.exits, a).map(({ id }) => edits.removeExit(job, id)),
  addUnderlay: (job, _s, { at, size }) =>
    edits.addUnderlay(job, {
      sheet: 'section-x',
      image: 'data:image/png;base64,AA==',
      at: [at[0], at[1]],
      scale: size,
      opacity: 0.5,
    }),
  changeUnderlay: (job, _s, { a, size }) =>
    one(job.underlays, a).map(({ id }) => edits.changeUnderlay(job, id, { scale: size - 1, opacity: size })),
  removeUnderlay: (job, _s, { a }) => one(job.underlays, a).map(({ id }) => edits.removeUnderlay(job, id)),
  addNote: (job, _s, { a, at }) =>
    edits.addNote(job, { sheet: 'floor', at: [at[0], at[1]], text: a % 3 ? 'a note' : '' }),
  removeNote: (job, _s, { a }) => one(job.sheetNotes, a).map(({ id }) => edits.removeNote(job, id)),
  addDimension: (job, s, { a, b, at, size }) =>
    one(s.nodes, a).map(({ id }) =>
      edits.addDimension(job, s.id, {
        sheet: 'floor',
        along: 'u',
        from: { node: id },
        to: b % 2 ? { at } : { node: one(s.nodes, b)[0]?.id ?? id },
        offset: size,
      }),
    ),
  removeDimension: (job, s, { a }) =>
    one(s.dimensions, a).map(({ id }) => edits.removeDimension(job, s.id, id)),
  duplicate: (job, s, chosen) =>
    s.nodes.length < 40 && edits.duplicateSelection(job, s.id, picked(job, s, chosen), chosen.at),
  mirror: (job, s, chosen) =>
    edits.mirrorSelection(job, s.id, picked(job, s, chosen), (chosen.a % 3) as 0 | 1 | 2, chosen.at[0]),
  rotate: (job, s, chosen) => edits.rotateSelection(job, s.id, picked(job, s, chosen), [0, 1], chosen.a * 15),
  align: (job, s, chosen) =>
    edits.alignSelection(job, s.id, picked(job, s, chosen), (chosen.a % 3) as 0 | 1 | 2, 'middle'),
  moveBy: (job, s, chosen) => edits.moveSelectionBy(job, s.id, picked(job, s, chosen), chosen.at),
  split: (job, s, { a }) => one(s.nodes, a).map(({ id }) => edits.splitRun(job, s.id, id)),
  join: (job, s, { a, b }) =>
    one(s.nodes, a).map(({ id }) => edits.joinNodes(job, s.id, id, one(s.nodes, b)[0]?.id ?? id)),
  branch: (job, s, { a, b, at }) =>
    one(s.segments, a).map(({ id }) =>
      edits.branchFrom(job, s.id, id, (b % 11) / 10, b % 2 ? at : undefined),
    ),
  riser: (job, s, { a, at }) => one(s.nodes, a).map(({ id }) => edits.setRiser(job, s.id, id, at[2])),
  radius: (job, s, { a, size }) => one(s.nodes, a).map(({ id }) => edits.setRadius(job, s.id, id, size)),
  wholeRun: (job, s, { a, b }) =>
    one(s.segments, a).map(({ id }) =>
      edits.setWholeRun(job, s.id, id, b % 2 ? 'fitting' : 'junction', {
        duct: { shape: 'rectangular', width: 0.25, height: 0.08 },
        material: 'stainless',
        insulation: 0.025,
      }),
    ),
  reverse: (job, s, { a }) => one(s.segments, a).map(({ id }) => edits.reverseRun(job, s.id, id)),
  remove: (job, s, chosen) =>
    chosen.b % 4 === 0 &&
    edits.deleteSelection(job, s.id, { nodes: one(s.nodes, chosen.a).map(({ id }) => id), segments: [] }),
};

test('whatever edits are made, the job is sound, its file is read without repair, and undoing all gives the first job', () => {
  const quarter = fc.integer({ min: -20, max: 20 }).map((n) => n / 4);
  const chosen = fc.record({
    a: fc.nat({ max: 255 }),
    b: fc.nat({ max: 255 }),
    at: fc.tuple(quarter, quarter, quarter) as fc.Arbitrary<Vec3>,
    size: fc.double({ min: 0.01, max: 3, noNaN: true }),
  });
  const step = fc.tuple(fc.constantFrom(...Object.keys(kinds)), chosen);
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
      let history = startHistory(drawn());
      for (const [kind, choice] of steps) {
        history = commit(history, kind, (job) => {
          const [scheme] = job.schemes;
          if (scheme) kinds[kind]?.(job, scheme, choice);
        });
        expect(unsound(history.job)).toEqual([]);
      }
      const read = readJob(writeJob(history.job), { repair: false });
      expect(read).toMatchObject({ ok: true, repairs: [] });
      if (read.ok) expect(read.job).toEqual(history.job);
      while (history.past.length > 0) history = undo(history);
      expect(history.job).toEqual(drawn());
    }),
    { numRuns: 200 },
  );
});
