import { A_WEIGHTING, aWeighted, OCTAVES, type Spectrum } from './decibel.ts';
import { keepingLast } from './keep.ts';

export type SoundCause = 'fan' | 'straight duct' | 'bend' | 'damper' | 'cap' | 'transition' | 'other fitting';

/** How far an estimate of sound may be off, dB; it ranks routes. */
export const SOUND_UNCERTAINTY = 5;

/** Sound power of a source, dB re 1 pW: its overall power, and by octave how far each is from that. */
export interface SoundPower {
  readonly overall: number;
  readonly shape: Spectrum;
}

/** The duct between a source and an opening. */
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
 * Flow noise by octave relative to its overall power, dB: `-2 - 26 log10(1.14 + 0.02 f/V)`, V from 0.5 m/s up.
 * Source: VDI 2081, from memory. Along a run air mostly goes on as fast as it came, so the last shape is kept.
 */
export function flowNoiseShape(velocity: number): Spectrum {
  return shapeAt(Math.max(velocity, 0.5));
}

const shapeAt = keepingLast(1, (v: number) =>
  OCTAVES.map((f) => -2 - 26 * Math.log10(1.14 + (0.02 * f) / v)),
);

/** Octave corrections of a forward-curved centrifugal fan. Source: published handbook table (Beranek form). */
export const FAN_OCTAVES = [-2, -6, -13, -18, -19, -22, -25, -30] as const;

/**
 * A fan's sound power: `40 + 10 log10 Q + 20 log10 p`, Q in m3/s and p in Pa, with the octave corrections of a
 * forward-curved centrifugal fan. Source: Beranek form as printed in an engineering handbook; ±4 dB by itself.
 */
export function fanPower(flow: number, pressure: number): SoundPower {
  const overall = 40 + 10 * Math.log10(Math.max(flow, 1e-6)) + 20 * Math.log10(Math.max(pressure, 1e-3));
  return { overall, shape: FAN_OCTAVES };
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
export const ROOM_EFFECT = 10 * Math.log10(2 / (4 * Math.PI * COOK_DISTANCE ** 2) + 4 / ROOM_CONSTANT);

/** Sound power at the cap to sound pressure beneath it, dB, free field over a half sphere. */
export const OUTDOOR_EFFECT = 10 * Math.log10(2 / (4 * Math.PI * OUTSIDE_DISTANCE ** 2));

/** What the places are taken to be, as a sentence that stands beside the levels. */
export const PLACES = `Heard ${COOK_DISTANCE} m from the hood in a kitchen of ${ROOM_CONSTANT} m² absorption, and ${OUTSIDE_DISTANCE} m from the cap in the open.`;

/** Attenuation of bare round sheet metal by octave, dB/m, up to 180 mm and above. */
export const NARROW_DUCT = [0.1, 0.1, 0.16, 0.16, 0.33, 0.33, 0.33, 0.33] as const;
export const WIDE_DUCT = [0.1, 0.1, 0.1, 0.16, 0.23, 0.23, 0.23, 0.23] as const;
const NARROW = 0.18;

/** What one bare round bend takes, dB, by frequency times diameter, Hz·m (1.9, 3.8 and 7.5 kHz·in). */
function bendLoss(frequency: number, diameter: number): number {
  const reach = frequency * diameter;
  if (reach < 48.3) return 0;
  if (reach < 96.5) return 1;
  return reach < 190.5 ? 2 : 3;
}

/**
 * What a bare duct takes from sound on its way to an opening, dB by octave: 0.1 dB/m low to 0.3 dB/m high for round
 * sheet metal, 0 to 3 dB a bend by frequency times diameter, and the reflection at the open end,
 * `10 log10(1 + (0.7 c0/(π f d))²)`. Source: from memory, ASHRAE Applications, Sound and Vibration Control.
 * A run has two openings, so what belongs to them is kept.
 */
const wayTo = keepingLast(2, (opening: number) => {
  const d = Math.max(opening, 0.05);
  return {
    perMetre: d <= NARROW ? NARROW_DUCT : WIDE_DUCT,
    perBend: OCTAVES.map((f) => bendLoss(f, d)),
    end: OCTAVES.map((f) => 10 * Math.log10(1 + ((0.7 * 343) / (Math.PI * f * d)) ** 2)),
  };
});

/**
 * A source's share of what is heard at the cook's head, or outside beneath the cap: A-weighted energy, whose
 * `10 log10` is dBA. Without a path it sounds straight into the open there.
 */
export function heardEnergy(
  { overall, shape }: SoundPower,
  place: 'cook' | 'outside',
  path: DuctPath | null,
): number {
  const here = overall + (place === 'cook' ? ROOM_EFFECT : OUTDOOR_EFFECT);
  const way = path && wayTo(path.opening);
  let energy = 0;
  for (let i = 0; i < OCTAVES.length; i++) {
    const lost =
      path && way
        ? (way.perMetre[i] as number) * path.length +
          (way.perBend[i] as number) * path.bends +
          (way.end[i] as number)
        : 0;
    const level = here + (shape[i] as number) - lost + (A_WEIGHTING[i] as number);
    energy += Math.exp(TENTH_LOG * level);
  }
  return energy;
}

/**
 * Sound power of a fan of which only a rated dBA at the cook's head is known, with no duct between: the shape of
 * `fanPower`, so high that its A-weighted level there is `level`.
 */
export function fanHeardAt(level: number): SoundPower {
  return { overall: level - aWeighted(FAN_OCTAVES) - ROOM_EFFECT, shape: FAN_OCTAVES };
}

/** `10^(x/10)` is `e^(x ln 10 / 10)`. */
const TENTH_LOG = Math.LN10 / 10;

/** Everything heard at one place, with the breakdown by cause, in dBA; from each source's {@link heardEnergy}. */
export function combine(
  sources: readonly { readonly cause: SoundCause }[],
  energies: readonly number[],
): {
  level: number;
  byCause: ReadonlyMap<SoundCause, number>;
} {
  const sums = new Map<SoundCause, number>();
  let whole = 0;
  sources.forEach(({ cause }, i) => {
    const energy = energies[i] ?? 0;
    whole += energy;
    sums.set(cause, (sums.get(cause) ?? 0) + energy);
  });
  const byCause = new Map([...sums].map(([cause, energy]) => [cause, 10 * Math.log10(energy)]));
  return { level: 10 * Math.log10(whole), byCause };
}
