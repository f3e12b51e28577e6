import RBush from 'rbush';
import type { Vec3 } from './document.ts';
import type { Route } from './route.ts';

/** A point of the picture, m: `u` to the right, `v` up, `depth` away from the viewer. */
export interface Pictured {
  readonly u: number;
  readonly v: number;
  readonly depth: number;
}

/** How a picture is looked at, degrees. */
export interface Viewpoint {
  /** About the vertical: at 0 the viewer looks north, at 90 west. */
  readonly turn: number;
  /** How far the viewer looks down: 0 level, 90 from straight above. */
  readonly tilt: number;
}

/**
 * East, north and up equally short: the isometric of a drawing board, seen from the south-east. The
 * tilt is atan(1/√2). Source: plane geometry.
 */
export const isometric: Viewpoint = { turn: 45, tilt: (Math.atan(Math.SQRT1_2) * 180) / Math.PI };

/**
 * A point in space as a parallel projection shows it, m. Level at turn 0 it is the x-z section, level at
 * 90 the y-z section, from above at turn 0 the floor. Lengths across the view are true; in the isometric
 * those along the axes are all √(2/3) of what they are.
 */
export function project(at: Vec3, { turn, tilt }: Viewpoint): Pictured {
  const [ct, st] = cosineAndSine(turn);
  const [cv, sv] = cosineAndSine(tilt);
  const away = at[1] * ct - at[0] * st;
  return { u: at[0] * ct + at[1] * st, v: at[2] * cv + away * sv, depth: away * cv - at[2] * sv };
}

function cosineAndSine(degrees: number): readonly [number, number] {
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

interface Line {
  readonly id: string;
  readonly a: Pictured;
  readonly b: Pictured;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Legs in the order to draw them, the farthest first. Legs whose centre lines cross in the picture stand
 * in the order of their depth at the crossing; the others in that of their nearer ends, so that the
 * picture does not flicker as it turns. Legs that lie round each other in a ring are taken as they come.
 */
export function depthOrder(route: Route, view: Viewpoint): readonly string[] {
  const lines = route.order
    .flatMap((id): Line[] => {
      const leg = route.segments.get(id);
      const from = leg && route.nodes.get(leg.from);
      const to = leg && route.nodes.get(leg.to);
      return from && to ? [lineOf(id, project(from.at, view), project(to.at, view))] : [];
    })
    .sort((one, other) => nearEnd(other) - nearEnd(one));
  const behind = crossingsBehind(lines);
  const order: string[] = [];
  const placed = new Set<string>();
  for (const { id } of lines) {
    const waiting = [id];
    while (waiting.length > 0) {
      const next = waiting.at(-1) as string;
      const first = placed.has(next)
        ? undefined
        : behind.get(next)?.find((one) => !placed.has(one) && !waiting.includes(one));
      if (first !== undefined) {
        waiting.push(first);
        continue;
      }
      waiting.pop();
      if (!placed.has(next)) order.push(next);
      placed.add(next);
    }
  }
  return order;
}

function lineOf(id: string, a: Pictured, b: Pictured): Line {
  return {
    id,
    a,
    b,
    minX: Math.min(a.u, b.u),
    minY: Math.min(a.v, b.v),
    maxX: Math.max(a.u, b.u),
    maxY: Math.max(a.v, b.v),
  };
}

function nearEnd({ a, b }: Line): number {
  return Math.min(a.depth, b.depth);
}

/** For each leg those that pass behind it where the two cross in the picture. */
function crossingsBehind(lines: readonly Line[]): ReadonlyMap<string, string[]> {
  const behind = new Map<string, string[]>();
  const tree = new RBush<Line>().load([...lines]);
  for (const line of lines) {
    for (const other of tree.search(line)) {
      if (other.id <= line.id) continue;
      const gap = depthGap(line, other);
      if (gap === null || Math.abs(gap) < 1e-9) continue;
      const [front, back] = gap > 0 ? [line, other] : [other, line];
      behind.set(front.id, [...(behind.get(front.id) ?? []), back.id]);
    }
  }
  return behind;
}

/** How much farther off the second is than the first where they cross, m; `null` where they do not. */
function depthGap(one: Line, other: Line): number | null {
  const [du, dv] = [one.b.u - one.a.u, one.b.v - one.a.v];
  const [eu, ev] = [other.b.u - other.a.u, other.b.v - other.a.v];
  const across = du * ev - dv * eu;
  if (Math.abs(across) < 1e-12) return null;
  const [wu, wv] = [other.a.u - one.a.u, other.a.v - one.a.v];
  const s = (wu * ev - wv * eu) / across;
  const t = (wu * dv - wv * du) / across;
  if (s < 0 || s > 1 || t < 0 || t > 1) return null;
  return (
    other.a.depth + t * (other.b.depth - other.a.depth) - (one.a.depth + s * (one.b.depth - one.a.depth))
  );
}
