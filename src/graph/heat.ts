import { alongLeg, dewPoint, insulationAgainstDew, type WallLeg } from '../hydraulics/heat.ts';
import { perimeter } from '../hydraulics/section.ts';
import type { Job, Vec3 } from './document.ts';
import { keepLatest, memoise } from './memo.ts';
import type { Run } from './network.ts';
import type { PlannedLeg } from './plan.ts';
import type { Route, RouteNode, RouteSegment } from './route.ts';
import type { Scene } from './setting.ts';
import type { SegmentResult } from './solution.ts';
import { add, scale, subtract } from './vector.ts';

export type LegAir = Pick<
  SegmentResult,
  'inletTemperature' | 'outletTemperature' | 'wallTemperature' | 'condensation'
>;

/** A stretch of a leg in one surrounding, as shares of its length. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly cold: boolean;
}

/**
 * Air temperature and the inside of the duct's wall along the run from one hood, leg by leg. The air starts
 * at the temperature of the kitchen (cooking makes it warmer, which is left out: the estimate is on the cold
 * side), streams that meet are mixed by their flows, and a stretch of duct stands in air of the kitchen's
 * temperature or of the outdoors', see {@link stretchesOf}.
 */
export function temperaturesOf(
  { job, air, route }: Scene,
  hood: string,
  { legs, before }: Run,
  flows: readonly number[],
): readonly LegAir[] {
  const inside = job.air.temperature;
  const dew = dewPoint(inside, job.air.humidity);
  const stretches = allStretches(route, hood, job.kitchen, job.house, job.exits);
  const asInside = unchanged(inside, dew);
  const found: LegAir[] = [];
  legs.forEach((leg, i) => {
    const flow = flows[i] as number;
    const inlet = mixed(before[i] ?? [], flows, found, inside);
    const cold = (stretches.get(leg.id) ?? []).filter((stretch) => stretch.cold);
    if (cold.length === 0) {
      found.push(inlet === inside ? asInside : unchanged(inlet, dew));
      return;
    }
    const massFlow = Math.max(Math.abs(flow), 1e-9) * air.density;
    let temperature = inlet;
    let wall = inlet;
    let insulation: number | null = 0;
    for (const stretch of cold) {
      const piece = wallLeg(leg, route.segments.get(leg.id)?.insulation ?? 0, stretch, job);
      const heat = alongLeg(piece, temperature, massFlow);
      if (heat.wall < dew && insulation !== null) {
        const needed = insulationAgainstDew(piece, temperature, massFlow, dew);
        insulation = needed === null ? null : Math.max(insulation, needed);
      }
      temperature = heat.outlet;
      wall = Math.min(wall, heat.wall);
    }
    const risk = wall < dew;
    found.push({
      inletTemperature: inlet,
      outletTemperature: temperature,
      wallTemperature: wall,
      condensation: { risk, insulation: risk ? insulation : 0 },
    });
  });
  return found;
}

/** Air that passes a leg without a change of its temperature. */
function unchanged(temperature: number, dew: number): LegAir {
  return {
    inletTemperature: temperature,
    outletTemperature: temperature,
    wallTemperature: temperature,
    condensation: { risk: temperature < dew, insulation: 0 },
  };
}

/** Temperature of the streams that run into a leg, by their flows; that of the kitchen where none does. */
function mixed(
  before: readonly number[],
  flows: readonly number[],
  found: readonly LegAir[],
  inside: number,
): number {
  let [flow, heat] = [0, 0];
  for (const i of before) {
    const q = flows[i] as number;
    const arriving = found[i];
    if (!(q > 0) || !arriving) continue;
    flow += q;
    heat += q * arriving.outletTemperature;
  }
  return flow > 0 ? heat / flow : inside;
}

/** Length of a leg that stands in the cold, m, seen from one hood's node. */
export function coldLength({ route, job }: Pick<Scene, 'route' | 'job'>, hood: string, leg: string): number {
  const { kitchen, house, exits } = job;
  const length = route.segments.get(leg)?.length ?? 0;
  const stretches = allStretches(route, hood, kitchen, house, exits).get(leg) ?? [];
  return stretches.reduce((sum, { from, to, cold }) => sum + (cold ? length * (to - from) : 0), 0);
}

/** The stretches of every leg, seen from one hood: the same at every speed. */
const allStretches = memoise(
  (
    route: Route,
    hood: string,
    kitchen: Job['kitchen'],
    house: Job['house'],
    exits: Job['exits'],
  ): ReadonlyMap<string, readonly Stretch[]> => {
    const at = (node: string) => (route.nodes.get(node) as RouteNode).at;
    const from = at(hood);
    return new Map(
      [...route.segments.values()].map((leg) => [
        leg.id,
        legStretches(leg, at(leg.from), at(leg.to), from, kitchen, house, exits),
      ]),
    );
  },
);

const legStretches = keepLatest(
  (
    _leg: RouteSegment,
    from: Vec3,
    to: Vec3,
    hood: Vec3,
    kitchen: Job['kitchen'],
    house: Job['house'],
    exits: Job['exits'],
  ) => stretchesOf(from, to, hood, { kitchen, house, exits }),
);

function wallLeg(leg: PlannedLeg, insulation: number, stretch: Stretch, job: Scene['job']): WallLeg {
  return {
    length: leg.length * (stretch.to - stretch.from),
    perimeter: perimeter(leg.section),
    hydraulicDiameter: leg.hydraulicDiameter,
    insulation,
    ambient: job.air.outdoorTemperature,
  };
}

/**
 * A leg cut where it leaves the heated space. Duct is cold above the top ceiling (the kitchen's ceiling
 * height for every storey; attics are taken as outdoors) and beyond an outside wall or roof: where the
 * straight line from the hood passes through one of the exit faces.
 */
export function stretchesOf(
  from: Vec3,
  to: Vec3,
  hood: Vec3,
  { kitchen, house, exits }: Pick<Scene['job'], 'kitchen' | 'house' | 'exits'>,
): Stretch[] {
  const top = kitchen.ceilingHeight * (house?.storeys ?? 1);
  const cuts = [0, 1, ...crossing(from[2], to[2], top)];
  for (const face of exits)
    for (const axis of [0, 1, 2] as const)
      cuts.push(
        ...crossing(from[axis], to[axis], face.min[axis]),
        ...crossing(from[axis], to[axis], face.max[axis]),
      );
  cuts.sort((a, b) => a - b);
  const run = subtract(to, from);
  const stretches: Stretch[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [start, end] = [cuts[i - 1] as number, cuts[i] as number];
    if (end - start < 1e-9) continue;
    const middle = add(from, scale(run, (start + end) / 2));
    const cold = middle[2] > top || exits.some((face) => passes(hood, middle, face));
    const last = stretches.at(-1);
    if (last && last.cold === cold) stretches[stretches.length - 1] = { ...last, to: end };
    else stretches.push({ from: start, to: end, cold });
  }
  return stretches;
}

/** Where a coordinate that runs from a to b reaches a level, as a share of the way. */
function crossing(a: number, b: number, level: number): number[] {
  const at = (level - a) / (b - a);
  return at > 0 && at < 1 ? [at] : [];
}

/** True where the straight line between two points goes into a box and out of it again. */
function passes(from: Vec3, to: Vec3, { min, max }: Job['exits'][number]): boolean {
  let enters = 0;
  let leaves = Number.POSITIVE_INFINITY;
  for (const axis of [0, 1, 2] as const) {
    const step = to[axis] - from[axis];
    if (step === 0) {
      if (from[axis] < min[axis] || from[axis] > max[axis]) return false;
      continue;
    }
    const [a, b] = [(min[axis] - from[axis]) / step, (max[axis] - from[axis]) / step];
    enters = Math.max(enters, Math.min(a, b));
    leaves = Math.min(leaves, Math.max(a, b));
  }
  return enters < leaves && leaves < 1;
}
