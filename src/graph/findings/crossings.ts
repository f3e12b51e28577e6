import { words } from '../../words/index.ts';
import type { Vec3 } from '../document.ts';
import { sentence } from '../places.ts';
import type { RouteSegment } from '../route.ts';
import { add, distance, dot, scale, subtract } from '../vector.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

const says = words.findings.crossings;

/** Centre lines that pass within this of each other cross, m. */
const reach = 0.01;

interface Line {
  readonly leg: RouteSegment;
  readonly start: Vec3;
  readonly end: Vec3;
  readonly low: number;
  readonly high: number;
}

/** Two legs whose centre lines meet in space without a node that joins them. Sorted along x and swept. */
export const crossings: Rule = ({ route, places }) => {
  const lines = [...route.segments.values()].map((leg) => lineOf(leg, route)).sort((a, b) => a.low - b.low);
  const findings = [];
  for (let i = 0; i < lines.length; i++) {
    const one = lines[i] as Line;
    for (let j = i + 1; j < lines.length; j++) {
      const other = lines[j] as Line;
      if (other.low > one.high + reach) break;
      if (!apart(one, other) && !share(one.leg, other.leg) && gap(one, other) < reach) {
        const segments = [one.leg.id, other.leg.id].sort();
        findings.push(
          finding(
            'crossing',
            'error',
            { segments },
            says.through(sentence(places.leg(segments[0] as string)), places.leg(segments[1] as string)),
            { remedy: says.part },
          ),
        );
      }
    }
  }
  return findings;
};

function lineOf(leg: RouteSegment, route: Drawing['route']): Line {
  const start = route.nodes.get(leg.from)?.at as Vec3;
  const end = route.nodes.get(leg.to)?.at as Vec3;
  return { leg, start, end, low: Math.min(start[0], end[0]), high: Math.max(start[0], end[0]) };
}

function share(a: RouteSegment, b: RouteSegment): boolean {
  return a.from === b.from || a.from === b.to || a.to === b.from || a.to === b.to;
}

function apart(a: Line, b: Line): boolean {
  for (const axis of [1, 2] as const) {
    if (Math.max(a.start[axis], a.end[axis]) + reach < Math.min(b.start[axis], b.end[axis])) return true;
    if (Math.max(b.start[axis], b.end[axis]) + reach < Math.min(a.start[axis], a.end[axis])) return true;
  }
  return false;
}

/** Least distance between two straight pieces in space, m. */
function gap(a: Line, b: Line): number {
  const u = subtract(a.end, a.start);
  const v = subtract(b.end, b.start);
  const w = subtract(a.start, b.start);
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const square = uu * vv - uv * uv;
  let s = square > 1e-12 * uu * vv ? clamp((uv * vw - vv * uw) / square) : 0;
  let t = vv > 0 ? (uv * s + vw) / vv : 0;
  if (t < 0 || t > 1) {
    t = clamp(t);
    s = uu > 0 ? clamp((uv * t - uw) / uu) : 0;
  }
  return distance(add(a.start, scale(u, s)), add(b.start, scale(v, t)));
}

function clamp(t: number): number {
  return Math.min(1, Math.max(0, t));
}
