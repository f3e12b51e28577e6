import { partDrop } from '../hydraulics/element.ts';
import { frictionFactor } from '../hydraulics/friction.ts';
import type { WayLoss } from '../hydraulics/junction-solve.ts';
import { area } from '../hydraulics/section.ts';
import type { Air } from '../hydraulics/types.ts';
import { words } from '../words/index.ts';
import type { LegAir } from './heat.ts';
import type { Plan, PlannedFitting, PlannedLeg } from './plan.ts';
import type { FittingResult, ProfilePoint, SegmentResult } from './solution.ts';

/** A leg with what the solve found for it. */
export interface LegFlow {
  readonly leg: PlannedLeg;
  /** m3/s, positive along the leg. */
  readonly flow: number;
  /** Its ways through junctions. */
  readonly ways: readonly WayLoss[];
}

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
 * @param heat temperatures along the leg; as in the kitchen where not given
 */
export function legResult(
  leg: PlannedLeg,
  q: number,
  air: Air,
  fanPressure: number,
  heat: LegAir = asInside(air),
): LegResult {
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
      inletTemperature: heat.inletTemperature,
      outletTemperature: heat.outletTemperature,
      wallTemperature: heat.wallTemperature,
      condensation: heat.condensation,
      provenance: leg.provenance,
    },
    fittings: leg.fittings.map((fitting) => fittingResult(leg, fitting, q, air, lossPerMetre, fanPressure)),
  };
}

function asInside({ temperature }: Air): LegAir {
  return {
    inletTemperature: temperature,
    outletTemperature: temperature,
    wallTemperature: temperature,
    condensation: { risk: false, insulation: 0 },
  };
}

function shareOf(loss: number, whole: number): number {
  return whole > 0 ? loss / whole : 0;
}

/** Air velocity that a fitting's coefficient refers to, m/s. */
export function velocityAt({ loss }: Pick<PlannedFitting, 'loss'>, q: number): number {
  return Math.abs(q) / area(loss.section);
}

/** Coefficient that a fitting shows at a flow, on {@link velocityAt}; at rest that of full turbulence. */
export function coefficientAt({ loss }: Pick<PlannedFitting, 'loss'>, q: number, air: Air): number {
  const velocity = velocityAt({ loss }, q);
  const pressure = (air.density * velocity * velocity) / 2;
  if (pressure === 0) return loss.c;
  let total = 0;
  for (const part of loss.parts) total += partDrop(part, q, air);
  return total / pressure;
}

/** The leg that carries the whole flow of a junction, which a way's coefficient refers to. */
export function carrierOf({ common }: WayLoss, plan: Plan, otherwise: PlannedLeg): PlannedLeg {
  return plan.legs.find(({ edge }) => edge.id === common) ?? otherwise;
}

/** Whether a leg meets the junction of a way where it starts. */
export function isAtStart({ junction }: WayLoss, leg: PlannedLeg): boolean {
  return leg.from === junction;
}

function fittingResult(
  leg: PlannedLeg,
  fitting: PlannedFitting,
  q: number,
  air: Air,
  lossPerMetre: number,
  fanPressure: number,
): FittingResult {
  const { id, at, kind, loss } = fitting;
  const drops = loss.parts.map((part) => partDrop(part, q, air));
  let total = 0;
  for (const drop of drops) total += drop;
  const velocity = velocityAt(fitting, q);
  const pressure = (air.density * velocity * velocity) / 2;
  const coefficient = (drop: number) => (pressure > 0 ? drop / pressure : 0);
  return {
    id,
    at,
    segment: leg.id,
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

/** A leg's result with what it is charged with where it joins others. */
export function withJunctions(
  result: LegResult,
  ways: readonly WayLoss[],
  plan: Plan,
  fanPressure: number,
): LegResult {
  return ways.reduce((so, way) => withWay(so, way, plan, fanPressure), result);
}

export const wayId = ({ junction }: WayLoss, leg: PlannedLeg): string => `${junction}/junction/${leg.id}`;

function withWay(
  { leg, segment, fittings }: LegResult,
  through: WayLoss,
  plan: Plan,
  fanPressure: number,
): LegResult {
  const { junction, way, converging, flowRatio, areaRatio, angle, c, velocity, loss, provenance } = through;
  const carrier = carrierOf(through, plan, leg);
  const atStart = isAtStart(through, leg);
  const label = words.route.junction.label(
    words.route.junction[angle > 75 ? 'tee' : 'wye'](Math.round(angle)),
    words.route.junction[way === 'branch' ? 'branch' : 'straight'],
    words.route.junction[converging ? 'joining' : 'dividing'],
  );
  const id = wayId(through, leg);
  const found: FittingResult = {
    id,
    at: junction,
    segment: leg.id,
    kind: 'junction',
    label,
    c,
    section: carrier.section,
    velocity,
    flow: segment.flow,
    loss,
    equivalentLength: segment.lossPerMetre > 0 ? loss / segment.lossPerMetre : 0,
    share: shareOf(loss, fanPressure),
    provenance,
    junction: { way, converging, flowRatio, areaRatio, angle, common: carrier.id },
  };
  const planned: PlannedFitting = {
    id,
    at: junction,
    kind: 'junction',
    loss: { parts: [], c, section: carrier.section, includesArcFriction: false, label, provenance },
    distance: atStart ? 0 : leg.length,
  };
  const add = <Item>(items: readonly Item[], item: Item) => (atStart ? [item, ...items] : [...items, item]);
  return { leg: { ...leg, fittings: add(leg.fittings, planned) }, segment, fittings: add(fittings, found) };
}

/**
 * Total and static pressure along a run of legs, from the pressure at its start down to the outdoors.
 * Friction falls evenly over a leg; a fitting's loss is a step down at its place, a fan in the run a step up.
 *
 * @param fans pressure that a fan in the run gives, Pa, by its node
 */
export function profileOf(
  legs: readonly LegResult[],
  start: number,
  fans: ReadonlyMap<string, number>,
): ProfilePoint[] {
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
    const given = fans.get(leg.to);
    if (given !== undefined) {
      total += given;
      put(leg.length, leg.to);
    }
    distance += leg.length;
  }
  return points;
}
