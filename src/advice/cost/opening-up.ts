import type { Job, Vec3 } from '../../graph/document.ts';
import { inferRoute } from '../../graph/infer.ts';
import type { Route, RouteNode, RouteSegment } from '../../graph/route.ts';
import { sameSection } from '../../graph/sections.ts';
import { solidBlocks } from '../../graph/surroundings.ts';
import { distance, lerp, nearestOnSegment } from '../../graph/vector.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';

/** Length of duct that has to be reached to change one fitting, m (assumption). */
const fittingReach = 0.3;
/** What is so near to an exit face is reached from outside, m (assumption). */
const outdoorReach = 0.3;
/** A duct is walked along in steps of this, m. */
const step = 0.02;

/**
 * How much of the route as drawn has to be opened up for a change, metres of centre line: where the changed route
 * has no duct of the same section, material, stretch and insulation in the same place, and 0.3 m of each leg beside
 * a fitting that changes (assumption). A metre counts unless the duct is at hand there: inside a chase, which has
 * its panel, and clear of every other block; or within 0.3 m of an exit face, from outside. What is added beside the
 * present route, and work on the house, is not in it.
 */
export function openingUp(before: Job, after: Job, schemeId: string): number {
  const was = inferRoute(before, schemeId);
  const is = inferRoute(after, schemeId);
  let metres = 0;
  for (const leg of was.segments.values()) {
    const from = was.nodes.get(leg.from);
    const to = was.nodes.get(leg.to);
    if (!from || !to || leg.length < 1e-6) continue;
    const alike = alikeNear(leg, from.at, to.at, is);
    const start = fittingChanged(from, is) ? fittingReach : 0;
    const end = leg.length - (fittingChanged(to, is) ? fittingReach : 0);
    const count = Math.max(1, Math.ceil(leg.length / step));
    const radius = hydraulicDiameter(leg.section) / 2;
    for (let i = 0; i < count; i += 1) {
      const share = (i + 0.5) / count;
      const along = share * leg.length;
      const at = lerp(from.at, to.at, share);
      const stays = along > start && along < end && alike.some(({ a, b }) => on(at, a, b));
      if (!stays && !atHand(at, radius, before)) metres += leg.length / count;
    }
  }
  return metres;
}

interface Line {
  readonly a: Vec3;
  readonly b: Vec3;
}

/** Duct of the same make that may lie where a leg lies: the leg itself where it has stayed, else all near it. */
function alikeNear(leg: RouteSegment, from: Vec3, to: Vec3, is: Route): readonly Line[] {
  const lineOf = (other: RouteSegment): Line[] => {
    const ends = [is.nodes.get(other.from)?.at, is.nodes.get(other.to)?.at];
    return ends[0] && ends[1] && sameMake(leg, other) ? [{ a: ends[0], b: ends[1] }] : [];
  };
  const same = is.segments.get(leg.id);
  const stayed = same ? lineOf(same) : [];
  const exactly = ({ a, b }: Line) => distance(a, from) < 1e-9 && distance(b, to) < 1e-9;
  if (stayed.some(exactly)) return stayed;
  return [...is.segments.values()].flatMap(lineOf).filter(({ a, b }) => boxesMeet(a, b, from, to));
}

function boxesMeet(a: Vec3, b: Vec3, c: Vec3, d: Vec3): boolean {
  return ([0, 1, 2] as const).every(
    (i) =>
      Math.max(a[i], b[i]) >= Math.min(c[i], d[i]) - 1e-3 &&
      Math.min(a[i], b[i]) <= Math.max(c[i], d[i]) + 1e-3,
  );
}

function sameMake(a: RouteSegment, b: RouteSegment): boolean {
  return (
    sameSection(a.section, b.section) &&
    a.material === b.material &&
    a.insulation === b.insulation &&
    a.stretch === b.stretch
  );
}

function on(at: Vec3, a: Vec3, b: Vec3): boolean {
  return distance(at, nearestOnSegment(at, a, b).at) < 1e-3;
}

function fittingChanged(node: RouteNode, is: Route): boolean {
  const now = is.nodes.get(node.id);
  if (!node.bend && !node.transition) return false;
  return (
    now?.bend?.kind !== node.bend?.kind ||
    now?.bend?.radiusRatio !== node.bend?.radiusRatio ||
    now?.transition?.kind !== node.transition?.kind ||
    now?.transition?.angle !== node.transition?.angle
  );
}

function atHand(at: Vec3, radius: number, { blocks: all, exits }: Job): boolean {
  const blocks = solidBlocks(all);
  if (exits.some(({ min, max }) => inside(at, min, max, outdoorReach))) return true;
  const inChase = blocks.some(({ kind, min, max }) => kind === 'chase' && inside(at, min, max, 0));
  return inChase && !blocks.some(({ kind, min, max }) => kind !== 'chase' && inside(at, min, max, radius));
}

function inside(at: Vec3, min: Vec3, max: Vec3, margin: number): boolean {
  return ([0, 1, 2] as const).every((i) => at[i] >= min[i] - margin && at[i] <= max[i] + margin);
}
