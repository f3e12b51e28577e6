import { addSpectra, aWeighted, OCTAVES, type Spectrum } from './decibel.ts';
import type { Provenance } from './types.ts';

export type SoundCause = 'fan' | 'straight duct' | 'bend' | 'damper' | 'cap' | 'transition' | 'other fitting';

/** A source of sound in the run: its power and how far it is from both ends. */
export interface SoundSource {
  readonly cause: SoundCause;
  readonly label: string;
  /** Node or segment id. */
  readonly at: string;
  /** Sound power, dB re 1 pW, by octave. */
  readonly power: Spectrum;
  /** Duct length and number of bends towards the cook and towards the outside. */
  readonly toCook: DuctPath;
  readonly toOutside: DuctPath;
  readonly provenance: Provenance;
}

export interface DuctPath {
  readonly length: number;
  readonly bends: number;
  /** Diameter (or hydraulic diameter) of the opening that it leaves by, m. */
  readonly opening: number;
}

/**
 * Sound power that air makes in straight duct, dB re 1 pW: `10 + 50 log10 V + 10 log10 A`, V in m/s and
 * A in m2. Source: handbook form of VDI 2081 with its printed constant 10 (the standard's own constant
 * is recalled as 7; the larger one is followed).
 */
export function straightDuctPower(velocity: number, area: number): number {
  return 10 + 50 * Math.log10(Math.max(velocity, 1e-3)) + 10 * Math.log10(area);
}

/**
 * Sound power of an obstacle in the flow, dB re 1 pW: `10 + 60 log10 V + 30 log10 C + 10 log10 A`, with
 * C on V. It rises at 60 log V and falls away for a fitting that costs little. Source: from memory, the
 * form used for the self-noise of outlets in air-conditioning acoustics.
 */
export function fittingPower(velocity: number, c: number, area: number): number {
  const loss = Math.max(Math.abs(c), 1e-3);
  return 10 + 60 * Math.log10(Math.max(velocity, 1e-3)) + 30 * Math.log10(loss) + 10 * Math.log10(area);
}

/**
 * Flow noise by octave from its overall power: `-2 - 26 log10(1.14 + 0.02 f/V)` relative to the overall
 * level. Source: VDI 2081, from memory.
 */
export function flowNoiseSpectrum(overall: number, velocity: number): Spectrum {
  const v = Math.max(velocity, 0.5);
  return OCTAVES.map((f) => overall - 2 - 26 * Math.log10(1.14 + (0.02 * f) / v));
}

/** Octave corrections of a forward-curved centrifugal fan. Source: published handbook table (Beranek form). */
const FAN_OCTAVES = [-2, -6, -13, -18, -19, -22, -25, -30] as const;

/**
 * A fan's sound power by octave, dB re 1 pW: `40 + 10 log10 Q + 20 log10 p`, Q in m3/s and p in Pa, with
 * the octave corrections of a forward-curved centrifugal fan. Source: Beranek form as printed in an
 * engineering handbook; ±4 dB by itself.
 */
export function fanPower(flow: number, pressure: number): Spectrum {
  const overall = 40 + 10 * Math.log10(Math.max(flow, 1e-6)) + 20 * Math.log10(Math.max(pressure, 1e-3));
  return FAN_OCTAVES.map((d) => overall + d);
}

/** Level change of one fan from its rated point to where it works, dB: `10 log10 Q/Qr + 20 log10 p/pr`. */
export function fanShift(
  rated: { flow: number; pressure: number },
  works: { flow: number; pressure: number },
): number {
  return 10 * Math.log10(works.flow / rated.flow) + 20 * Math.log10(works.pressure / rated.pressure);
}

/** Absorption of an ordinary furnished kitchen, m2: an assumption that is shown with the result. */
const ROOM_CONSTANT = 15;
/** From the hood's face to the cook's head, m. */
const COOK_DISTANCE = 0.9;
/** From the cap to a listener beneath it, m. */
const OUTSIDE_DISTANCE = 1.5;

/** Sound power in the hood to sound pressure at the cook's head, dB, on a wall (Q = 2). */
function roomEffect(): number {
  return 10 * Math.log10(2 / (4 * Math.PI * COOK_DISTANCE ** 2) + 4 / ROOM_CONSTANT);
}

/** Sound power at the cap to sound pressure beneath it, dB, free field over a half sphere. */
function outdoorEffect(): number {
  return 10 * Math.log10(2 / (4 * Math.PI * OUTSIDE_DISTANCE ** 2));
}

/**
 * What a bare duct takes from sound on its way, dB by octave: 0.1 dB/m low to 0.3 dB/m high for round
 * sheet metal, 1 to 3 dB a bend at the high octaves, and the reflection at the open end,
 * `10 log10(1 + (0.7 c0/(π f d))²)`. Source: from memory, ASHRAE Applications, Sound and Vibration Control.
 */
function pathLoss(path: DuctPath): Spectrum {
  const perMetre = [0.1, 0.1, 0.16, 0.16, 0.33, 0.33, 0.33, 0.33];
  const perBend = [0, 0, 0, 0, 1, 2, 3, 3];
  return OCTAVES.map((f, i) => {
    const end = 10 * Math.log10(1 + ((0.7 * 343) / (Math.PI * f * Math.max(path.opening, 0.05))) ** 2);
    return (perMetre[i] ?? 0) * path.length + (perBend[i] ?? 0) * path.bends + end;
  });
}

const minus = (a: Spectrum, b: Spectrum): Spectrum => a.map((x, i) => x - (b[i] ?? 0));
const plus = (a: Spectrum, d: number): Spectrum => a.map((x) => x + d);

/** A source's share at the cook's head and outside beneath the cap, dB by octave. */
export function heard(source: SoundSource): { cook: Spectrum; outside: Spectrum } {
  return {
    cook: plus(minus(source.power, pathLoss(source.toCook)), roomEffect()),
    outside: plus(minus(source.power, pathLoss(source.toOutside)), outdoorEffect()),
  };
}

/**
 * The octave spectrum of a fan at the cook's head when only a rated dBA is known: the spectrum of
 * `fanPower` moved so that its A-weighted level is `level`.
 */
export function fanAtCook(level: number): Spectrum {
  const shape = fanPower(0.2, 100);
  return plus(shape, level - aWeighted(shape));
}

/** Everything heard at one place, with the breakdown by cause in dBA. */
export function combine(parts: readonly { cause: SoundCause; spectrum: Spectrum }[]): {
  level: number;
  byCause: ReadonlyMap<SoundCause, number>;
} {
  const causes = new Map<SoundCause, Spectrum[]>();
  for (const part of parts) causes.set(part.cause, [...(causes.get(part.cause) ?? []), part.spectrum]);
  const byCause = new Map([...causes].map(([cause, spectra]) => [cause, aWeighted(addSpectra(spectra))]));
  return { level: aWeighted(addSpectra(parts.map((p) => p.spectrum))), byCause };
}
