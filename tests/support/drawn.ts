import type { Draft } from 'immer';
import { produce } from 'immer';
import {
  type Job,
  job as jobSchema,
  type Scheme,
  type Segment,
  type Vec3,
} from '../../src/graph/document.ts';

/** A small invented job: hood n1, up to n2, north to n3, east to a cap n4; a damper on d2 at 0.5 m. */
export const places: Readonly<Record<'n1' | 'n2' | 'n3' | 'n4', Vec3>> = {
  n1: [1, 0, 1.75],
  n2: [1, 0, 2.35],
  n3: [1, 2, 2.35],
  n4: [4, 2, 2.35],
};

export function drawn(): Job {
  return jobSchema.parse({
    format: 'gentlebend',
    version: 1,
    title: 'Invented kitchen',
    units: 'imperial',
    air: {},
    kitchen: {},
    hoods: [
      {
        id: 'h1',
        name: 'Invented hood',
        collar: { shape: 'round', diameter: 0.2032 },
        speeds: [
          {
            name: 'high',
            curve: [
              [0, 260],
              [0.28, 0],
            ],
          },
        ],
      },
    ],
    schemes: [
      {
        id: 's1',
        name: 'Out the east wall',
        defaults: { duct: { shape: 'round', diameter: 0.2032 }, material: 'galvanized' },
        nodes: [
          { id: 'n1', at: places.n1, role: 'hood', hood: 'h1' },
          { id: 'n2', at: places.n2, role: 'turn' },
          { id: 'n3', at: places.n3, role: 'turn' },
          { id: 'n4', at: places.n4, role: 'cap', cap: 'wall-flap' },
        ],
        segments: [
          { id: 'd1', from: 'n1', to: 'n2' },
          { id: 'd2', from: 'n2', to: 'n3', fittings: [{ kind: 'backdraught-damper', at: 0.5 }] },
          { id: 'd3', from: 'n3', to: 'n4' },
        ],
      },
    ],
  });
}

/** The scheme after an edit of the small job, and what the edit gave back. */
export function edited<T>(edit: (job: Draft<Job>) => T, before: Job = drawn()) {
  let given: T | undefined;
  const job = produce(before, (draft) => {
    given = edit(draft);
  });
  return { job, scheme: schemeOf(job), given: given as T };
}

export function schemeOf(job: Job): Scheme {
  const scheme = job.schemes[0];
  if (!scheme) throw new Error('the job has no scheme');
  return scheme;
}

export function nodeOf(scheme: Scheme, id: string) {
  return scheme.nodes.find((node) => node.id === id);
}

export function segmentOf(scheme: Scheme, id: string): Segment | undefined {
  return scheme.segments.find((segment) => segment.id === id);
}

/** What makes a drawn graph unsound: nothing, for a sound one. */
export function unsound(job: Job): string[] {
  const faults = jobSchema.safeParse(job).success ? [] : ['the schema refuses it'];
  for (const scheme of job.schemes) {
    const nodes = new Map(scheme.nodes.map((node) => [node.id, node]));
    if (nodes.size !== scheme.nodes.length) faults.push('two nodes share an id');
    if (new Set(scheme.segments.map((s) => s.id)).size !== scheme.segments.length)
      faults.push('two segments share an id');
    const pairs = new Set(scheme.segments.map((s) => [s.from, s.to].sort().join(' ')));
    if (pairs.size !== scheme.segments.length) faults.push('two segments join the same nodes');
    for (const segment of scheme.segments) {
      const from = nodes.get(segment.from);
      const to = nodes.get(segment.to);
      if (!from || !to) faults.push(`${segment.id} has an end that is not there`);
      else {
        if (from === to) faults.push(`${segment.id} goes from a node to itself`);
        const length = Math.hypot(...([0, 1, 2] as const).map((i) => to.at[i] - from.at[i]));
        for (const fitting of segment.fittings ?? [])
          if (fitting.at > length + 1e-9) faults.push(`a fitting of ${segment.id} is off its end`);
      }
    }
  }
  return faults;
}
