import { findBend, findCap, findMaterial } from '../hydraulics/catalogue.ts';
import type { Section } from '../hydraulics/types.ts';
import { formatAngle, formatLength, formatTrimmed, type System } from '../units/index.ts';
import { words } from '../words/index.ts';
import { directionWords } from './directions.ts';
import type { Hood, Job, Node, Scheme, Vec3 } from './document.ts';
import { inferRoute, schemeOf } from './infer.ts';
import { isVertical } from './inference/orientation.ts';
import { memoise } from './memo.ts';
import { type Places, placesOf } from './places.ts';
import type { Route, RouteNode, RouteSegment } from './route.ts';
import { sectionWords } from './sections.ts';

const says = words.route.trace;

interface Row {
  readonly id: string;
  /** Counted down the table from 1, nodes and segments each for themselves. */
  readonly number: number;
  /** Everything that the row says, for a screen reader. */
  readonly words: string;
}

export interface NodeRow extends Row {
  readonly kind: 'node';
  /** "turn 2", "the hood", "the cap". */
  readonly name: string;
  readonly at: Vec3;
  /** Segments by which the air comes and goes. */
  readonly from: readonly string[];
  readonly to: readonly string[];
}

export interface SegmentRow extends Row {
  readonly kind: 'segment';
  /** In which direction the air goes: "up", "north", "east-northeast, sloping up". */
  readonly direction: string;
  /** m, node to node. */
  readonly length: number;
  readonly section: Section;
  /** Catalogue id. */
  readonly material: string;
  /** m */
  readonly insulation: number;
  /** Node ids in the direction of the air. */
  readonly from: string;
  readonly to: string;
}

export type TraceRow = NodeRow | SegmentRow;

/**
 * A scheme as a table, in the order in which the air meets nodes and segments, one run after another from
 * its hood to its exit; nodes that no segment meets come last. A node where runs join stands where it is
 * met first. Repeated calls with the same scheme are free.
 */
export function traceRoute(job: Job, schemeId: string): readonly TraceRow[] {
  return traced(inferRoute(job, schemeId), schemeOf(job, schemeId), job.hoods, job.units);
}

const traced = memoise(
  (route: Route, scheme: Scheme, hoods: readonly Hood[], units: System): readonly TraceRow[] => {
    const places = placesOf(route);
    const drawn = new Map(scheme.nodes.map((node) => [node.id, node]));
    const rows: TraceRow[] = [];
    const met = new Set<string>();
    const meet = (id: string) => {
      const node = route.nodes.get(id);
      if (!node || met.has(id)) return;
      met.add(id);
      const name = places.brief(id);
      const what = nodeWords(node, drawn.get(id), route, hoods, units);
      rows.push({
        kind: 'node',
        id,
        number: met.size,
        name,
        words: what ? says.named(name, what) : name,
        at: node.at,
        from: node.segments.filter((leg) => route.segments.get(leg)?.to === id),
        to: node.segments.filter((leg) => route.segments.get(leg)?.from === id),
      });
    };
    let count = 0;
    for (const id of route.order) {
      const leg = route.segments.get(id);
      if (!leg) continue;
      meet(leg.from);
      count += 1;
      rows.push(segmentRow(leg, count, places, units));
      meet(leg.to);
    }
    for (const id of route.nodes.keys()) meet(id);
    return rows;
  },
);

function segmentRow(leg: RouteSegment, number: number, places: Places, units: System): SegmentRow {
  const direction = directionWords(leg.direction);
  const material = findMaterial(leg.material)?.name.toLowerCase() ?? leg.material;
  const words = [
    says.along(formatLength(leg.length, units), direction).trim(),
    sectionWords(leg.section, units),
    material,
    ...(leg.insulation > 0 ? [says.insulation(formatLength(leg.insulation, units))] : []),
  ];
  return {
    kind: 'segment',
    id: leg.id,
    number,
    words: says.leg(places.leg(leg.id), words.join(', ')),
    direction,
    length: leg.length,
    section: leg.section,
    material: leg.material,
    insulation: leg.insulation,
    from: leg.from,
    to: leg.to,
  };
}

function nodeWords(
  node: RouteNode,
  drawn: Node | undefined,
  route: Route,
  hoods: readonly Hood[],
  units: System,
): string {
  if (node.kind === 'hood') {
    const hood = hoods.find(({ id }) => id === drawn?.hood);
    return hood ? says.collar(hood.name, sectionWords(hood.collar, units)) : '';
  }
  if (node.kind === 'cap') {
    const cap = drawn?.cap === undefined ? undefined : findCap(drawn.cap);
    return cap ? lower(cap.name) : (drawn?.cap ?? says.noKind);
  }
  if (node.junction) {
    const { converging } = node.junction;
    return (converging ? says.join : says.divide)(node.segments.length);
  }
  return [turnWords(node, route), resizeWords(node, units)].filter((words) => words !== '').join('; ');
}

function turnWords({ bend }: RouteNode, route: Route): string {
  if (!bend) return '';
  const on = route.segments.get(bend.downstream)?.direction;
  const heading = on ? directionWords(on) : '';
  const name = findBend(bend.kind)?.name ?? bend.kind;
  const angle = formatAngle(bend.angle);
  const turned =
    heading === '' ? angle : (on && isVertical(on) ? says.turnedUp : says.turnedTo)(angle, heading);
  return [
    turned,
    ...(bend.radius > 0 ? [says.radius(formatTrimmed(bend.radiusRatio))] : []),
    says.bend(lower(name)),
  ].join(', ');
}

function resizeWords({ transition }: RouteNode, units: System): string {
  if (!transition) return '';
  const shape = transition.kind === 'abrupt' ? says.abrupt : says.conical(formatAngle(transition.angle));
  return says.resized(sectionWords(transition.from, units), sectionWords(transition.to, units), shape);
}

function lower(name: string): string {
  return /^[A-Z]{2}/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);
}

/** Where an arrow key goes along the duct: on with the air, back against it, or to another leg at a junction. */
export type Way = 'downstream' | 'upstream' | 'branch';

/** A node or a segment of a route. */
export interface Stop {
  readonly kind: 'node' | 'segment';
  readonly id: string;
}

/**
 * The next stop from a node or a segment, nodes and segments in turn; `null` where there is none. At a
 * junction the way on is the leg that carries the whole flow, else the one that goes straight through.
 * `branch` at a node gives the first leg that is neither; on a leg it goes round the legs that meet at
 * its junction, the one that it leads to first.
 */
export function neighbour(route: Route, at: Stop, way: Way): Stop | null {
  if (at.kind === 'segment') {
    const leg = route.segments.get(at.id);
    if (!leg) return null;
    if (way !== 'branch') return { kind: 'node', id: way === 'downstream' ? leg.to : leg.from };
    return beside(route, leg);
  }
  const node = route.nodes.get(at.id);
  if (!node) return null;
  const out = mainOf(
    node,
    node.segments.filter((id) => route.segments.get(id)?.from === node.id),
  );
  const into = mainOf(
    node,
    node.segments.filter((id) => route.segments.get(id)?.to === node.id),
  );
  const id =
    way === 'downstream'
      ? out
      : way === 'upstream'
        ? into
        : node.segments.find((leg) => leg !== out && leg !== into);
  return id === undefined ? null : { kind: 'segment', id };
}

function mainOf({ junction }: RouteNode, legs: readonly string[]): string | undefined {
  return (
    legs.find((id) => id === junction?.common) ?? legs.find((id) => id === junction?.straight) ?? legs[0]
  );
}

function beside(route: Route, leg: RouteSegment): Stop | null {
  for (const end of [leg.to, leg.from]) {
    const legs = route.nodes.get(end)?.segments ?? [];
    if (legs.length < 3) continue;
    return { kind: 'segment', id: legs[(legs.indexOf(leg.id) + 1) % legs.length] as string };
  }
  return null;
}
