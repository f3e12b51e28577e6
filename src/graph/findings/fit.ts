import { findBend, findInline } from '../../hydraulics/catalogue.ts';
import { area } from '../../hydraulics/section.ts';
import { formatLength } from '../../units/index.ts';
import { bendOf, materialOf } from '../inference/laid.ts';
import { roomIn } from '../inference/turns.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { sectionWords } from '../sections.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

/** Bends and cones that are longer than the leg that has to hold them. */
export const bendsThatDoNotFit: Rule = ({ route, places, units }) => {
  const findings: Finding[] = [];
  for (const leg of route.segments.values()) {
    const room = roomIn(leg, route.nodes);
    if (room >= -1e-6 || leg.length < 1e-6) continue;
    const nodes = [leg.from, leg.to].filter((id) => route.nodes.get(id)?.bend?.tangent);
    const [one, other] = nodes;
    const what = one
      ? other
        ? `${places.node(one)} and ${places.node(other)} do`
        : `${places.turn(one)}, does`
      : `the change of size at ${places.node(leg.from)} does`;
    findings.push(
      finding(
        'does-not-fit',
        'error',
        { nodes, segments: [leg.id] },
        `${sentence(what)} not fit: ${places.leg(leg.id)} is ${formatLength(-room, units)} too short.`,
        { remedy: 'Move the turn, or choose a bend of smaller radius or two that share the angle.' },
      ),
    );
  }
  return findings;
};

/** Duct that is smaller than the collar it serves. */
export const smallerThanCollar: Rule = ({ route, hoods, topology, places, units }) => {
  const findings: Finding[] = [];
  for (const piece of topology.pieces) {
    const collars = piece.hoods.flatMap((id) => {
      const hood = hoods.find((candidate) => candidate.id === topology.nodes.get(id)?.hood);
      return hood ? [{ node: id, section: hood.collar }] : [];
    });
    const [collar] = collars.sort((a, b) => area(a.section) - area(b.section));
    if (!collar) continue;
    const members = new Set(piece.segments.map((segment) => segment.id));
    const small = route.order
      .filter((id) => members.has(id))
      .flatMap((id) => route.segments.get(id) ?? [])
      .filter((leg) => area(leg.section) < 0.99 * area(collar.section));
    const [first] = small;
    if (!first) continue;
    const where =
      small.length === 1 ? sentence(places.leg(first.id)) : `From ${places.node(first.from)} on, the duct`;
    findings.push(
      finding(
        'smaller-than-collar',
        'warning',
        { nodes: [collar.node], segments: small.map((leg) => leg.id) },
        `${where} is ${sectionWords(first.section, units)}, smaller than the hood's ${sectionWords(collar.section, units)} collar.`,
        {
          remedy: `Run ${sectionWords(collar.section, units)} from the collar to the cap.`,
          source: 'common practice: never reduce below the collar',
        },
      ),
    );
  }
  return findings;
};

/** Parts in line placed beyond the end of their leg. */
export const partsBeyondTheEnd: Rule = ({ route, scheme, places, units }) =>
  scheme.segments.flatMap((segment) => {
    const leg = route.segments.get(segment.id);
    return (segment.fittings ?? []).flatMap((part, index) => {
      if (!leg || part.at <= leg.length + 1e-6) return [];
      const found = finding(
        'part-beyond-end',
        'warning',
        { segments: [segment.id] },
        `A ${part.name ?? part.kind} is placed ${formatLength(part.at, units)} along ${places.leg(segment.id)}, which is ${formatLength(leg.length, units)} long; it is computed at its end.`,
        { remedy: 'Move the part back onto the leg.' },
      );
      return [{ ...found, id: `${found.id}/${index}` }];
    });
  });

/** Names that the catalogue does not have, and what stands in for them. */
export const unknownParts: Rule = (drawing) => [
  ...unknownMaterials(drawing),
  ...unknownBends(drawing),
  ...unknownInline(drawing),
];

function unknownMaterials({ scheme, places, route }: Drawing): Finding[] {
  return scheme.segments.flatMap((segment) => {
    const { id, asked } = materialOf(segment, scheme);
    if (!asked || !route.segments.has(segment.id)) return [];
    return [
      finding(
        'unknown-material',
        'warning',
        { segments: [segment.id] },
        `${sentence(places.leg(segment.id))} is of "${asked}", which the catalogue does not have; it is computed as ${id}.`,
        { remedy: 'Choose a material from the list.' },
      ),
    ];
  });
}

function unknownBends({ scheme, places, route, topology }: Drawing): Finding[] {
  return [...route.nodes.values()].flatMap((node) => {
    const upstream = node.bend && route.segments.get(node.bend.upstream);
    const drawn = topology.nodes.get(node.id);
    if (!upstream || !drawn) return [];
    const { id, asked } = bendOf(drawn, upstream.section, upstream.material, scheme);
    if (!asked) return [];
    const why = findBend(asked) ? 'does not suit the section of this duct' : 'is not in the catalogue';
    return [
      finding(
        'unknown-bend',
        'warning',
        { nodes: [node.id] },
        `${sentence(places.turn(node.id))}: the bend "${asked}" ${why}; it is computed as ${id}.`,
        { remedy: 'Choose a bend from the list.' },
      ),
    ];
  });
}

function unknownInline({ scheme, places, route }: Drawing): Finding[] {
  return scheme.segments.flatMap((segment) =>
    (segment.fittings ?? []).flatMap((part, index) => {
      if (!route.segments.has(segment.id)) return [];
      if (part.user !== undefined || findInline(part.kind) !== undefined) return [];
      const why =
        part.kind === 'user'
          ? 'has no loss entered'
          : `is a "${part.kind}", which the catalogue does not have`;
      const found = finding(
        'unknown-part',
        'error',
        { segments: [segment.id] },
        `${sentence(part.name ? `the part "${part.name}"` : 'a part')} in ${places.leg(segment.id)} ${why}; it is left out of the numbers.`,
        { remedy: 'Choose a part from the list, or enter its loss from its data sheet.' },
      );
      return [{ ...found, id: `${found.id}/${index}` }];
    }),
  );
}
