import { type Outline, outlineOf } from '../../../src/drawing/outline.ts';
import type { BendChoice, Job, Segment, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import type { Route } from '../../../src/graph/route.ts';
import type { SheetId } from '../../../src/graph/sheet.ts';
import { emptyJob } from '../../../src/graph/templates.ts';

export interface Drawn {
  readonly job: Job;
  readonly route: Route;
  on(sheet: SheetId): Outline;
}

interface Run {
  readonly bend?: BendChoice;
  readonly cap?: string;
  /** Fields of single segments, by index. */
  readonly segments?: Readonly<Record<number, Partial<Segment>>>;
}

/** One run of 0.2 m round duct from a hood through points to a cap: nodes `n0`…, segments `d0`…. */
export function run(points: readonly Vec3[], { bend, cap = 'wall-flap', segments = {} }: Run = {}): Drawn {
  const job = emptyJob('metric');
  const scheme = job.schemes[0];
  if (!scheme) throw new Error('an empty job has a scheme');
  const last = points.length - 1;
  scheme.nodes = points.map((at, i) => {
    const id = `n${i}`;
    if (i === 0) return { id, at, role: 'hood', hood: 'hood-1' };
    if (i === last) return { id, at, role: 'cap', cap };
    return { id, at, role: 'turn', ...(bend && { bend }) };
  });
  scheme.segments = points.slice(1).map((_, i) => ({
    id: `d${i}`,
    from: `n${i}`,
    to: `n${i + 1}`,
    ...segments[i],
  }));
  const route = inferRoute(job, scheme.id);
  return { job, route, on: (sheet) => outlineOf(route, job, sheet) };
}

/** Up 0.8 m from a hood, 3 m north, out of a wall. */
export const upAndOut: readonly Vec3[] = [
  [1, 0, 1.7],
  [1, 0, 2.5],
  [1, 3, 2.5],
];

/** Level: 2 m east, then 2 m north. */
export const levelTurn: readonly Vec3[] = [
  [0, 0, 2],
  [2, 0, 2],
  [2, 2, 2],
];
