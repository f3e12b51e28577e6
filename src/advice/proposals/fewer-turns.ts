import type { Block, Vec3 } from '../../graph/document.ts';
import { deleteSelection } from '../../graph/edits/index.ts';
import { sentence } from '../../graph/places.ts';
import type { RouteNode, RouteSegment } from '../../graph/route.ts';
import { solidBlocks } from '../../graph/surroundings.ts';
import { distance, dot, normalize, subtract } from '../../graph/vector.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Candidate, fittingAt, type Kind, lossWords, type Scene } from './candidate.ts';

const says = words.proposals.straight;

/** A duct may leave a collar or meet a cap this far off the direction it has now, degrees. */
const sameWay = 3;

/** Corners that one straight leg could cut, where nothing that is drawn stands in its way. */
export const fewerTurns: Kind = function* (scene) {
  for (const node of scene.turns) {
    const up = node.bend && scene.route.segments.get(node.bend.upstream);
    const down = node.bend && scene.route.segments.get(node.bend.downstream);
    yield up && down && canCut(scene, node, up, down) ? cut(scene, node, up, down) : undefined;
  }
};

function canCut(scene: Scene, node: RouteNode, up: RouteSegment, down: RouteSegment): boolean {
  const start = scene.route.nodes.get(up.from);
  const end = scene.route.nodes.get(down.to);
  if (!start || !end || node.transition || up.material !== down.material) return false;
  const straight = normalize(subtract(end.at, start.at));
  const keepsWay = (direction: Vec3) => dot(direction, straight) >= Math.cos((sameWay * Math.PI) / 180);
  if (!start.bend && !keepsWay(up.direction)) return false;
  if (!end.bend && !keepsWay(down.direction)) return false;
  const margin = hydraulicDiameter(up.section) / 2;
  const free = solidBlocks(scene.job.blocks).every(
    (block) =>
      !runsThrough(start.at, end.at, block, margin) ||
      runsThrough(start.at, node.at, block, margin) ||
      runsThrough(node.at, end.at, block, margin),
  );
  return (
    free && scene.sound((job) => deleteSelection(job, scene.scheme.id, { nodes: [node.id], segments: [] }))
  );
}

/** True where a duct of a radius along a straight line meets a block: the line against the block grown by it. */
function runsThrough(from: Vec3, to: Vec3, { min, max }: Block, radius: number): boolean {
  let enter = 0;
  let leave = 1;
  for (const axis of [0, 1, 2] as const) {
    const run = to[axis] - from[axis];
    const near = min[axis] - radius - from[axis];
    const far = max[axis] + radius - from[axis];
    if (Math.abs(run) < 1e-9) {
      if (near > 0 || far < 0) return false;
      continue;
    }
    enter = Math.max(enter, Math.min(near / run, far / run));
    leave = Math.min(leave, Math.max(near / run, far / run));
  }
  return enter < leave;
}

function cut(scene: Scene, node: RouteNode, up: RouteSegment, down: RouteSegment): Candidate {
  const { scheme, before, places, route, units } = scene;
  const place = places.node(node.id);
  const [start, end] = [up.from, down.to].map((id) => places.brief(id)) as [string, string];
  return {
    id: `fewer-turns:${node.id}`,
    kind: 'fewer turns',
    title: says.title(start, end),
    label: says.label(start, end),
    recipe: (job) => deleteSelection(job, scheme.id, { nodes: [node.id], segments: [] }),
    nodes: [node.id],
    segments: [up.id, down.id],
    reason: () => {
      const bend = fittingAt(before, node.id, ['bend'])?.loss ?? 0;
      const at = (id: string) => route.nodes.get(id)?.at as Vec3;
      const saved = up.length + down.length - distance(at(up.from), at(down.to));
      return says.reason(
        sentence(place),
        lossWords(bend, before, units),
        start,
        end,
        formatLength(saved, units),
      );
    },
  };
}
