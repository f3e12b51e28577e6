import type { Job, Vec3 } from '../../graph/document.ts';

export type ExitKind = 'wall' | 'roof';

/** What ends a run when nothing else is asked for: catalogue ids of `shared/caps.json`. */
export const usualCap: Readonly<Record<ExitKind, string>> = { wall: 'wall-flap', roof: 'roof-cap' };

/** Steeper than this, as the sine of its rise, a leg leaves through the roof. */
const ROOF_RISE = 0.7;

/** The cap for the end of a leg with this direction: a roof's where it goes up, else a wall's. */
export function capForDirection(direction: Vec3 | null): string {
  return usualCap[direction && direction[2] > ROOF_RISE ? 'roof' : 'wall'];
}

/** The exit face that a place lies on, within `tolerance` metres. */
export function exitAt(job: Job, at: Vec3, tolerance: number): Job['exits'][number] | undefined {
  const axes = [0, 1, 2] as const;
  return job.exits.find(({ min, max }) =>
    axes.every(
      (axis) =>
        at[axis] >= Math.min(min[axis], max[axis]) - tolerance &&
        at[axis] <= Math.max(min[axis], max[axis]) + tolerance,
    ),
  );
}
