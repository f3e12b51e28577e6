import { scaleLinear } from 'd3-scale';
import type { Hood, Job, UnitSystem } from '../../graph/document.ts';
import type { SchemeSolution, SpeedResult } from '../../graph/solution.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { systemCurve } from '../../graph/system-curve.ts';
import { fanTotalPressure, freeDelivery } from '../../hydraulics/fan.ts';
import { quantity } from '../../units/index.ts';

export interface FanRows {
  /** Where each speed works. */
  readonly working: readonly Pick<SpeedResult, 'name' | 'outcome'>[];
  /** The curves at round flows of the units shown, m3/s and Pa; null beyond a curve's free delivery. */
  readonly curves: readonly {
    readonly flow: number;
    readonly fan: readonly { readonly name: string; readonly pressure: number | null }[];
    readonly system: number | null;
  }[];
}

/**
 * The figures behind the chart of a hood's fan.
 *
 * @param chosen index into the solution's speeds: the one whose system curve is given
 */
export function fanRows(
  job: Job,
  solution: SchemeSolution,
  hood: Hood,
  chosen: number,
  units: UnitSystem,
): FanRows {
  const curves = hood.speeds.map((_, index) => {
    const known = speedCurve(hood, index);
    return known.known ? { curve: known.curve, end: freeDelivery(known.curve) } : null;
  });
  const perSi = quantity('flow', 1, units).value;
  const most = Math.max(0, ...curves.map((each) => each?.end ?? 0)) * perSi;
  const flows =
    most > 0
      ? scaleLinear([0, most], [0, 1])
          .ticks(8)
          .map((tick) => tick / perSi)
      : [];
  const system = systemCurve(job, solution, solution.speeds[chosen]?.hood === hood.id ? chosen : -1, flows);
  return {
    working: solution.speeds.filter((speed) => speed.hood === hood.id),
    curves: flows.map((flow, i) => ({
      flow,
      fan: hood.speeds.map(({ name }, index) => {
        const known = curves[index];
        const pressure =
          known && flow <= known.end * (1 + 1e-9) ? fanTotalPressure(known.curve, flow, solution.air) : null;
        return { name, pressure };
      }),
      system: system[i]?.[1] ?? null,
    })),
  };
}
