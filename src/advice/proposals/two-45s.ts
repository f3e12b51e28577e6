import { insertNode, setBend, setNodePosition } from '../../graph/edits/index.ts';
import { sentence } from '../../graph/places.ts';
import type { RouteNode, RouteSegment } from '../../graph/route.ts';
import { add, scale } from '../../graph/vector.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';
import { formatAngle, formatLength, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import {
  type Candidate,
  fittingAt,
  type Kind,
  lossWords,
  lowerFirst,
  type Recipe,
  type Scene,
} from './candidate.ts';

const says = words.proposals.two45s;

/** Turns between these are worth sharing between two bends, degrees. */
const [least, most] = [60, 120];

/** At every square turn two bends of half its angle, of the same make, with a short leg across the corner. */
export const twoBends: Kind = (scene) =>
  scene.turns.flatMap((node) => {
    const up = node.bend && scene.route.segments.get(node.bend.upstream);
    const down = node.bend && scene.route.segments.get(node.bend.downstream);
    const angle = node.bend?.angle ?? 0;
    if (!up || !down || node.transition || angle < least || angle > most) return [];
    return [across(scene, node, up, down)];
  });

/**
 * Shares a turn between two bends of half its angle and of the same make, with a leg across the corner that
 * holds both bends and half a diameter of straight duct, at least 1.2 diameters long.
 */
export function sharedTurn(
  schemeId: string,
  node: RouteNode,
  up: RouteSegment,
  down: RouteSegment,
): { readonly diagonal: number; readonly recipe: Recipe } {
  const { angle = 90, kind = '', radius = 0, radiusRatio = 0 } = node.bend ?? {};
  const half = (angle * Math.PI) / 360;
  const diameter = hydraulicDiameter(up.section);
  const diagonal = Math.max(2 * radius * Math.tan(half / 2) + diameter / 2, 1.2 * diameter);
  const cut = diagonal / (2 * Math.cos(half));
  const start = add(node.at, scale(up.direction, -cut));
  const end = add(node.at, scale(down.direction, cut));
  return {
    diagonal,
    recipe: (job) => {
      const { node: second } = insertNode(job, schemeId, down.id, end);
      setNodePosition(job, schemeId, node.id, start);
      for (const id of [node.id, second]) setBend(job, schemeId, id, { kind, radiusRatio });
    },
  };
}

function across(scene: Scene, node: RouteNode, up: RouteSegment, down: RouteSegment): Candidate {
  const { scheme, before, places, units } = scene;
  const { angle = 90, kind = '' } = node.bend ?? {};
  const { diagonal, recipe } = sharedTurn(scheme.id, node, up, down);
  const place = places.brief(node.id);
  const halfAngle = formatAngle(angle / 2);
  return {
    id: `two-45s:${node.id}`,
    kind: 'two 45s',
    title: says.title(halfAngle, place),
    label: says.label(place),
    recipe,
    nodes: [node.id],
    segments: [up.id, down.id],
    reason: (sameAir) => {
      const now = fittingAt(before, node.id, ['bend'])?.loss ?? 0;
      const one = fittingAt(sameAir, node.id, ['bend'])?.loss ?? 0;
      const name = lowerFirst(findBend(kind)?.name ?? kind);
      return says.reason(
        sentence(places.turn(node.id)),
        lossWords(now, before, units),
        halfAngle,
        name,
        formatLength(diagonal, units),
        formatPressure(2 * one, units),
      );
    },
  };
}
