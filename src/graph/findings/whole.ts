import { words } from '../../words/index.ts';
import type { Piece } from '../inference/topology.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

const says = words.findings.whole;

/** Nothing to blow, or nothing drawn. */
export const noHood: Rule = ({ scheme, hoods, topology }) => {
  if (scheme.nodes.length === 0) {
    return [
      finding('nothing-drawn', 'note', {}, says.nothing, {
        remedy: says.placeHood,
      }),
    ];
  }
  const findings: Finding[] = [];
  if (!scheme.nodes.some((node) => node.role === 'hood')) {
    findings.push(
      finding('no-hood', 'error', {}, says.noHood, {
        remedy: says.hoodAtStart,
      }),
    );
  }
  for (const node of scheme.nodes) {
    if (node.role !== 'hood') continue;
    if (!hoods.some((hood) => hood.id === node.hood)) {
      findings.push(
        finding('unknown-hood', 'error', { nodes: [node.id] }, says.noHoodData, {
          remedy: says.chooseHood,
        }),
      );
    }
    if (topology.legs.get(node.id)?.length === 0) {
      findings.push(
        finding('bare-hood', 'warning', { nodes: [node.id] }, says.noDuct, {
          remedy: says.drawFromCollar,
        }),
      );
    }
  }
  return findings;
};

/** Ends of the run: none, open, or a branch that stops short. */
export const ends: Rule = (drawing) => drawing.topology.pieces.flatMap((piece) => endsOf(drawing, piece));

function endsOf({ route, topology, places }: Drawing, piece: Piece): Finding[] {
  if (piece.segments.length === 0) return [];
  const capped = piece.exits.filter((id) => topology.nodes.get(id)?.role === 'cap');
  const open = piece.exits.filter((id) => topology.nodes.get(id)?.role !== 'cap');
  if (piece.exits.length === 0) {
    const segments = piece.segments.map((segment) => segment.id);
    return [
      finding('no-exit', 'error', { nodes: piece.hoods, segments }, says.noExit, {
        remedy: says.drawOn,
      }),
    ];
  }
  return open.map((id) => {
    const segments = route.nodes.get(id)?.segments ?? [];
    if (capped.length > 0) {
      const where = places.leg(segments[0] as string);
      return finding('open-branch', 'error', { nodes: [id], segments }, says.openBranch(sentence(where)), {
        remedy: says.carryToCap,
      });
    }
    return finding('open-end', 'warning', { nodes: [id], segments }, says.openEnd, {
      remedy: says.endInCap,
      source: says.exitSource,
    });
  });
}

/** Pieces that no hood blows into, when there is a run with a hood beside them, and points without a duct. */
export const loosePieces: Rule = ({ topology }) => {
  const findings: Finding[] = [];
  const anyHood = topology.pieces.some((piece) => piece.hoods.length > 0);
  for (const piece of topology.pieces) {
    if (piece.hoods.length > 0) continue;
    if (piece.segments.length === 0) {
      const [id] = piece.nodes as [string];
      const cap = topology.nodes.get(id)?.role === 'cap';
      findings.push(
        finding('loose', 'warning', { nodes: [id] }, cap ? says.lonelyCap : says.lonelyPoint, {
          remedy: cap ? says.drawTo : says.delete,
        }),
      );
    } else if (anyHood) {
      const segments = piece.segments.map((segment) => segment.id);
      findings.push(
        finding('gap', 'error', { nodes: piece.nodes, segments }, says.gap, { remedy: says.dragEnd }),
      );
    }
  }
  return findings;
};

/** Segments that name a node which is not there, or that have no length. */
export const brokenLegs: Rule = ({ route, topology, places }) => {
  const findings = topology.broken.map((segment) =>
    segment.from === segment.to
      ? finding('zero-length', 'error', { segments: [segment.id] }, says.samePoint, {
          remedy: says.delete,
        })
      : finding('missing-end', 'error', { segments: [segment.id] }, says.endMissing, {
          remedy: says.drawAgain,
        }),
  );
  for (const leg of route.segments.values()) {
    if (leg.length >= 1e-6) continue;
    findings.push(
      finding(
        'zero-length',
        'error',
        { nodes: [leg.from, leg.to], segments: [leg.id] },
        says.noLength(sentence(places.leg(leg.id))),
        { remedy: says.moveEnd },
      ),
    );
  }
  return findings;
};

/** Segments that close a ring. */
export const loops: Rule = ({ flow, places }) =>
  flow.closing.map((segment) =>
    finding('loop', 'warning', { segments: [segment.id] }, says.loop(sentence(places.leg(segment.id))), {
      remedy: says.deleteOne,
    }),
  );

/** A cap that duct passes through. */
export const capsInTheRun: Rule = ({ route, topology }) =>
  [...route.nodes.values()]
    .filter((node) => node.segments.length > 1 && topology.nodes.get(node.id)?.role === 'cap')
    .map((node) =>
      finding('cap-in-run', 'error', { nodes: [node.id], segments: node.segments }, says.capInRun, {
        remedy: says.endAtCap,
      }),
    );
