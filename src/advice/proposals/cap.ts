import { setCap, setCapOpening } from '../../graph/edits/index.ts';
import { sentence } from '../../graph/places.ts';
import type { RouteNode } from '../../graph/route.ts';
import { type CapRow, caps, findCap } from '../../hydraulics/catalogue.ts';
import { formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import {
  type Candidate,
  fittingAt,
  type Kind,
  lossWords,
  lowerFirst,
  type Recipe,
  type Scene,
  withArticle,
} from './candidate.ts';

const says = words.proposals.cap;

/** How many caps next to the best are tried as well: one may be cheaper, or stand where the best cannot. */
const others = 2;

/** For every cap those of the catalogue, for the same kind of face, that let most air out. */
export const betterCaps: Kind = function* (scene) {
  for (const node of scene.route.nodes.values()) {
    const drawn = scene.scheme.nodes.find((each) => each.id === node.id);
    const present = drawn?.cap === undefined ? undefined : findCap(drawn.cap);
    if (node.kind !== 'cap' || !present) continue;
    const options = rowsFor(scene, node, present).filter(
      (row) => row.id !== present.id || drawn?.capOpening !== undefined,
    );
    const tried: { row: CapRow; flow: number }[] = [];
    for (const row of options) {
      tried.push({ row, flow: scene.flowAfter(fitted(scene, node.id, row)) });
      yield undefined;
    }
    yield* tried
      .sort((a, b) => b.flow - a.flow)
      .slice(0, 1 + others)
      .map(({ row }, rank) => replace(scene, node.id, row, row.id === present.id, rank === 0));
  }
};

/**
 * Caps that may stand there: for the same face, without a screen, and with a flap unless the run has a
 * damper of its own or the present cap has none either, so that no cold air is let in.
 */
function rowsFor({ scheme, route }: Scene, node: RouteNode, present: CapRow): CapRow[] {
  const damped = scheme.segments.some((segment) =>
    segment.fittings?.some((part) => part.kind === 'backdraught-damper'),
  );
  const leg = route.segments.get(node.segments[0] ?? '');
  const faces = present.faces === 'any' ? (leg?.vertical ? 'roof' : 'wall') : present.faces;
  const open = damped || !present.flap;
  return caps.filter((row) => row.faces === faces && !row.screen && (open || row.flap !== undefined));
}

function fitted(scene: Scene, node: string, row: CapRow): Recipe {
  return (job) => {
    setCap(job, scene.scheme.id, node, row.id);
    setCapOpening(job, scene.scheme.id, node, null);
  };
}

function replace(scene: Scene, node: string, row: CapRow, same: boolean, best: boolean): Candidate {
  const { before, places, units } = scene;
  const name = lowerFirst(row.name);
  const words = same ? says.fullOpening(name) : name;
  return {
    id: best ? `better-cap:${node}` : `other-cap:${node}+${row.id}`,
    kind: best ? 'better cap' : 'other cap',
    title: says.title(sentence(words)),
    label: says.label(withArticle(words)),
    recipe: fitted(scene, node, row),
    nodes: [node],
    segments: [],
    reason: (sameAir) => {
      const now = fittingAt(before, node, ['cap', 'exit']);
      const then = fittingAt(sameAir, node, ['cap', 'exit'])?.loss ?? 0;
      return says.reason(
        sentence(places.node(node)),
        lossWords(now?.loss ?? 0, before, units),
        withArticle(words),
        formatPressure(then, units),
      );
    },
  };
}
