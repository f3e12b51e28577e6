import type { Job, Node, Segment } from '../graph/document.ts';
import type { Route, RouteNode, RouteSegment } from '../graph/route.ts';
import { byNearness, legOf, legPieces, nodePieces, type Outline, type SheetLeg } from './outline.ts';
import type { Drawable } from './stroke.ts';
import type { View } from './view.ts';

/** What was made of one leg or node, and what it was made from. */
interface Piece {
  readonly from: readonly unknown[];
  readonly leg?: SheetLeg;
  readonly drawables: readonly Drawable[];
}

interface Known {
  readonly route: Route;
  readonly legs: ReadonlyMap<string, Piece>;
  readonly nodes: ReadonlyMap<string, Piece>;
  readonly sorted: readonly Drawable[];
}

/**
 * Outlines of one route after another in one view. What is inferred of a leg or node is made anew with
 * every edit but mostly says the same; where it does, and its neighbours say the same too, its shapes
 * are taken over, so that a node that is moved rebuilds its own legs and those that meet them.
 */
export function createOutliner(view: View): (route: Route, job: Job) => Outline {
  let known: Known | null = null;
  return (given, job) => {
    const route = settled(given, known?.route ?? null);
    const scheme = job.schemes.find((s) => s.id === route.schemeId);
    const drawnSegments = new Map<string, Segment>(scheme?.segments.map((s) => [s.id, s]));
    const drawnNodes = new Map<string, Node>(scheme?.nodes.map((n) => [n.id, n]));
    const gone = new Set<Drawable>();
    const fresh: Drawable[] = [];
    const take = (before: Piece | undefined, from: readonly unknown[], make: () => Piece): Piece => {
      if (before && alike(before.from, from)) return before;
      for (const item of before?.drawables ?? []) gone.add(item);
      const made = make();
      fresh.push(...made.drawables);
      return made;
    };

    const legs = new Map<string, Piece>();
    const sheetLegs = new Map<string, SheetLeg>();
    for (const segment of route.segments.values()) {
      if (segment.length <= 0) continue;
      const parts = drawnSegments.get(segment.id)?.fittings ?? none;
      const ends = [route.nodes.get(segment.from), route.nodes.get(segment.to)];
      const meeting = ends.flatMap((end) =>
        (end?.segments ?? none).map((id) => route.segments.get(id)?.direction),
      );
      const from = [segment, parts, ...ends, ...meeting];
      const piece = take(known?.legs.get(segment.id), from, () => {
        const leg = legOf(segment, route, view);
        return { from, leg, drawables: legPieces(leg, parts, route, view) };
      });
      legs.set(segment.id, piece);
      if (piece.leg) sheetLegs.set(segment.id, piece.leg);
    }

    const nodes = new Map<string, Piece>();
    for (const node of route.nodes.values()) {
      const drawn = drawnNodes.get(node.id);
      const hood = node.kind === 'hood' ? job.hoods.find((h) => h.id === drawn?.hood) : undefined;
      const met = node.segments.map((id) => sheetLegs.get(id));
      const from = [node, drawn?.cap, hood, job.kitchen.mountingHeight, ...met];
      const piece = take(known?.nodes.get(node.id), from, () => ({
        from,
        drawables: nodePieces(node, drawn?.cap, hood, job.kitchen.mountingHeight, sheetLegs, view),
      }));
      nodes.set(node.id, piece);
    }

    for (const [id, piece] of known?.legs ?? none)
      if (!legs.has(id)) for (const item of piece.drawables) gone.add(item);
    for (const [id, piece] of known?.nodes ?? none)
      if (!nodes.has(id)) for (const item of piece.drawables) gone.add(item);
    const kept = gone.size === 0 ? (known?.sorted ?? none) : known?.sorted.filter((item) => !gone.has(item));
    const sorted = [...(kept ?? none), ...fresh].sort(byNearness);
    known = { route, legs, nodes, sorted };
    return { legs: [...sheetLegs.values()], byId: sheetLegs, drawables: sorted };
  };
}

const none: readonly never[] = [];

/** A route in which every node and leg that says what it said before is the very same object. */
function settled(route: Route, before: Route | null): Route {
  if (!before) return route;
  const nodes = new Map<string, RouteNode>();
  for (const [id, node] of route.nodes) nodes.set(id, settle(node, before.nodes.get(id)));
  const segments = new Map<string, RouteSegment>();
  for (const [id, segment] of route.segments) {
    const known = before.segments.get(id);
    const settledSegment = settle(segment, known);
    const turned = settledSegment === known || !known || !same(segment.direction, known.direction);
    segments.set(id, turned ? settledSegment : { ...segment, direction: known.direction });
  }
  return { ...route, nodes, segments };
}

function settle<T extends object>(now: T, before: T | undefined): T {
  return before && same(now, before) ? before : now;
}

/** True for plain data that says the same. */
function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a))
    return Array.isArray(b) && a.length === b.length && a.every((each, i) => same(each, b[i]));
  let count = 0;
  for (const key in a) {
    count += 1;
    if (!same(a[key as keyof typeof a], b[key as keyof typeof b])) return false;
  }
  for (const _ in b) count -= 1;
  return count === 0;
}

function alike(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}
