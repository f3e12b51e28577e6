import { fanProblem, freeDelivery } from '../hydraulics/fan.ts';
import { area } from '../hydraulics/section.ts';
import type { FanCurve } from '../hydraulics/types.ts';
import type { FanSpeed, Hood } from './document.ts';
import { memoise } from './memo.ts';

/** A speed's curve, or the sentence that says why there is none. */
export type SpeedCurve =
  | { readonly known: true; readonly curve: FanCurve; readonly ratedFlow: number }
  | { readonly known: false; readonly reason: string; readonly ratedFlow: number };

/**
 * The curve of one speed of a hood, from whatever its data sheet gave. `ratedFlow` is what the label
 * says, else the flow at which the curve's own pressure comes to zero; 0 where neither is known.
 */
export const speedCurve = memoise((hood: Hood, index: number): SpeedCurve => {
  const speed = hood.speeds[index];
  if (!speed) return { known: false, reason: `The hood has no speed ${index + 1}.`, ratedFlow: 0 };
  const points = pointsOf(hood, speed);
  const curve: FanCurve | undefined = points && {
    points,
    basis: speed.pressureBasis,
    collarArea: area(hood.collar),
    density: speed.density,
  };
  const rated = speed.ratedFlow ?? speed.single?.flow ?? speed.freeAir?.flow ?? 0;
  if (!curve) {
    return {
      known: false,
      reason: `Speed "${speed.name}" has no curve of pressure against flow, so nothing can be computed for it.`,
      ratedFlow: rated,
    };
  }
  const problem = fanProblem(curve);
  if (problem) return { known: false, reason: `Speed "${speed.name}" has ${problem}.`, ratedFlow: rated };
  return { known: true, curve, ratedFlow: speed.ratedFlow ?? freeDelivery(curve) };
});

type Points = FanCurve['points'];

/** Points of the curve, through the fan laws where the speed is scaled from another. */
function pointsOf(hood: Hood, speed: FanSpeed, from: readonly FanSpeed[] = []): Points | undefined {
  if (speed.curve) return speed.curve;
  const { scaledFrom } = speed;
  const source = scaledFrom && hood.speeds.find((other) => other.name === scaledFrom.speed);
  if (!source || from.includes(source)) return undefined;
  const points = pointsOf(hood, source, [...from, speed]);
  return points?.map(
    ([flow, pressure]) => [flow * scaledFrom.ratio, pressure * scaledFrom.ratio ** 2] as const,
  );
}
