import { partDrop } from '../hydraulics/element.ts';
import { frictionFactor } from '../hydraulics/friction.ts';
import { area } from '../hydraulics/section.ts';
import type { Air } from '../hydraulics/types.ts';
import type { PlannedFitting, PlannedLeg } from './plan.ts';
import type { FittingResult, ProfilePoint, SegmentResult } from './solution.ts';

/** A leg with its air: what is lost in it, part by part. */
export interface LegResult {
  readonly leg: PlannedLeg;
  readonly segment: SegmentResult;
  readonly fittings: readonly FittingResult[];
}

/**
 * What a leg's friction and fittings cost at flow q (m3/s, positive along the leg).
 *
 * @param fanPressure total pressure that shares are taken of, Pa
 */
export function legResult(leg: PlannedLeg, q: number, air: Air, fanPressure: number): LegResult {
  const velocity = Math.abs(q) / leg.area;
  const velocityPressure = (air.density * velocity * velocity) / 2;
  const reynolds = (air.density * velocity * leg.hydraulicDiameter) / air.viscosity;
  const factor = velocity > 0 ? frictionFactor(reynolds, leg.duct.roughness / leg.hydraulicDiameter) : 0;
  const frictionLoss = partDrop(leg.duct, q, air);
  const lossPerMetre = (leg.duct.multiplier * factor * velocityPressure) / leg.hydraulicDiameter;
  return {
    leg,
    segment: {
      id: leg.id,
      flow: q,
      velocity,
      velocityPressure,
      frictionLength: leg.duct.length,
      frictionLoss,
      lossPerMetre,
      reynolds,
      frictionFactor: factor,
      share: shareOf(frictionLoss, fanPressure),
      provenance: leg.provenance,
    },
    fittings: leg.fittings.map((fitting) => fittingResult(fitting, q, air, lossPerMetre, fanPressure)),
  };
}

function shareOf(loss: number, whole: number): number {
  return whole > 0 ? loss / whole : 0;
}

function fittingResult(
  { id, at, kind, loss }: PlannedFitting,
  q: number,
  air: Air,
  lossPerMetre: number,
  fanPressure: number,
): FittingResult {
  const drops = loss.parts.map((part) => partDrop(part, q, air));
  const total = drops.reduce((sum, drop) => sum + drop, 0);
  const velocity = Math.abs(q) / area(loss.section);
  const pressure = (air.density * velocity * velocity) / 2;
  const coefficient = (drop: number) => (pressure > 0 ? drop / pressure : 0);
  return {
    id,
    at,
    kind,
    label: loss.label,
    c: pressure > 0 ? total / pressure : loss.c,
    section: loss.section,
    velocity,
    flow: q,
    loss: total,
    equivalentLength: lossPerMetre > 0 ? Math.abs(total) / lossPerMetre : 0,
    share: shareOf(total, fanPressure),
    provenance: loss.provenance,
    ...(loss.buildUp && {
      buildUp: loss.buildUp.map((label, i) => ({
        label,
        c: coefficient(drops[i] ?? 0),
        loss: drops[i] ?? 0,
      })),
    }),
  };
}

/**
 * Total and static pressure along a run of legs, from the pressure at its start down to the outdoors.
 * Friction falls evenly over a leg; a fitting's loss is a step at its place.
 */
export function profileOf(legs: readonly LegResult[], start: number): ProfilePoint[] {
  const points: ProfilePoint[] = [];
  let distance = 0;
  let total = start;
  for (const { leg, segment, fittings } of legs) {
    const put = (along: number, at: string, velocityPressure = segment.velocityPressure) => {
      const point = { distance: distance + along, total, static: total - velocityPressure, at };
      const last = points.at(-1);
      const same =
        last && last.distance === point.distance && last.total === total && last.static === point.static;
      if (!same) points.push(point);
    };
    const perMetre = leg.length > 0 ? segment.frictionLoss / leg.length : 0;
    let along = 0;
    put(0, leg.from);
    leg.fittings.forEach((fitting, i) => {
      const result = fittings[i] as FittingResult;
      if (fitting.distance > along) {
        total -= perMetre * (fitting.distance - along);
        along = fitting.distance;
        put(along, leg.id);
      }
      total -= result.loss;
      const outdoors = fitting.kind === 'cap' || fitting.kind === 'exit';
      put(along, fitting.at, outdoors ? 0 : segment.velocityPressure);
    });
    if (leg.length > along) {
      total -= perMetre * (leg.length - along);
      put(leg.length, leg.to);
    }
    distance += leg.length;
  }
  return points;
}
