import { sentence } from '../places.ts';
import { finding, type Rule } from './drawing.ts';

/** Parts of a drawing whose own loss or lift the numbers do not hold. */
export const leftOut: Rule = ({ route, scheme, places }) => {
  const junctions = [...route.nodes.values()].filter(
    (node) => node.kind === 'junction' || (node.kind === 'hood' && node.segments.length > 1),
  );
  const fans = scheme.nodes.filter((node) => node.role === 'fan');
  return [
    ...junctions.map((node) =>
      finding(
        'junction-left-out',
        'warning',
        { nodes: [node.id], segments: node.segments },
        `${sentence(places.node(node.id))} joins ${node.segments.length} ducts; the loss where they join is left out of the numbers, so the air delivered is overstated.`,
      ),
    ),
    ...fans.map((node) =>
      finding(
        'fan-left-out',
        'warning',
        { nodes: [node.id] },
        'A fan in the run is left out of the numbers.',
        { remedy: 'Judge the run by the hood alone.' },
      ),
    ),
  ];
};
