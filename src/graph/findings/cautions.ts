import { findCap, findMaterial } from '../../hydraulics/catalogue.ts';
import { formatArea } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Vec3 } from '../document.ts';
import { sentence } from '../places.ts';
import type { Finding, RouteNode } from '../route.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

const says = words.findings.cautions;

/** An end within this of an exit face is taken to come out through it, m. */
const atTheFace = 0.4;

/** Duct that codes do not name for a kitchen hood, with the catalogue's own words on why. */
export const ductInGrease: Rule = ({ route, topology, places }) => {
  const legs = new Map<string, string[]>();
  for (const piece of topology.pieces) {
    if (piece.hoods.length === 0) continue;
    for (const { id } of piece.segments) {
      const material = route.segments.get(id)?.material ?? '';
      if (findMaterial(material)?.kitchen === false) legs.set(material, [...(legs.get(material) ?? []), id]);
    }
  }
  return [...legs].flatMap(([material, segments]) => {
    const row = findMaterial(material);
    if (!row) return [];
    const where = segments.length === 1 ? places.leg(segments[0] as string) : says.legs(segments.length);
    const name = row.name.charAt(0).toLowerCase() + row.name.slice(1);
    return [
      finding(
        `${material}-duct`,
        material === 'aluminium' ? 'warning' : 'danger',
        { segments },
        (segments.length === 1 ? says.oneIs : says.manyAre)(
          sentence(where),
          row.id === 'smooth-plastic' ? says.smoothPlastic : name,
          row.caution ?? '',
        ).trim(),
        { remedy: says.useSmooth, source: says.practice },
      ),
    ];
  });
};

/** Caps that the catalogue does not have, and caps with a screen. */
export const caps: Rule = ({ route, topology, places }) =>
  [...route.nodes.values()].flatMap((node) => {
    if (node.kind !== 'cap' || node.segments.length !== 1) return [];
    const asked = topology.nodes.get(node.id)?.cap;
    const row = asked === undefined ? undefined : findCap(asked);
    const findings: Finding[] = [];
    if (!row) {
      const what = asked === undefined ? says.noKind : says.unknownKind(asked);
      findings.push(
        finding(
          'unknown-cap',
          'warning',
          { nodes: [node.id] },
          says.noCap(sentence(places.node(node.id)), what),
          { remedy: says.chooseCap },
        ),
      );
    }
    if (row?.screen) {
      findings.push(
        finding(
          'screened-cap',
          'warning',
          { nodes: [node.id] },
          says.screen(sentence(places.node(node.id))),
          { remedy: says.noScreen, source: says.practice },
        ),
      );
    }
    return findings;
  });

/** Holes in the duct, entered as found. */
export const leaks: Rule = ({ scheme, places, units }) =>
  scheme.nodes.flatMap(({ id, leak }) =>
    leak === undefined
      ? []
      : [
          finding('leak', 'error', { nodes: [id] }, says.hole(formatArea(leak, units), places.node(id)), {
            remedy: says.closeHole,
            source: says.practice,
          }),
        ],
  );

/** A drawing cannot show that an end is outdoors. */
export const whereItEnds: Rule = (drawing) => {
  const { route, topology, places } = drawing;
  const ends = topology.pieces
    .filter((piece) => piece.hoods.length > 0)
    .flatMap((piece) => piece.exits)
    .flatMap((id) => route.nodes.get(id) ?? [])
    .filter((node) => node.kind === 'cap' && !atAnExit(node, drawing));
  return ends.map((node) =>
    finding(
      'exit-not-shown',
      drawing.exits.length > 0 ? 'warning' : 'note',
      { nodes: [node.id] },
      says.indoors(sentence(places.node(node.id))),
      { remedy: says.carryOut, source: says.practice },
    ),
  );
};

function atAnExit(node: RouteNode, { exits }: Drawing): boolean {
  return exits.some((face) => outside(node.at, face.min, face.max) <= atTheFace);
}

/** Distance from a point to a box, m. */
function outside(at: Vec3, min: Vec3, max: Vec3): number {
  const beyond = (axis: 0 | 1 | 2) => Math.max(min[axis] - at[axis], at[axis] - max[axis], 0);
  return Math.hypot(beyond(0), beyond(1), beyond(2));
}
