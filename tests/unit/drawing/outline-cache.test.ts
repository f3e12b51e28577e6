import { describe, expect, it } from 'vitest';
import { outlineIn } from '../../../src/drawing/outline.ts';
import { createOutliner } from '../../../src/drawing/outline-cache.ts';
import { views } from '../../../src/drawing/view.ts';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { run } from './drawing.ts';

const stairs: Vec3[] = Array.from({ length: 21 }, (_, i) => [Math.ceil(i / 2), Math.floor(i / 2), 2]);
const drawn = run(stairs, { bend: { kind: 'five-piece', radiusRatio: 1.5 } });

function moved(job: Job, id: string, at: Vec3): Job {
  const next = structuredClone(job);
  const node = next.schemes[0]?.nodes.find((n) => n.id === id);
  if (node) node.at = at;
  return next;
}

describe('an outline after an edit', () => {
  const scheme = drawn.route.schemeId;

  it('is what it would be had it been made from nothing', () => {
    const outlined = createOutliner(views.floor);
    outlined(drawn.route, drawn.job);
    for (const at of [
      [5.3, 4.8, 2],
      [5, 5, 2.4],
      [5, 5, 2],
    ] as Vec3[]) {
      const job = moved(drawn.job, 'n10', at);
      const route = inferRoute(job, scheme);
      const { legs, drawables } = outlined(route, job);
      const anew = outlineIn(route, job, views.floor);
      expect(legs).toEqual(anew.legs);
      const byName = (a: { id: string; kind: string }, b: { id: string; kind: string }) =>
        `${a.kind} ${a.id}` < `${b.kind} ${b.id}` ? -1 : 1;
      expect([...drawables].sort(byName)).toEqual([...anew.drawables].sort(byName));
    }
  });

  it('has new shapes only for the legs of a moved node and those that meet them', () => {
    const outlined = createOutliner(views.floor);
    const before = new Set(outlined(drawn.route, drawn.job).drawables);
    const job = moved(drawn.job, 'n10', [5.3, 4.8, 2]);
    const after = outlined(inferRoute(job, scheme), { ...job, hoods: drawn.job.hoods }).drawables;
    const fresh = after.filter((item) => !before.has(item)).map(({ id }) => id);
    expect(new Set(fresh)).toEqual(new Set(['d8', 'd9', 'd10', 'd11', 'n9', 'n10', 'n11', 'n8', 'n12']));
  });

  it('is the very same shapes where nothing that is drawn has changed', () => {
    const outlined = createOutliner(views.floor);
    const before = outlined(drawn.route, drawn.job).drawables;
    const job = structuredClone(drawn.job);
    const after = outlined(inferRoute(job, scheme), { ...job, hoods: drawn.job.hoods }).drawables;
    expect(after.filter((item, i) => item !== before[i])).toEqual([]);
  });
});
