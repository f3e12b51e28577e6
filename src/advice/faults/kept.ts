import type { SpeedResult } from '../../graph/solution.ts';
import type { Measurement } from './types.ts';

/** A measurement with the speed that it was taken at, by name: hoods gain and lose speeds. */
export interface KeptMeasurement extends Measurement {
  readonly taken: {
    readonly hood: string;
    readonly name: string;
    /** Of that hood when it was taken. */
    readonly speeds: number;
  };
}

type Speeds = readonly Pick<SpeedResult, 'hood' | 'name'>[];

/** Measurements with what their speeds are called now. Those of a speed that is not there fall away. */
export function kept(measured: readonly Measurement[], speeds: Speeds): readonly KeptMeasurement[] {
  return measured.flatMap((one) => {
    const speed = speeds[one.speed];
    if (!speed) return [];
    const count = speeds.filter(({ hood }) => hood === speed.hood).length;
    return [{ ...one, taken: { hood: speed.hood, name: speed.name, speeds: count } }];
  });
}

/**
 * What still holds of kept measurements with the speeds that there are now: each goes with its speed wherever that
 * stands, one that was renamed keeps its own, and those of a speed that was removed fall away.
 */
export function stillMeasured(all: readonly KeptMeasurement[], speeds: Speeds): readonly Measurement[] {
  return all.flatMap(({ taken, ...one }) => {
    const named = speeds.findIndex(({ hood, name }) => hood === taken.hood && name === taken.name);
    if (named >= 0) return [{ ...one, speed: named }];
    const own = speeds.filter(({ hood }) => hood === taken.hood).length;
    const renamed = speeds[one.speed]?.hood === taken.hood && own === taken.speeds;
    return renamed ? [one] : [];
  });
}
