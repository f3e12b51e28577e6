import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { memoise } from '../../graph/memo.ts';
import type { RouteSegment } from '../../graph/route.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { findCap } from '../../hydraulics/catalogue.ts';
import type { CauseId, Site } from './types.ts';

/** The largest size that is tried, a fraction. */
export const largest: Readonly<Record<CauseId, number>> = {
  'dirty-filter': 0.95,
  'stuck-flap': 0.95,
  'blocked-cap': 0.95,
  'crushed-flexible': 0.95,
  'hidden-section': 0.6,
  leak: 0.5,
  'slow-fan': 0.6,
  'tight-house': 0.98,
};

/** Legs that a smaller section is looked for in. */
const HIDDEN_LEGS = 3;

/** A flexible material of the catalogue. */
const gives = (material: string) => material === 'flexible' || material === 'semi-rigid';

/** Every place on the run of the hood at `node` where something could be wrong, going by what is drawn there; the same objects for the same solution. */
export const sitesOf = memoise(placesOfFaults);

function placesOfFaults(
  job: Job,
  solution: SchemeSolution,
  node: string,
  path: readonly string[],
): readonly Site[] {
  const scheme = schemeOf(job, solution.schemeId);
  const legs = path.flatMap((id) => solution.route.segments.get(id) ?? []);
  const sites: Site[] = [
    { cause: 'dirty-filter', node },
    { cause: 'slow-fan', node },
    { cause: 'tight-house', node },
  ];
  for (const leg of legs) {
    const drawn = scheme.segments.find((segment) => segment.id === leg.id);
    for (const part of drawn?.fittings ?? [])
      if (part.kind === 'backdraught-damper')
        sites.push({ cause: 'stuck-flap', segment: leg.id, along: part.at });
    if (gives(leg.material))
      sites.push({ cause: 'crushed-flexible', segment: leg.id, along: leg.length / 2 });
  }
  const last = legs.at(-1);
  const end = last && scheme.nodes.find((each) => each.id === last.to);
  if (last && end?.role === 'cap') {
    sites.push({ cause: 'blocked-cap', node: end.id, segment: last.id });
    if (findCap(end.cap ?? '')?.flap)
      sites.push({
        cause: 'stuck-flap',
        node: end.id,
        segment: last.id,
        along: last.reversed ? 0 : last.length,
      });
  }
  const long = [...legs].filter((leg) => leg.length > 0.3).sort(byLength);
  for (const { id } of long.slice(0, HIDDEN_LEGS)) sites.push({ cause: 'hidden-section', segment: id });
  const first = legs[0];
  const longest = long.find((leg) => leg !== first);
  for (const leg of [first, longest]) if (leg) sites.push({ cause: 'leak', segment: leg.id });
  return sites;
}

function byLength(a: RouteSegment, b: RouteSegment): number {
  return b.length - a.length;
}
