import type { Hood } from './document.ts';

/** Depth of a hood, width of one that does not say, and counter height, m: common practice. */
export const usualDepth = 0.56;
export const usualWidth = 0.76;
export const counterHeight = 0.914;
/** Height of the lip at the bottom of a canopy, m: as drawn. */
const lipHeight = 0.06;

/**
 * The measures of a hood whose collar is `top` m above the floor: its plan, the heights of its underside,
 * of the lip's upper edge and of the shoulder where canopy meets neck, and half the neck's width.
 */
export function hoodProfile(hood: Hood, mountingHeight: number | undefined, top: number) {
  const bottom = Math.min(top - 0.15, counterHeight + (mountingHeight ?? 0.71));
  const lip = bottom + lipHeight;
  const shoulder = Math.max(lip + 0.04, Math.min(top - 0.02, bottom + 0.28));
  const collar = (hood.collar.shape === 'round' ? hood.collar.diameter : hood.collar.width) / 2;
  const plan = { width: hood.width ?? usualWidth, depth: hood.depth ?? usualDepth };
  return { ...plan, bottom, lip, shoulder, neck: collar + 0.04 };
}

/** A body round the duct, in halves of the duct's size: where it begins and ends along the air, and how far it reaches. */
export interface Body {
  readonly from: number;
  readonly to: number;
  readonly reach: number;
  readonly round: boolean;
}

/**
 * Outside the wall or the roof, by families of caps. Of a gooseneck only its stack: which way it turns is not
 * drawn. As the sheets draw them, which is how such caps usually look; a data sheet may say otherwise.
 */
const caps: Readonly<Record<string, Body>> = {
  'wall-flap': { from: 0.1, to: 1.35, reach: 1.05, round: false },
  'wall-hooded': { from: 0.1, to: 1.35, reach: 1.05, round: false },
  'wall-louvre': { from: 0.1, to: 0.5, reach: 1.2, round: false },
  'roof-low': { from: 0.6, to: 1.1, reach: 1.05, round: true },
  'roof-cap': { from: 1.15, to: 1.65, reach: 0.99, round: true },
  gooseneck: { from: 0.3, to: 2.6, reach: 1, round: true },
};

/** The body of a catalogue cap: its own, else that of its family; null for an open end and for one that is not known. */
export function capBody(cap: string): Body | null {
  const family = Object.keys(caps).find((id) => cap === id || cap.startsWith(`${id}-`));
  return family ? (caps[family] ?? null) : null;
}

const inline: Readonly<Record<string, readonly [number, number]>> = {
  screen: [0.1, 1.12],
  silencer: [1.6, 1.35],
  filter: [0.28, 1.12],
  'balancing-damper': [0.16, 1.12],
};

/** Half the length along the duct and half the height across it of a part in line, in halves of the duct's size: as drawn. */
export function inlineBody(kind: string): readonly [number, number] {
  return inline[kind] ?? [0.3, 1.12];
}
