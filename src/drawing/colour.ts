import { scaleLinear } from 'd3-scale';
import { interpolateCividis } from 'd3-scale-chromatic';
import type { UnitSystem } from '../graph/document.ts';
import type { Solved, SpeedResult } from '../graph/solution.ts';
import { formatNumber, quantity, unitOf } from '../units/index.ts';

/** What the fill of a duct tells: its velocity, or its loss per metre. */
export type ColourBy = 'velocity' | 'loss';

/** A colour scale from 0 to a round number of the user's unit. */
export interface ColourScale {
  readonly by: ColourBy;
  /** `fpm`, `Pa/m`. */
  readonly unit: string;
  /** SI: m/s or Pa/m. */
  readonly max: number;
  readonly ticks: readonly ColourTick[];
}

export interface ColourTick {
  /** SI. */
  readonly value: number;
  /** Place along the scale, 0-1. */
  readonly share: number;
  readonly text: string;
}

export const kindOf = { velocity: 'velocity', loss: 'lossRate' } as const satisfies Record<ColourBy, string>;

/**
 * The end that a scale has at least, in the user's unit: past the advised velocities, and past the loss
 * of a well-sized run. So most jobs, and one job before and after a change, wear the same colours.
 */
const usual = {
  velocity: { imperial: 2000, metric: 10 },
  loss: { imperial: 0.5, metric: 4 },
} as const;

const roundEnds = [1, 1.5, 2, 3, 4, 5, 6, 8, 10];

/** The next round number at or above `value`: 1, 1.5, 2, 3, 4, 5, 6 or 8 times a power of ten. */
export function roundEnd(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const end = roundEnds.find((n) => n * power >= value * (1 - 1e-9)) ?? 10;
  return Number((end * power).toPrecision(12));
}

/** The scale for a set of SI values: from 0 to its usual end, or to the round number that covers them all. */
export function colourScale(values: Iterable<number>, by: ColourBy, units: UnitSystem): ColourScale {
  const kind = kindOf[by];
  const perSi = quantity(kind, 1, units).value;
  let top = 0;
  for (const value of values) if (Number.isFinite(value)) top = Math.max(top, Math.abs(value) * perSi);
  const end = Math.max(usual[by][units], top > 0 ? roundEnd(top) : 0);
  const ticks = scaleLinear([0, end], [0, 1]).ticks(4);
  const decimals = Math.max(0, ...ticks.map((t) => (String(t).split('.')[1] ?? '').length));
  return {
    by,
    unit: unitOf(kind, units),
    max: end / perSi,
    ticks: ticks.map((t) => ({ value: t / perSi, share: t / end, text: formatNumber(t, decimals) })),
  };
}

/** Steps of the scale, finer than a screen's colours tell apart. */
const steps = 255;
const cividis: readonly string[] = Array.from({ length: steps + 1 }, (_, i) => interpolateCividis(i / steps));

/** Cividis at an SI value; beyond the ends it stays at the end's colour. */
export function colourAt(scale: ColourScale, value: number): string {
  const share = Math.min(1, Math.max(0, Math.abs(value) / scale.max));
  return cividis[Math.round(share * steps)] ?? interpolateCividis(share);
}

/** Stops of a gradient along the scale, for a legend. */
export function legendStops(count: number): readonly { readonly share: number; readonly colour: string }[] {
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    return { share, colour: interpolateCividis(share) };
  });
}

/** Velocity or loss by segment id at a speed; empty where it has no solution. */
export function valuesOf(speed: SpeedResult | undefined, by: ColourBy): ReadonlyMap<string, number> {
  const solved: Solved | null = speed?.outcome.solved ? speed.outcome : null;
  const values = new Map<string, number>();
  for (const [id, result] of solved?.segments ?? [])
    values.set(id, by === 'velocity' ? result.velocity : result.lossPerMetre);
  return values;
}

/** Ink on the fills of the colour scale, whatever the theme: the better of the two reads at 4.5 to 1 on any colour. */
export const inkOnFill = { dark: '#000000', light: '#ffffff' } as const;

/** `dark` or `light`: which text reads on a colour of the form `rgb(r, g, b)`. */
export function textOn(colour: string): 'dark' | 'light' {
  const [r = 0, g = 0, b = 0] = (colour.match(/\d+/g) ?? []).map(Number);
  const linear = (c: number) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4);
  const luminance = 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  return luminance > 0.18 ? 'dark' : 'light';
}
