import { setBend, setMaterial, setStretch } from '../../graph/edits/index.ts';
import { sentence } from '../../graph/places.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import { formatLossRate } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Candidate, type Kind, type Losses, lowerFirst, type Scene } from './candidate.ts';

const says = words.proposals.duct;

const usualMetal = 'galvanized';
/** Duct rougher than this has corrugations that a smooth one would do away with, m. */
const corrugated = 0.0005;

function isCorrugated(material: string): boolean {
  return (findMaterial(material)?.roughness ?? 0) > corrugated;
}

/** Corrugated duct replaced by smooth metal, with bends of its own where it made its turns by itself. */
export const smoothDuct: Kind = (scene) => {
  const { scheme, route } = scene;
  const legs = [...route.segments.values()].filter((leg) => isCorrugated(leg.material));
  const [first] = legs;
  if (!first) return [];
  const segments = legs.map((leg) => leg.id);
  const material = isCorrugated(scheme.defaults.material) ? usualMetal : scheme.defaults.material;
  const name = lowerFirst(findMaterial(material)?.name ?? material);
  const turns = [...route.nodes.values()].filter(
    (node) => node.bend?.kind === 'flexible' && segments.includes(node.bend.upstream),
  );
  const where = legs.length === 1 ? scene.places.leg(first.id) : says.legs(legs.length);
  return [
    {
      id: `smooth-duct:${segments.join('+')}`,
      kind: 'smooth duct',
      title: says.smoothTitle(
        sentence(name),
        lowerFirst(findMaterial(first.material)?.name ?? first.material),
      ),
      label: says.smoothLabel(name),
      recipe: (job) => {
        setMaterial(job, scheme.id, segments, material);
        setStretch(job, scheme.id, segments, null);
        for (const node of turns) setBend(job, scheme.id, node.id, { kind: 'adjustable' });
      },
      nodes: turns.map((node) => node.id),
      segments,
      reason: rates(scene, first.id, says.corrugated(sentence(where)), says.asMetal(name)),
    },
  ];
};

/** Flexible duct that stays, pulled to its full length. */
export const stretchedDuct: Kind = (scene) => {
  const { scheme, route, places } = scene;
  const legs = [...route.segments.values()].filter(
    (leg) => leg.stretch < 1 && findMaterial(leg.material)?.compression,
  );
  const [first] = legs;
  if (!first) return [];
  const segments = legs.map((leg) => leg.id);
  const slack = Math.round((1 - first.stretch) * 100);
  return [
    {
      id: `stretched-duct:${segments.join('+')}`,
      kind: 'stretched duct',
      title: says.stretchTitle,
      label: says.stretchLabel,
      recipe: (job) => setStretch(job, scheme.id, segments, null),
      nodes: [],
      segments,
      reason: rates(
        scene,
        first.id,
        says.slack(sentence(places.leg(first.id)), String(slack)),
        says.pulledTight,
      ),
    },
  ];
};

function rates({ before, units }: Scene, leg: string, subject: string, then: string): Candidate['reason'] {
  const rate = (losses: Losses) => formatLossRate(losses.segments.get(leg)?.lossPerMetre ?? 0, units);
  return (sameAir) => says.loses(subject, rate(before), then, rate(sameAir));
}
