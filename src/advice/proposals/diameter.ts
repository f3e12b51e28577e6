import { setDuct } from '../../graph/edits/index.ts';
import type { RouteSegment } from '../../graph/route.ts';
import { sectionWords } from '../../graph/sections.ts';
import { ductSizes } from '../../hydraulics/catalogue.ts';
import { area } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import { formatPressure, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Candidate, type Kind, type Losses, lossOf, lossWords, type Scene } from './candidate.ts';

const says = words.proposals.diameter;

/** The next sizes of the trade for the whole run: one step up and two. */
export const largerDiameter: Kind = (scene) => {
  const legs = [...scene.route.segments.values()];
  const largest = legs.map((leg) => leg.section).sort((a, b) => area(b) - area(a))[0];
  if (!largest) return [];
  return nextSizes(largest, scene.units).map((section) => wholeRun(scene, section, legs));
};

function nextSizes(from: Section, system: Scene['units']): Section[] {
  const present = area(from);
  return ductSizes
    .filter((row) => row.section.shape === from.shape && row.system === system)
    .filter(({ section }) => area(section) > 1.02 * present && area(section) < 2.3 * present)
    .filter(
      ({ section }) => !('height' in section && 'height' in from) || section.height <= 1.01 * from.height,
    )
    .map(({ section }) => section)
    .sort((a, b) => area(a) - area(b))
    .slice(0, 2);
}

function wholeRun(
  { scheme, before, units }: Scene,
  section: Section,
  legs: readonly RouteSegment[],
): Candidate {
  const words = sectionWords(section, units);
  const segments = legs.map((leg) => leg.id);
  return {
    id: `larger-diameter:${sizeId(section)}`,
    kind: 'larger diameter',
    title: says.title(words),
    label: says.label(words),
    recipe: (job) => setDuct(job, scheme.id, 'all', section),
    nodes: [],
    segments,
    reason: (sameAir) =>
      says.reason(
        fastest(before, units),
        cost(before, units),
        words,
        fastest(sameAir, units),
        cost(sameAir, units),
      ),
  };
}

function sizeId(section: Section): string {
  const sides = section.shape === 'round' ? [section.diameter] : [section.width, section.height];
  return `${section.shape}-${sides.map((side) => Math.round(side * 1000)).join('x')}`;
}

function fastest({ segments }: Losses, units: Scene['units']): string {
  return formatVelocity(Math.max(...[...segments.values()].map(({ velocity }) => velocity)), units);
}

function cost(losses: Losses, units: Scene['units']): string {
  const places = losses.fittings.map((fitting) => fitting.at);
  return formatPressure(lossOf(losses, [...losses.segments.keys()], places), units);
}

/** Wherever the run is squeezed: the larger size carried on to the end. */
export const noReducer: Kind = (scene) =>
  [...scene.route.nodes.values()].flatMap((node) => {
    const { transition } = node;
    if (!transition || area(transition.to) >= area(transition.from)) return [];
    return carryOn(scene, node.id, transition.from, transition.to, transition.downstream);
  });

function carryOn(scene: Scene, node: string, large: Section, small: Section, first: string): Candidate[] {
  const { scheme, before, places, units } = scene;
  const segments = downstream(scene, first).filter((id) => {
    const leg = scene.route.segments.get(id);
    return leg !== undefined && area(leg.section) < area(large);
  });
  const ends = segments.flatMap((id) => scene.route.segments.get(id)?.to ?? []);
  const costOf = (losses: Losses) => lossOf(losses, segments, ends);
  const words = sectionWords(large, units);
  return [
    {
      id: `no-reducer:${node}`,
      kind: 'no reducer',
      title: says.carryOn(words),
      label: says.carryOn(words),
      recipe: (job) => setDuct(job, scheme.id, segments, large),
      nodes: [node],
      segments,
      reason: (sameAir) =>
        says.carryOnReason(
          places.node(node),
          sectionWords(small, units),
          lossWords(costOf(before), before, units),
          words,
          formatPressure(costOf(sameAir), units),
        ),
    },
  ];
}

/** A leg and all that follow it. */
function downstream({ route }: Scene, first: string): string[] {
  const found = new Set([first]);
  for (const id of found) {
    const end = route.segments.get(id)?.to;
    for (const next of (end && route.nodes.get(end)?.segments) || []) {
      if (route.segments.get(next)?.from === end) found.add(next);
    }
  }
  return [...found];
}
