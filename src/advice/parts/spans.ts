import type { Node, Scheme } from '../../graph/document.ts';
import type { Route, RouteNode, RouteSegment } from '../../graph/route.ts';
import { sameSection } from '../../graph/sections.ts';
import { perimeter } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import { type Make, makeOf } from './makes.ts';
import { sizeKey } from './part.ts';

/** Shorter duct is none: its fittings meet, m. */
const least = 1e-3;

/** Duct between two fittings, as it is cut: it runs on through the drawing's plain joints. */
export interface Span {
  /** The part that it is: `duct/galvanized/round-203`. */
  readonly key: string;
  readonly section: Section;
  readonly material: string;
  readonly make: Make;
  /** What has to be covered, m; of flexible duct the length pulled tight. */
  readonly length: number;
  /** The legs that it lies in, in the order of the air, and how much of it in each, m. */
  readonly legs: readonly { readonly segment: string; readonly length: number }[];
}

/** A joint between duct and a fitting, or between two fittings. */
export interface Joint {
  readonly make: Make;
  readonly section: Section;
  /** Girth of the duct, m. */
  readonly length: number;
  readonly segment: string;
}

export interface Run {
  readonly spans: readonly Span[];
  readonly joints: readonly Joint[];
}

/**
 * The straight duct of a route in spans, and every joint at a fitting. A plain joint of the drawing is none in the
 * duct, and flexible duct goes on through its own bends, whose arc counts. A part in line parts the duct where
 * it stands; its own length, which nobody has said, is not taken off (assumption). An open end has no joint.
 */
export function runOf(route: Route, scheme: Scheme): Run {
  const spans: Span[] = [];
  const joints: Joint[] = [];
  const drawn = new Map(scheme.nodes.map((node) => [node.id, node]));
  const fittings = new Map(scheme.segments.map((segment) => [segment.id, segment.fittings ?? []]));
  /** Spans that go on beyond a plain joint, by its node. */
  const begun = new Map<string, Span>();
  for (const id of route.order) {
    const leg = route.segments.get(id);
    const [from, to] = [leg?.from, leg?.to].map((end) => route.nodes.get(end ?? ''));
    if (!leg || !from || !to) continue;
    const make = makeOf(leg.section, leg.material);
    const joint: Joint = { make, section: leg.section, length: perimeter(leg.section), segment: id };
    const onward = runsOn(to, route, drawn.get(to.id));
    const before = begun.get(from.id);
    begun.delete(from.id);

    const straights = partedBy(fittings.get(id) ?? [], leg, from);
    /** Things that lie one after the other along the leg: between each two of them is a joint. */
    let things = !before && hasBody(from, drawn.get(from.id)) ? 1 : 0;
    straights.forEach((straight, k) => {
      const last = k === straights.length - 1;
      const length = (straight + (last ? ownArc(to, leg) : 0)) / leg.stretch;
      const span = k === 0 && before ? longer(before, id, length) : spanOf(leg, make, length);
      if (span.length > least || (last && onward)) things += 1;
      if (last && onward) begun.set(to.id, span);
      else if (span.length > least) spans.push(span);
      if (!last || (!onward && (hasBody(to, drawn.get(to.id)) || to.segments.length > 1))) things += 1;
    });
    for (let k = 1; k < things; k += 1) joints.push(joint);
    if (to.bend && to.transition) joints.push(joint);
    if (from.kind === 'hood' && from.transition)
      joints.push({ ...joint, section: from.transition.from, length: perimeter(from.transition.from) });
  }
  for (const span of begun.values()) if (span.length > least) spans.push(span);
  return { spans, joints };
}

function spanOf(leg: RouteSegment, make: Make, length: number): Span {
  const { id: segment, section, material } = leg;
  const key = `duct/${material}/${sizeKey(section)}`;
  return { key, section, material, make, length, legs: [{ segment, length }] };
}

function longer(span: Span, segment: string, length: number): Span {
  return { ...span, length: span.length + length, legs: [...span.legs, { segment, length }] };
}

/** Where the same duct goes on: two legs alike, and nothing between them but a plain joint or a bend of their own. */
function runsOn(node: RouteNode, route: Route, drawn: Node | undefined): boolean {
  const [a, b] = node.segments.map((id) => route.segments.get(id));
  if (node.segments.length !== 2 || !a || !b || a.to === b.to || a.from === b.from) return false;
  if (hasBody(node, drawn)) return false;
  return sameSection(a.section, b.section) && a.material === b.material && a.stretch === b.stretch;
}

/** Whether something is put in at a node that duct is joined to on either side. */
function hasBody(node: RouteNode, drawn: Node | undefined): boolean {
  if (node.kind === 'cap') return (drawn?.cap ?? 'open') !== 'open';
  if (node.kind === 'hood' || node.junction || node.transition || drawn?.role === 'fan') return true;
  return node.bend !== undefined && node.bend.kind !== 'flexible';
}

/** The duct in a bend that flexible duct makes by itself, m; it belongs to the leg upstream. */
function ownArc({ bend }: RouteNode, leg: RouteSegment): number {
  if (bend?.kind !== 'flexible' || bend.upstream !== leg.id) return 0;
  return (bend.radius * bend.angle * Math.PI) / 180;
}

/** The straight of a leg between the parts in line, m, in the order of the air. */
function partedBy(
  fittings: readonly { readonly at: number }[],
  leg: RouteSegment,
  from: RouteNode,
): readonly number[] {
  const cone = from.transition?.downstream === leg.id ? from.transition.length : 0;
  const start = Math.min((from.bend?.tangent ?? 0) + cone, leg.length - leg.straight);
  const places = fittings
    .map(({ at }) => (leg.reversed ? leg.length - at : at) - start)
    .map((at) => Math.min(leg.straight, Math.max(0, at)))
    .sort((a, b) => a - b);
  const edges = [0, ...places, leg.straight];
  return edges.slice(1).map((edge, i) => edge - (edges[i] ?? 0));
}
