import { findCap, findMaterial } from '../../hydraulics/catalogue.ts';
import { formatArea } from '../../units/index.ts';
import type { Vec3 } from '../document.ts';
import { sentence } from '../places.ts';
import type { Finding, RouteNode } from '../route.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

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
    const where =
      segments.length === 1 ? places.leg(segments[0] as string) : `${segments.length} legs of the run`;
    const name = row.name.charAt(0).toLowerCase() + row.name.slice(1);
    return [
      finding(
        `${material}-duct`,
        material === 'aluminium' ? 'warning' : 'danger',
        { segments },
        `${sentence(where)} ${segments.length === 1 ? 'is' : 'are'} ${row.id === 'smooth-plastic' ? 'smooth plastic' : name}. ${row.caution ?? ''}`.trim(),
        { remedy: 'Use smooth rigid metal duct; the local code decides.', source: 'common practice' },
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
      const what =
        asked === undefined ? 'has no kind chosen' : `is a "${asked}", which the catalogue does not have`;
      findings.push(
        finding(
          'unknown-cap',
          'warning',
          { nodes: [node.id] },
          `${sentence(places.node(node.id))} ${what}; it is computed as an open end.`,
          { remedy: 'Choose a cap from the list.' },
        ),
      );
    }
    if (row?.screen) {
      findings.push(
        finding(
          'screened-cap',
          'warning',
          { nodes: [node.id] },
          `${sentence(places.node(node.id))} has a screen: grease and lint clog it until little air passes.`,
          { remedy: 'Choose a cap without a screen, or clean it often.', source: 'common practice' },
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
          finding(
            'leak',
            'error',
            { nodes: [id] },
            `The duct has a hole of ${formatArea(leak, units)} at ${places.node(id)}: air and grease leave there, and not outdoors.`,
            { remedy: 'Close it with metal tape or mastic made for it.', source: 'common practice' },
          ),
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
      `${sentence(places.node(node.id))} is not at an outside wall or roof on the sheets, and the drawing cannot tell whether it is outdoors: ending a duct in an attic, crawl space or soffit puts grease and moisture there.`,
      { remedy: 'Carry the duct to the outdoors.', source: 'common practice' },
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
