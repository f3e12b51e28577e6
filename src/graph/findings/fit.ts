import { findBend, findInline } from '../../hydraulics/catalogue.ts';
import { area } from '../../hydraulics/section.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { bendOf, materialOf } from '../inference/laid.ts';
import { roomIn } from '../inference/turns.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { sectionWords } from '../sections.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

const says = words.findings.fit;

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
        ? says.twoBends(places.node(one), places.node(other))
        : says.bend(places.turn(one))
      : says.change(places.node(leg.from));
    findings.push(
      finding(
        'does-not-fit',
        'error',
        { nodes, segments: [leg.id] },
        says.tooShort(sentence(what), places.leg(leg.id), formatLength(-room, units)),
        { remedy: says.moveTurn },
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
    const where = small.length === 1 ? sentence(places.leg(first.id)) : says.fromOn(places.node(first.from));
    findings.push(
      finding(
        'smaller-than-collar',
        'warning',
        { nodes: [collar.node], segments: small.map((leg) => leg.id) },
        says.smallerThanCollar(
          where,
          sectionWords(first.section, units),
          sectionWords(collar.section, units),
        ),
        {
          remedy: says.runCollarSize(sectionWords(collar.section, units)),
          source: says.collarSource,
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
        says.beyondLeg(
          part.name ?? part.kind,
          formatLength(part.at, units),
          places.leg(segment.id),
          formatLength(leg.length, units),
        ),
        { remedy: says.moveBack },
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
    const { id, asked } = materialOf(segment, scheme.defaults);
    if (!asked || !route.segments.has(segment.id)) return [];
    return [
      finding(
        'unknown-material',
        'warning',
        { segments: [segment.id] },
        says.unknownMaterial(sentence(places.leg(segment.id)), asked, id),
        { remedy: says.chooseMaterial },
      ),
    ];
  });
}

function unknownBends({ scheme, places, route, topology }: Drawing): Finding[] {
  return [...route.nodes.values()].flatMap((node) => {
    const upstream = node.bend && route.segments.get(node.bend.upstream);
    const drawn = topology.nodes.get(node.id);
    if (!upstream || !drawn) return [];
    const { id, asked } = bendOf(drawn, upstream.section, upstream.material, scheme.defaults);
    if (!asked) return [];
    const why = findBend(asked) ? says.wrongSection : says.notInCatalogue;
    return [
      finding(
        'unknown-bend',
        'warning',
        { nodes: [node.id] },
        says.unknownBend(sentence(places.turn(node.id)), asked, why, id),
        { remedy: says.chooseBend },
      ),
    ];
  });
}

function unknownInline({ scheme, places, route }: Drawing): Finding[] {
  return scheme.segments.flatMap((segment) =>
    (segment.fittings ?? []).flatMap((part, index) => {
      if (!route.segments.has(segment.id)) return [];
      if (part.user !== undefined || findInline(part.kind) !== undefined) return [];
      const why = part.kind === 'user' ? says.noLoss : says.unknownPart(part.kind);
      const found = finding(
        'unknown-part',
        'error',
        { segments: [segment.id] },
        says.partLeftOut(
          sentence(part.name ? says.namedPart(part.name) : says.somePart),
          places.leg(segment.id),
          why,
        ),
        { remedy: says.choosePart },
      );
      return [{ ...found, id: `${found.id}/${index}` }];
    }),
  );
}
