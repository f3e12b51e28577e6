import { fanProblem, freeDelivery } from '../hydraulics/fan.ts';
import { curveOf } from '../hydraulics/fan-data.ts';
import { area } from '../hydraulics/section.ts';
import type { FanCurve } from '../hydraulics/types.ts';
import { words } from '../words/index.ts';
import type { FanSpeed, Hood } from './document.ts';
import { memoise } from './memo.ts';

const says = words.route.speeds;

/** A speed's curve with what had to be assumed for it, or the sentence that says why there is none. */
export type SpeedCurve = { readonly ratedFlow: number } & (
  | { readonly known: true; readonly curve: FanCurve; readonly assumptions: readonly string[] }
  | { readonly known: false; readonly reason: string }
);

/**
 * The curve of one speed of a hood, from whatever its data sheet gave. `ratedFlow` is what the label
 * says, else the flow at which the curve's own pressure comes to zero; 0 where neither is known.
 */
export const speedCurve = memoise((hood: Hood, index: number): SpeedCurve => {
  const speed = hood.speeds[index];
  if (!speed) return unknown(says.noSpeed(index + 1), 0);
  const label = labelFlow(speed);
  const made = curveOf(hood.speeds, index, area(hood.collar));
  if (!made) {
    const reason = says.noCurve(speed.name);
    return unknown(reason, label ?? 0);
  }
  const problem = fanProblem(made.curve);
  if (problem) return unknown(says.badCurve(speed.name, problem), label ?? 0);
  return { known: true, ...made, ratedFlow: label ?? freeDelivery(made.curve) };
});

/** What the label of a speed says that it moves, m3/s; undefined where it says nothing. */
export function labelFlow({ ratedFlow, single, freeAir }: FanSpeed): number | undefined {
  return ratedFlow ?? single?.flow ?? freeAir?.flow;
}

function unknown(reason: string, ratedFlow: number): SpeedCurve {
  return { known: false, reason, ratedFlow };
}
