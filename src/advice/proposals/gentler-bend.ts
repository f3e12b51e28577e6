import type { BendChoice } from '../../graph/document.ts';
import { setBends as chooseBends } from '../../graph/edits/index.ts';
import { sentence } from '../../graph/places.ts';
import type { RouteNode } from '../../graph/route.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import { bendLoss } from '../../hydraulics/losses/bends.ts';
import { formatPressure, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import {
  type Candidate,
  fittingAt,
  type Kind,
  type Losses,
  lossWords,
  lowerFirst,
  type Recipe,
  type Scene,
  withArticle,
} from './candidate.ts';

const says = words.proposals.bend;

/**
 * Bends that a shop can be asked for, any of which may be gentler than what is there. Not a mitre with
 * vanes: they would stand in the grease (common practice).
 */
const round: readonly BendChoice[] = [
  { kind: 'smooth', radiusRatio: 1.5 },
  { kind: 'five-piece', radiusRatio: 1.5 },
  { kind: 'smooth', radiusRatio: 1 },
  { kind: 'five-piece', radiusRatio: 1 },
];
const rectangular: readonly BendChoice[] = [
  { kind: 'rectangular-smooth', radiusRatio: 1.5 },
  { kind: 'rectangular-smooth', radiusRatio: 1 },
  { kind: 'rectangular-smooth', radiusRatio: 0.75 },
];

interface Change {
  readonly node: RouteNode;
  readonly choice: BendChoice;
}

/** At every turn the gentlest bend that fits its legs, and all turns together as gentle as fits side by side. */
export const gentlerBends: Kind = function* (scene) {
  const together: Change[] = [];
  for (const node of scene.turns) {
    const alone = yield* gentlest(scene, node, []);
    if (!alone) continue;
    yield oneTurn(scene, alone);
    const change = together.length > 0 ? yield* gentlest(scene, node, together) : alone;
    if (change) together.push(change);
  }
  if (together.length > 1) yield everyTurn(scene, together);
};

function setBends({ scheme }: Scene, changes: readonly Change[]): Recipe {
  const choices = new Map(changes.map(({ node, choice }) => [node.id, choice]));
  return (job) => chooseBends(job, scheme.id, choices);
}

/** The gentlest bend that fits its legs, and its room if any does, when others have been chosen already. */
function* gentlest(
  scene: Scene,
  node: RouteNode,
  chosen: readonly Change[],
): Generator<undefined, Change | undefined, undefined> {
  const { bend } = node;
  const section = bend && scene.route.segments.get(bend.upstream)?.section;
  if (!bend || !section) return undefined;
  const { angle, inPlane, acrossPlane } = bend;
  const sides = inPlane !== undefined && acrossPlane !== undefined ? { inPlane, acrossPlane } : {};
  const cost = ({ kind, radiusRatio }: BendChoice) =>
    bendLoss({ kind, angle, section, ...sides, ...(radiusRatio === undefined ? {} : { radiusRatio }) }).c;
  const present = cost({ kind: bend.kind, radiusRatio: bend.radiusRatio });
  const options = (section.shape === 'round' ? round : rectangular)
    .filter((option) => cost(option) < present)
    .sort((a, b) => cost(a) - cost(b));
  let second: Change | undefined;
  for (const choice of options) {
    yield undefined;
    const change = { node, choice };
    const recipe = setBends(scene, [...chosen, change]);
    if (!scene.sound(recipe)) continue;
    if (scene.fits(recipe)) return change;
    second ??= change;
  }
  return second;
}

function bendWords({ kind, radiusRatio }: BendChoice): string {
  const name = lowerFirst(findBend(kind)?.name ?? kind);
  return radiusRatio === undefined ? name : says.ofRadius(name, formatTrimmed(radiusRatio));
}

function oneTurn(scene: Scene, change: Change): Candidate {
  const { before, places, units } = scene;
  const { node, choice } = change;
  const words = bendWords(choice);
  const place = places.brief(node.id);
  return {
    id: `gentler-bend:${node.id}`,
    kind: 'gentler bend',
    title: says.title(sentence(words), place),
    label: says.label(place),
    recipe: setBends(scene, [change]),
    nodes: [node.id],
    segments: [],
    reason: (sameAir) => {
      const now = fittingAt(before, node.id, ['bend'])?.loss ?? 0;
      const then = fittingAt(sameAir, node.id, ['bend'])?.loss ?? 0;
      const where = places.turn(node.id);
      return says.reason(
        sentence(where),
        lossWords(now, before, units),
        withArticle(words),
        formatPressure(then, units),
      );
    },
  };
}

function everyTurn(scene: Scene, changes: readonly Change[]): Candidate {
  const { before, units } = scene;
  const nodes = changes.map(({ node }) => node.id);
  return {
    id: `gentler-bend:${nodes.join('+')}`,
    kind: 'gentler bend',
    title: says.everyTitle(changes.length),
    label: says.everyLabel,
    recipe: setBends(scene, changes),
    nodes,
    segments: [],
    reason: (sameAir) => {
      const bends = ({ fittings }: Losses) =>
        nodes.reduce((sum, id) => sum + (fittingAt({ fittings }, id, ['bend'])?.loss ?? 0), 0);
      const [now, then] = [bends(before), bends(sameAir)];
      return says.everyReason(changes.length, lossWords(now, before, units), formatPressure(then, units));
    },
  };
}
