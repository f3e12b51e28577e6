import type { Scheme, Vec3 } from '../../../graph/document.ts';
import { normalize, subtract } from '../../../graph/vector.ts';
import { words } from '../../../words/index.ts';

const says = words.tools.draw;

/** Where a leg starts. */
export type Anchor =
  | { readonly kind: 'node'; readonly id: string }
  /** A place on a segment: the first leg splits it there. */
  | { readonly kind: 'segment'; readonly id: string; readonly at: Vec3 }
  | { readonly kind: 'place'; readonly at: Vec3 };

/** Where a leg ends. */
export type Target =
  | { readonly kind: 'node'; readonly id: string }
  | { readonly kind: 'segment'; readonly id: string; readonly at: Vec3 }
  | { readonly kind: 'place'; readonly at: Vec3; readonly cap: string | null };

/** The places that a run has come through: where it started, then the end of each leg drawn. */
export type Run = readonly [Anchor, ...Anchor[]];

/** Where a run goes on from. */
export function headOf(run: Run): Anchor {
  return run[run.length - 1] ?? run[0];
}

/** What is left of a run in a document that was changed under it; null where its start is gone. */
export function surviving([start, ...ends]: Run, scheme: Scheme): Run | null {
  if (!placeOf(start, scheme)) return null;
  const gone = ends.findIndex((end) => !placeOf(end, scheme));
  return [start, ...(gone < 0 ? ends : ends.slice(0, gone))];
}

/** Where an anchor stands; null where what it holds to is gone. */
export function placeOf(anchor: Anchor, scheme: Scheme): Vec3 | null {
  switch (anchor.kind) {
    case 'node':
      return scheme.nodes.find((node) => node.id === anchor.id)?.at ?? null;
    case 'segment':
      return scheme.segments.some((segment) => segment.id === anchor.id) ? anchor.at : null;
    case 'place':
      return anchor.at;
  }
}

/** Where the one leg that ends at an anchor starts. */
export function previousTo(anchor: Anchor, scheme: Scheme): Vec3 | undefined {
  if (anchor.kind !== 'node') return undefined;
  const [leg, ...others] = legsAt(anchor.id, scheme);
  if (!leg || others.length > 0) return undefined;
  return scheme.nodes.find(({ id }) => id === (leg.from === anchor.id ? leg.to : leg.from))?.at;
}

/** The direction that the duct has at an anchor: straight on from the one leg there, up from a bare collar. */
export function onwardFrom(anchor: Anchor, scheme: Scheme): Vec3 | null {
  if (anchor.kind !== 'node') return null;
  const node = scheme.nodes.find(({ id }) => id === anchor.id);
  const previous = previousTo(anchor, scheme);
  if (node && previous) return normalize(subtract(node.at, previous));
  return node?.role === 'hood' && legsAt(anchor.id, scheme).length === 0 ? [0, 0, 1] : null;
}

function legsAt(nodeId: string, scheme: Scheme): Scheme['segments'] {
  return scheme.segments.filter(({ from, to }) => from === nodeId || to === nodeId);
}

/** Why no leg can be drawn between two ends; null where one can. */
export function refusal(anchor: Anchor, target: Target, scheme: Scheme): string | null {
  if (target.kind === 'place') return null;
  if (anchor.kind === target.kind && anchor.id === target.id) return says.elsewhere;
  const [node, other] = anchor.kind === 'node' ? [anchor, target] : [target, anchor];
  if (node.kind !== 'node') return null;
  const joined = scheme.segments.some((segment) => {
    const ends = [segment.from, segment.to];
    if (!ends.includes(node.id)) return false;
    return other.kind === 'node'
      ? ends.includes(other.id)
      : other.kind === 'segment' && other.id === segment.id;
  });
  return joined ? says.joinedAlready : null;
}
