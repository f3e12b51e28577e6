import { produce } from 'immer';
import type { ExitFace, Vec3 } from '../../graph/document.ts';
import { moveNodes, setBend } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { roomIn } from '../../graph/inference/turns.ts';
import { sentence } from '../../graph/places.ts';
import type { RouteNode, RouteSegment } from '../../graph/route.ts';
import { add, dot, scale } from '../../graph/vector.ts';
import { bendLoss } from '../../hydraulics/losses/bends.ts';
import { formatLength, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Candidate, fittingAt, type Kind, lossWords, type Recipe, type Scene } from './candidate.ts';

const says = words.proposals.moved;

const wanted = { kind: 'smooth', radiusRatio: 1.5 } as const;
/** A turn is not moved farther than this, m: then it is another route. */
const farthest = 0.5;
/** It is moved by whole steps of this, m. */
const step = 0.01;

/**
 * Turns of round duct with too little room for the gentlest bend, moved along the leg that is too short until it
 * fits; the legs beyond follow in parallel up to one that takes the move up in its own length.
 */
export const movedTurns: Kind = function* (scene) {
  for (const node of scene.turns) {
    const up = node.bend && scene.route.segments.get(node.bend.upstream);
    const down = node.bend && scene.route.segments.get(node.bend.downstream);
    if (!node.bend || !up || !down || up.section.shape !== 'round') continue;
    yield undefined;
    if (!gains(node, up) || scene.sound(bendOnly(scene, node))) continue;
    const moves = along(scene, node, up, 1);
    yield* moves.length > 0 ? moves : along(scene, node, down, -1);
  }
};

function gains({ bend }: RouteNode, { section }: RouteSegment): boolean {
  if (!bend) return false;
  const { angle, kind, radiusRatio } = bend;
  return bendLoss({ ...wanted, angle, section }).c < 0.95 * bendLoss({ kind, angle, radiusRatio, section }).c;
}

function bendOnly({ scheme }: Scene, node: RouteNode): Recipe {
  return (job) => setBend(job, scheme.id, node.id, wanted);
}

/** Moves a turn so that a leg at it grows: the leg it arrives by (1) or leaves by (-1). */
function along(scene: Scene, node: RouteNode, short: RouteSegment, sense: 1 | -1): Candidate[] {
  const { scheme, before, places, units } = scene;
  const direction = scale(short.direction, sense);
  const moved = followers(scene, node.id, short, direction, sense);
  if (!moved) return [];
  const changed = inferRoute(produce(scene.job, bendOnly(scene, node)), scheme.id);
  const leg = changed.segments.get(short.id);
  const by = leg ? Math.ceil(-roomIn(leg, changed.nodes) / step - 1e-9) * step : 0;
  if (by <= 0 || by > farthest || !capsStay(scene, moved, scale(direction, by))) return [];
  const place = places.brief(node.id);
  const far = formatLength(by, units);
  return [
    {
      id: `moved-turn:${node.id}`,
      kind: 'moved turn',
      title: says.title(place, far),
      label: says.label(place),
      recipe: (job) => {
        moveNodes(job, scheme.id, moved, scale(direction, by));
        setBend(job, scheme.id, node.id, wanted);
      },
      nodes: moved,
      segments: [short.id],
      reason: (sameAir) => {
        const now = fittingAt(before, node.id, ['bend'])?.loss ?? 0;
        const then = fittingAt(sameAir, node.id, ['bend'])?.loss ?? 0;
        return says.reason(
          sentence(places.turn(node.id)),
          lossWords(now, before, units),
          far,
          formatPressure(then, units),
        );
      },
    },
  ];
}

/** The nodes that move with a turn, away from its short leg; null where a hood or a junction would have to. */
function followers(
  { route }: Scene,
  start: string,
  short: RouteSegment,
  direction: Vec3,
  sense: 1 | -1,
): string[] | null {
  const moved = [start];
  let last = short.id;
  for (let id = start; ; ) {
    const node = route.nodes.get(id);
    const next = node?.segments.find((leg) => leg !== last);
    if (!node || node.kind === 'hood' || node.kind === 'junction') return null;
    if (next === undefined) return moved;
    const leg = route.segments.get(next);
    if (!leg) return null;
    if (Math.abs(dot(leg.direction, direction)) > 0.999) return moved;
    id = sense === 1 ? leg.to : leg.from;
    last = next;
    moved.push(id);
  }
}

/** A cap may slide on its face, and not off it. */
function capsStay({ job, route }: Scene, moved: readonly string[], by: Vec3): boolean {
  return moved.every((id) => {
    const node = route.nodes.get(id);
    if (node?.kind !== 'cap') return true;
    const faces = job.exits.filter((face) => on(node.at, face));
    return faces.length === 0 || faces.some((face) => on(add(node.at, by), face));
  });
}

/** Within a face's outline, however far out of its plane. */
function on(at: Vec3, { min, max }: Pick<ExitFace, 'min' | 'max'>): boolean {
  const sides = [0, 1, 2].map((axis) => (max[axis] ?? 0) - (min[axis] ?? 0));
  const thin = sides.indexOf(Math.min(...sides));
  return ([0, 1, 2] as const).every(
    (axis) => axis === thin || (at[axis] >= min[axis] && at[axis] <= max[axis]),
  );
}
