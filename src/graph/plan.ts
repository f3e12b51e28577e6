import { findCap, findInline } from '../hydraulics/catalogue.ts';
import { bendLoss } from '../hydraulics/losses/bends.ts';
import { capLoss, openEnd } from '../hydraulics/losses/caps.ts';
import { inlineLoss } from '../hydraulics/losses/inline.ts';
import { roughnessOf } from '../hydraulics/losses/materials.ts';
import { transitionLoss } from '../hydraulics/losses/transitions.ts';
import { area, hydraulicDiameter } from '../hydraulics/section.ts';
import type { LocalLoss, LossPart, NetworkEdge, Provenance, Section } from '../hydraulics/types.ts';
import type { Node, Scheme, Segment } from './document.ts';
import { keepLatest, memoise } from './memo.ts';
import { named } from './named.ts';
import type { Route, RouteNode, RouteSegment } from './route.ts';
import type { FittingKind } from './solution.ts';

export type DuctPart = Extract<LossPart, { kind: 'duct' }>;

/** A fitting with its loss, in its place along a leg. */
export interface PlannedFitting {
  readonly id: string;
  /** Node id, or the segment's id for a part in line. */
  readonly at: string;
  readonly kind: FittingKind;
  readonly loss: LocalLoss;
  /** m along the leg in the direction of the air. */
  readonly distance: number;
}

/** One leg with all that it is charged with, in the order in which the air meets it. */
export interface PlannedLeg {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly length: number;
  readonly section: Section;
  readonly area: number;
  readonly hydraulicDiameter: number;
  readonly duct: DuctPart;
  readonly provenance: Provenance;
  readonly fittings: readonly PlannedFitting[];
  /** The leg in the hydraulic network. */
  readonly edge: NetworkEdge;
}

/** Everything that costs pressure in a scheme, leg by leg in flow order. */
export interface Plan {
  readonly legs: readonly PlannedLeg[];
  /** Free areas of holes in the duct by node, m2. */
  readonly leaks: ReadonlyMap<string, number>;
}

/**
 * Charges every fitting of a route to one leg: a change of size to the leg downstream of it (its parts
 * know which section they are referred to), a bend to the leg upstream, an end to the leg that runs to it.
 */
export const planOf = memoise((route: Route, scheme: Scheme): Plan => {
  const nodes = new Map(scheme.nodes.map((node) => [node.id, node]));
  const segments = new Map(scheme.segments.map((segment) => [segment.id, segment]));
  return {
    legs: route.order.map((id) => planned(id, route, segments.get(id) as Segment, nodes)),
    leaks: new Map(scheme.nodes.flatMap(({ id, leak }) => (leak === undefined ? [] : [[id, leak] as const]))),
  };
});

/**
 * A leg shorter than this, m, is a slip of the drawing, with a finding of its own where it has no length at all. It is
 * charged as if it had this much: ducts that lose nothing, side by side, would share their air in no way that can be told.
 */
const LEAST_LENGTH = 1e-3;

function planned(id: string, route: Route, segment: Segment, nodes: ReadonlyMap<string, Node>): PlannedLeg {
  const leg = route.segments.get(id) as RouteSegment;
  const [start, end] = [leg.from, leg.to].map((node) => route.nodes.get(node) as RouteNode);
  return planLeg(leg, start as RouteNode, end as RouteNode, segment, nodes.get(leg.to));
}

const planLeg = keepLatest(
  (
    leg: RouteSegment,
    start: RouteNode,
    end: RouteNode,
    segment: Segment,
    drawnEnd: Node | undefined,
  ): PlannedLeg => {
    const surface = roughnessOf(leg.material, leg.section, leg.stretch);
    const bend = end.bend?.upstream === leg.id ? bendFitting(end, leg) : undefined;
    const straight = leg.length < LEAST_LENGTH ? LEAST_LENGTH : leg.straight;
    const taper = start.transition?.downstream === leg.id ? transitionFitting(start) : undefined;
    const length =
      straight +
      (taper && !taper.loss.includesArcFriction ? (start.transition?.length ?? 0) : 0) +
      (bend && end.bend && !bend.loss.includesArcFriction ? arcOf(end.bend) : 0);
    const duct: DuctPart = {
      kind: 'duct',
      length,
      hydraulicDiameter: hydraulicDiameter(leg.section),
      area: area(leg.section),
      roughness: surface.roughness,
      multiplier: surface.multiplier,
    };
    const fittings = [
      ...(taper ? [taper] : []),
      ...inlineFittings(leg, segment, duct),
      ...(bend ? [bend] : []),
      ...endFitting(end, leg, drawnEnd),
    ];
    return {
      id: leg.id,
      from: leg.from,
      to: leg.to,
      length: leg.length,
      section: leg.section,
      area: duct.area,
      hydraulicDiameter: duct.hydraulicDiameter,
      duct,
      provenance: surface.provenance,
      fittings,
      edge: {
        id: named.duct(leg.id),
        from: named.node(leg.from),
        to: named.node(leg.to),
        parts: [duct, ...fittings.flatMap(({ loss }) => loss.parts)],
      },
    };
  },
);

/** Length of a bend's centre line, m. */
function arcOf(bend: { readonly radius: number; readonly angle: number }): number {
  return (bend.radius * bend.angle * Math.PI) / 180;
}

function bendFitting(node: RouteNode, leg: RouteSegment): PlannedFitting | undefined {
  const { bend } = node;
  if (!bend) return undefined;
  const sides =
    bend.inPlane !== undefined && bend.acrossPlane !== undefined
      ? { inPlane: bend.inPlane, acrossPlane: bend.acrossPlane }
      : {};
  const loss = bendLoss({
    kind: bend.kind,
    angle: bend.angle,
    radiusRatio: bend.radiusRatio,
    section: leg.section,
    ...sides,
  });
  return { id: `${node.id}/bend`, at: node.id, kind: 'bend', loss, distance: leg.length };
}

function transitionFitting(node: RouteNode): PlannedFitting {
  const { from, to, kind, angle } = node.transition as NonNullable<RouteNode['transition']>;
  const loss = transitionLoss({ from, to, kind, angle });
  return { id: `${node.id}/transition`, at: node.id, kind: 'transition', loss, distance: 0 };
}

function endFitting(end: RouteNode, leg: RouteSegment, node: Node | undefined): PlannedFitting[] {
  if (end.segments.length !== 1 || end.kind === 'hood') return [];
  const cap = end.kind === 'cap' && node?.cap !== undefined && findCap(node.cap) ? node.cap : undefined;
  const kind: FittingKind = cap ? 'cap' : 'exit';
  const loss = cap
    ? capLoss({
        cap,
        section: leg.section,
        ...(node?.capOpening === undefined ? {} : { opening: node.capOpening }),
      })
    : openEnd(leg.section);
  return [{ id: `${end.id}/${kind}`, at: end.id, kind, loss, distance: leg.length }];
}

/** What a part in line is called among the fittings of a result. */
const inlineKinds: Readonly<Record<string, FittingKind>> = {
  'backdraught-damper': 'backdraught-damper',
  'balancing-damper': 'damper',
  'volume-damper-open': 'damper',
  screen: 'screen',
  'perforated-plate': 'screen',
  silencer: 'silencer',
  filter: 'filter',
};

function inlineFittings(leg: RouteSegment, segment: Segment, duct: DuctPart): PlannedFitting[] {
  const counts = new Map<FittingKind, number>();
  return (segment.fittings ?? [])
    .filter((part) => part.user !== undefined || findInline(part.kind) !== undefined)
    .map((part) => {
      const along = Math.min(part.at, leg.length);
      return { part, distance: leg.reversed ? leg.length - along : along };
    })
    .sort((a, b) => a.distance - b.distance)
    .map(({ part, distance }) => {
      const kind = part.user ? 'user' : (inlineKinds[part.kind] ?? 'user');
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      return {
        id: `${leg.id}/${kind}${count > 1 ? `-${count}` : ''}`,
        at: leg.id,
        kind,
        loss: inlineLoss({
          ...part,
          section: leg.section,
          roughness: duct.roughness,
          multiplier: duct.multiplier,
        }),
        distance,
      };
    });
}
