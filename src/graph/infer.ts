import type { Section } from '../hydraulics/types.ts';
import type { Hood, Job, Node, Scheme, Vec3 } from './document.ts';
import { drawingFindings } from './findings/all.ts';
import { type Directed, type Flow, flowOf } from './inference/direction.ts';
import { junctionAt } from './inference/junction.ts';
import { bendOf, materialOf, sectionOf } from './inference/laid.ts';
import { deflection, isVertical, turnSides, widthAxis } from './inference/orientation.ts';
import { legsOf, type Topology, topologyOf } from './inference/topology.ts';
import { bendAt, roomBetween, transitionAt, turns } from './inference/turns.ts';
import { keepLatest, memoise } from './memo.ts';
import type { Route, RouteNode, RouteNodeKind, RouteSegment } from './route.ts';
import { sameSection } from './sections.ts';
import { norm, normalize, subtract } from './vector.ts';

/**
 * What the drawing of a scheme means. Directions follow the air, lengths are true lengths in space,
 * and whatever is wrong with the drawing is a finding. Conventions:
 * - A bend belongs to the leg upstream of it: it is made in that leg's section, by default in its
 *   material, and the friction of its arc is charged there. A change of size at the same node follows
 *   the bend, at the start of the leg downstream.
 * - At a hood a change of size runs from the collar; its `upstream` is then the node's own id.
 * - The radius of a bend is its ratio times the diameter, or times the side in the plane of the turn.
 *
 * @param job read only; repeated calls with the same scheme, hoods, blocks and exits are free
 * @throws RangeError if the job has no scheme of that id
 */
export function inferRoute(job: Job, schemeId: string): Route {
  return inferred(schemeOf(job, schemeId), job.hoods, job.blocks, job.exits, job.units);
}

/** A scheme by its id. @throws RangeError where there is none */
export function schemeOf(job: Job, schemeId: string): Scheme {
  const scheme = job.schemes.find((candidate) => candidate.id === schemeId);
  if (!scheme) throw new RangeError(`The job has no scheme "${schemeId}".`);
  return scheme;
}

const inferred = memoise(
  (
    scheme: Scheme,
    hoods: Job['hoods'],
    blocks: Job['blocks'],
    exits: Job['exits'],
    units: Job['units'],
  ): Route => {
    const topology = topologyOf(scheme);
    const flow = flowOf(topology);
    const { defaults } = scheme;
    const legs = new Map<string, Leg>();
    for (const id of flow.order) {
      const directed = flow.directed.get(id) as Directed;
      legs.set(id, legOf(directed, atOf(topology, directed.from), atOf(topology, directed.to), defaults));
    }
    const nodes = new Map<string, RouteNode>();
    for (const node of scheme.nodes) nodes.set(node.id, nodeOf(node, defaults, hoods, topology, flow, legs));
    const segments = new Map<string, RouteSegment>();
    for (const [id, leg] of legs)
      segments.set(id, cutToFit(leg, nodes.get(leg.from) as RouteNode, nodes.get(leg.to) as RouteNode));
    const route: Route = { schemeId: scheme.id, nodes, segments, order: flow.order, findings: [] };
    return {
      ...route,
      findings: drawingFindings({ route, scheme, hoods, blocks, exits, units, topology, flow }),
    };
  },
);

type Leg = Omit<RouteSegment, 'straight'>;
type Defaults = Scheme['defaults'];

/** Where its ends and what it is made of are the same, a leg is the same object as before; so are nodes and segments. */
const legOf = keepLatest(
  ({ segment, from, to }: Directed, start: Vec3, end: Vec3, defaults: Defaults): Leg => {
    const run = subtract(end, start);
    const length = norm(run);
    const direction: Vec3 = length > 0 ? normalize(run) : [0, 0, 0];
    return {
      id: segment.id,
      from,
      to,
      reversed: from !== segment.from,
      length,
      direction,
      section: sectionOf(segment, defaults),
      material: materialOf(segment, defaults).id,
      stretch: segment.stretch ?? 1,
      insulation: segment.insulation ?? 0,
      vertical: length > 0 && isVertical(direction),
    };
  },
);

function atOf(topology: Topology, id: string): Vec3 {
  return (topology.nodes.get(id) as Node).at;
}

function nodeOf(
  node: Node,
  defaults: Defaults,
  hoods: readonly Hood[],
  topology: Topology,
  flow: Flow,
  legs: ReadonlyMap<string, Leg>,
): RouteNode {
  const meeting = legsOf(topology, node.id).map((segment) => legs.get(segment.id) as Leg);
  if (node.role === 'hood')
    return hoodNode(node, hoods.find((hood) => hood.id === node.hood)?.collar, ...meeting);
  const [first, second] = meeting;
  if (!first || !second || meeting.length > 2) return endOrJunction(node, ...meeting);
  const [upstream, downstream] =
    second.to === node.id && first.to !== node.id ? [second, first] : [first, second];
  const around =
    upstream.section.shape === 'round' ? [] : neighbours(upstream, downstream, topology, flow, legs);
  return passage(node, first, second, upstream, downstream, defaults, ...around);
}

const baseOf = ({ id, at }: Node, meeting: readonly Leg[]) => ({
  id,
  at,
  segments: meeting.map((leg) => leg.id),
});

const hoodNode = keepLatest(
  (node: Node, collar: Section | undefined, ...meeting: readonly Leg[]): RouteNode => ({
    ...baseOf(node, meeting),
    kind: 'hood',
    ...collarTransition(node, collar, meeting),
  }),
);

const endOrJunction = keepLatest((node: Node, ...meeting: readonly Leg[]): RouteNode => {
  const base = baseOf(node, meeting);
  if (meeting.length > 2) return { ...base, kind: 'junction', junction: junctionAt(node.id, meeting) };
  if (node.role === 'cap') return { ...base, kind: 'cap' };
  return { ...base, kind: meeting.length === 0 ? 'loose' : 'open end' };
});

function collarTransition(
  node: Node,
  collar: Section | undefined,
  meeting: readonly Leg[],
): Pick<RouteNode, 'transition'> {
  const leg = meeting[0];
  if (!collar || !leg || meeting.length > 1 || sameSection(collar, leg.section)) return {};
  return { transition: transitionAt(node.transition, collar, leg.section, node.id, leg.id) };
}

/** What joins two legs: a bend, a change of size, both, or a plain joint. `around` tells how rectangular duct lies. */
const passage = keepLatest(
  (
    node: Node,
    first: Leg,
    second: Leg,
    upstream: Leg,
    downstream: Leg,
    defaults: Defaults,
    ...around: readonly Vec3[]
  ): RouteNode => {
    const incoming = away(upstream, node.id, -1);
    const outgoing = away(downstream, node.id, 1);
    const angle = deflection(incoming, outgoing);
    const bends = turns(angle);
    const resizes = !sameSection(upstream.section, downstream.section);
    const kind: RouteNodeKind = bends
      ? resizes
        ? 'bend and transition'
        : 'bend'
      : resizes
        ? 'transition'
        : 'joint';
    const choice = bends ? bendOf(node, upstream.section, upstream.material, defaults) : undefined;
    const width = widthAxis(incoming, around);
    return {
      ...baseOf(node, [first, second]),
      kind,
      ...(choice && {
        bend: bendAt(
          angle,
          choice.id,
          choice.radiusRatio,
          upstream.section,
          turnSides(upstream.section, width, incoming, outgoing),
          upstream.id,
          downstream.id,
        ),
      }),
      ...(resizes && {
        transition: transitionAt(
          node.transition,
          upstream.section,
          downstream.section,
          upstream.id,
          downstream.id,
        ),
      }),
    };
  },
);

/** Direction of a leg through a node whatever way the air was taken to go: -1 towards it, 1 away from it. */
function away(leg: Leg, node: string, sense: 1 | -1): Vec3 {
  const leaves = leg.from === node ? 1 : -1;
  return leaves === sense ? leg.direction : [-leg.direction[0], -leg.direction[1], -leg.direction[2]];
}

/** Directions of the legs up the run and then down the run from a leg, as far as they go in one line. */
function neighbours(
  upstream: Leg,
  downstream: Leg,
  topology: Topology,
  flow: Flow,
  legs: ReadonlyMap<string, Leg>,
): Vec3[] {
  const found: Vec3[] = [];
  if (!upstream.vertical) return found;
  const seen = new Set([upstream.id]);
  let at = upstream.from;
  for (;;) {
    const before = legsOf(topology, at).find((s) => flow.directed.get(s.id)?.to === at && !seen.has(s.id));
    const leg = before && legs.get(before.id);
    if (!leg) break;
    seen.add(leg.id);
    found.push(leg.direction);
    if (!leg.vertical && leg.length > 0) break;
    at = leg.from;
  }
  return [...found, downstream.direction];
}

const cutToFit = keepLatest(
  (leg: Leg, from: RouteNode, to: RouteNode): RouteSegment => ({
    ...leg,
    straight: Math.max(0, roomBetween(leg, from, to)),
  }),
);
