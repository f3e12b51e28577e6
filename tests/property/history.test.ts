import fc from 'fast-check';
import type { Draft } from 'immer';
import { expect, test } from 'vitest';
import type { Job, Scheme, Vec3 } from '../../src/graph/document.ts';
import * as edits from '../../src/graph/edits/index.ts';
import { commit, redo, startHistory, undo } from '../../src/graph/history.ts';
import { drawn, unsound } from '../support/drawn.ts';

type Edit = (job: Draft<Job>) => void;

const coordinate = fc.integer({ min: -40, max: 40 }).map((quarter) => quarter / 4);
const place = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const pick = fc.nat({ max: 1000 });
const section = fc.constantFrom(
  { shape: 'round', diameter: 0.1524 } as const,
  { shape: 'round', diameter: 0.2032 } as const,
  { shape: 'rectangular', width: 0.254, height: 0.08255 } as const,
);

/** An edit of whichever node or segment the numbers choose; none where there is nothing to choose. */
function edit(
  run: (job: Draft<Job>, scheme: Draft<Scheme>, node: string, segment: string, other: string) => void,
) {
  return (a: number, b: number): Edit =>
    (job) => {
      const scheme = job.schemes[a % job.schemes.length];
      const node = scheme?.nodes[a % (scheme.nodes.length || 1)]?.id;
      const other = scheme?.nodes[b % (scheme.nodes.length || 1)]?.id;
      const segment = scheme?.segments[a % (scheme.segments.length || 1)]?.id;
      if (scheme && node && other && segment) run(job, scheme, node, segment, other);
    };
}

const anEdit: fc.Arbitrary<Edit> = fc
  .record({
    a: pick,
    b: pick,
    at: place,
    duct: section,
    length: fc.double({ min: 0.1, max: 9, noNaN: true }),
  })
  .chain(({ a, b, at, duct, length }) => {
    const all = [
      edit((job, s, node) => edits.extendRun(job, s.id, node, at)),
      edit((job, s, node, _segment, other) => edits.closeToNode(job, s.id, node, other)),
      edit((job, s, _node, segment) => {
        const leg = s.segments.find((each) => each.id === segment);
        const from = s.nodes.find((each) => each.id === leg?.from)?.at ?? at;
        const to = s.nodes.find((each) => each.id === leg?.to)?.at ?? at;
        const t = (a % 9) / 8;
        const cut = [0, 1, 2].map((i) => (from[i] ?? 0) + ((to[i] ?? 0) - (from[i] ?? 0)) * t) as Vec3;
        edits.insertNode(job, s.id, segment, cut);
      }),
      edit((job, s, node, segment) =>
        edits.deleteSelection(job, s.id, { nodes: a % 3 ? [node] : [], segments: b % 3 ? [] : [segment] }),
      ),
      edit((job, s, node, _segment, other) => edits.mergeNodes(job, s.id, node, other)),
      edit((job, s, node, _segment, other) => edits.moveNodes(job, s.id, [...new Set([node, other])], at)),
      edit((job, s, node) => edits.setNodePosition(job, s.id, node, at)),
      edit((job, s, _node, segment) => edits.setLength(job, s.id, segment, length)),
      edit((job, s, _node, segment) => edits.setDuct(job, s.id, a % 4 ? [segment] : 'all', duct)),
      edit((job, s, _node, segment) =>
        edits.setMaterial(job, s.id, [segment], a % 2 ? 'flexible' : 'galvanized'),
      ),
      edit((job, s, node) =>
        edits.setBend(job, s.id, node, b % 2 ? { kind: 'smooth', radiusRatio: 1.5 } : null),
      ),
      edit((job, s, node) => edits.setCap(job, s.id, node, b % 3 ? 'roof-cap' : null)),
      edit((job, s, _node, segment) => edits.addInline(job, s.id, segment, { kind: 'screen', at: length })),
      edit((job, s, _node, segment) => edits.removeInline(job, s.id, segment, 0)),
      edit((job, s, _node, segment) => edits.reverseSegment(job, s.id, segment)),
      edit((job, s) => edits.duplicateScheme(job, s.id)),
      edit((job, s) => edits.removeScheme(job, s.id)),
      edit((job) => edits.replaceFields(job, { units: a % 2 ? 'metric' : 'imperial' })),
    ];
    return fc.constantFrom(...all).map((make) => make(a, b));
  });

const session = fc.array(anEdit, { maxLength: 25 });

test('taking every edit back gives the first document, and making all again the last', () => {
  fc.assert(
    fc.property(session, (made) => {
      const first = drawn();
      const text = JSON.stringify(first);
      const last = made.reduce(
        (history, recipe, i) => commit(history, `edit ${i}`, recipe),
        startHistory(first),
      );
      let back = last;
      for (const _ of last.past) back = undo(back);
      expect(JSON.stringify(back.job)).toBe(text);
      expect(back.past).toEqual([]);
      let again = back;
      for (const _ of last.past) again = redo(again);
      expect(again).toEqual(last);
    }),
  );
});

test('every step back is the document that stood there', () => {
  fc.assert(
    fc.property(session, (made) => {
      let history = startHistory(drawn());
      const stood = [JSON.stringify(history.job)];
      for (const [i, recipe] of made.entries()) {
        const next = commit(history, `edit ${i}`, recipe);
        if (next !== history) stood.push(JSON.stringify(next.job));
        history = next;
      }
      while (history.past.length > 0) {
        stood.pop();
        history = undo(history);
        expect(JSON.stringify(history.job)).toBe(stood.at(-1));
      }
    }),
  );
});

test('no edit makes the document unsound', () => {
  fc.assert(
    fc.property(session, (made) => {
      let history = startHistory(drawn());
      for (const recipe of made) {
        history = commit(history, 'edit', recipe);
        expect(unsound(history.job)).toEqual([]);
      }
    }),
  );
});
