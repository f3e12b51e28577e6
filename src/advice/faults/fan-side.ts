import type { FanSpeed, Hood } from '../../graph/document.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { airOf } from '../../hydraulics/air.ts';
import { fanTotalPressure, freeDelivery } from '../../hydraulics/fan.ts';
import { area } from '../../hydraulics/section.ts';

/** Points that a curve is read at when it is made anew. */
const POINTS = 32;
/** Only the density of this air is used. */
const VISCOSITY = 1.8e-5;

/** A hood whose fan turns at `ratio` of its speed, by the fan laws. Its rated sound is no longer its own, and left out. */
export function slowerHood(hood: Hood, ratio: number): Hood {
  return withCurves(hood, (flow, pressure) => [flow * ratio, pressure * ratio ** 2]);
}

/** A hood with something of coefficient `c` (on the collar's velocity) in the way before its fan. */
export function chokedHood(hood: Hood, c: number): Hood {
  const collar = area(hood.collar);
  return withCurves(hood, (flow, pressure, density) => [
    flow,
    pressure - (c * density * (flow / collar) ** 2) / 2,
  ]);
}

function withCurves(
  hood: Hood,
  moved: (flow: number, pressure: number, density: number) => [number, number],
): Hood {
  return {
    ...hood,
    speeds: hood.speeds.map((speed, i): FanSpeed => {
      const known = speedCurve(hood, i);
      if (!known.known) return speed;
      const { curve } = known;
      const air = airOf(curve.density, VISCOSITY);
      const last = 1.1 * freeDelivery(curve);
      return {
        name: speed.name,
        pressureBasis: 'total',
        density: curve.density,
        curve: Array.from({ length: POINTS }, (_, k) => {
          const flow = (last * k) / (POINTS - 1);
          return moved(flow, fanTotalPressure(curve, flow, air), curve.density);
        }),
        ratedFlow: known.ratedFlow,
      };
    }),
  };
}
