import type { Route } from '../../graph/route.ts';
import type { ProfilePoint, Solved } from '../../graph/solution.ts';
import { nodeName, segmentName } from '../places.ts';
import { capitalized } from '../wording.ts';

/** One piece of the pressure profile: the friction along a leg, or the step at a fitting. */
export interface ProfileStep {
  readonly from: ProfilePoint;
  readonly to: ProfilePoint;
  /** Id of a leg, or of the node that the step stands at. */
  readonly place: string;
  /** Length of run that it takes, m; 0 for a step. */
  readonly along: number;
  /** Total pressure lost, Pa; below zero where a fan in the run helps. */
  readonly loss: number;
}

/** The pieces of a profile in the order of the air. Changes of velocity alone, which cost nothing, are left out. */
export function profileSteps({ profile, path }: Solved, route: Route): ProfileStep[] {
  return profile.flatMap((to, i) => {
    const from = profile[i - 1];
    if (!from || (from.total === to.total && from.distance === to.distance)) return [];
    const along = to.distance - from.distance;
    const leg = along > 0 ? path.find((id) => route.segments.get(id)?.to === to.at) : undefined;
    return [{ from, to, place: leg ?? to.at, along, loss: from.total - to.total }];
  });
}

/** "Turn 2", "Hood to turn 1". */
export function placeName(route: Route, id: string): string {
  return capitalized(route.segments.has(id) ? segmentName(route, id) : nodeName(route, id));
}
