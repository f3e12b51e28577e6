import type { Piece } from '../inference/topology.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { type Drawing, finding, type Rule } from './drawing.ts';

/** Nothing to blow, or nothing drawn. */
export const noHood: Rule = ({ scheme, hoods, topology }) => {
  if (scheme.nodes.length === 0) {
    return [
      finding('nothing-drawn', 'note', {}, 'Nothing is drawn in this scheme yet.', {
        remedy: 'Place a hood and draw its duct from the collar to the outside.',
      }),
    ];
  }
  const findings: Finding[] = [];
  if (!scheme.nodes.some((node) => node.role === 'hood')) {
    findings.push(
      finding('no-hood', 'error', {}, 'The run has no hood, so there is no fan to move the air.', {
        remedy: 'Place a hood at the start of the run.',
      }),
    );
  }
  for (const node of scheme.nodes) {
    if (node.role !== 'hood') continue;
    if (!hoods.some((hood) => hood.id === node.hood)) {
      findings.push(
        finding(
          'unknown-hood',
          'error',
          { nodes: [node.id] },
          'A hood on the sheet has no hood data behind it.',
          {
            remedy: 'Choose which of the hoods of this job stands there.',
          },
        ),
      );
    }
    if (topology.legs.get(node.id)?.length === 0) {
      findings.push(
        finding('bare-hood', 'warning', { nodes: [node.id] }, 'No duct is connected to the hood.', {
          remedy: 'Draw a duct from its collar.',
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
      finding('no-exit', 'error', { nodes: piece.hoods, segments }, 'The run has no way out.', {
        remedy: 'Draw it on to the outside and end it in a cap.',
      }),
    ];
  }
  return open.map((id) => {
    const segments = route.nodes.get(id)?.segments ?? [];
    if (capped.length > 0) {
      const where = places.leg(segments[0] as string);
      return finding(
        'open-branch',
        'error',
        { nodes: [id], segments },
        `${sentence(where)} ends open, so air leaves there and not at the cap.`,
        { remedy: 'Carry the branch to a cap, or delete it.' },
      );
    }
    return finding(
      'open-end',
      'warning',
      { nodes: [id], segments },
      'The duct ends open, without a cap; it is computed as a plain open end, which loses all of the velocity pressure (C = 1).',
      {
        remedy: 'End it in a cap outdoors.',
        source: 'from memory: an abrupt exit loses one velocity pressure',
      },
    );
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
        finding(
          'loose',
          'warning',
          { nodes: [id] },
          `A ${cap ? 'cap' : 'point'} stands alone, with no duct to it.`,
          {
            remedy: cap ? 'Draw the duct to it.' : 'Delete it.',
          },
        ),
      );
    } else if (anyHood) {
      const segments = piece.segments.map((segment) => segment.id);
      findings.push(
        finding(
          'gap',
          'error',
          { nodes: piece.nodes, segments },
          'A piece of duct is not connected to the hood: there is a gap in the run.',
          { remedy: 'Drag its end onto the run until the two join.' },
        ),
      );
    }
  }
  return findings;
};

/** Segments that name a node which is not there, or that have no length. */
export const brokenLegs: Rule = ({ route, topology, places }) => {
  const findings = topology.broken.map((segment) =>
    segment.from === segment.to
      ? finding(
          'zero-length',
          'error',
          { segments: [segment.id] },
          'A leg starts and ends at the same point; it is left out.',
          {
            remedy: 'Delete it.',
          },
        )
      : finding(
          'missing-end',
          'error',
          { segments: [segment.id] },
          'A leg has an end that is not on the sheet; it is left out.',
          {
            remedy: 'Delete it and draw it again.',
          },
        ),
  );
  for (const leg of route.segments.values()) {
    if (leg.length >= 1e-6) continue;
    findings.push(
      finding(
        'zero-length',
        'error',
        { nodes: [leg.from, leg.to], segments: [leg.id] },
        `${sentence(places.leg(leg.id))} has no length.`,
        { remedy: 'Move one of its ends, or merge the two.' },
      ),
    );
  }
  return findings;
};

/** Segments that close a ring. */
export const loops: Rule = ({ flow, places }) =>
  flow.closing.map((segment) =>
    finding(
      'loop',
      'warning',
      { segments: [segment.id] },
      `${sentence(places.leg(segment.id))} closes a loop; the air divides between the two ways round.`,
      { remedy: 'If that is not meant, delete one of the legs.' },
    ),
  );

/** A cap that duct passes through. */
export const capsInTheRun: Rule = ({ route, topology }) =>
  [...route.nodes.values()]
    .filter((node) => node.segments.length > 1 && topology.nodes.get(node.id)?.role === 'cap')
    .map((node) =>
      finding(
        'cap-in-run',
        'error',
        { nodes: [node.id], segments: node.segments },
        'A cap stands in the middle of the run; it is computed as if it were not there.',
        { remedy: 'End the run at the cap, or make it a plain turn.' },
      ),
    );
