/** Octave-band centres, Hz, that every spectrum here runs over. */
export const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000, 8000] as const;

/**
 * A-weighting at the octave centres, dB. Source: IEC 61672-1, table of nominal frequency weightings
 * (from memory; the same figures stand in every acoustics handbook).
 */
export const A_WEIGHTING = [-26.2, -16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1] as const;

/** A level, or a spectrum over `OCTAVES`, in dB. */
export type Spectrum = readonly number[];

/** Levels in dB added on energy; -Infinity for none. */
export function addLevels(levels: readonly number[]): number {
  const energy = levels.reduce((sum, level) => sum + 10 ** (level / 10), 0);
  return 10 * Math.log10(energy);
}

/** The A-weighted level of a spectrum, dBA. */
export function aWeighted(spectrum: Spectrum): number {
  return addLevels(spectrum.map((level, i) => level + (A_WEIGHTING[i] ?? 0)));
}

/** Loudness in sone from loudness level in phon, above 40 phon. Source: Stevens, ISO 532 family. */
export function sonesFromPhon(phon: number): number {
  return phon >= 40 ? 2 ** ((phon - 40) / 10) : (phon / 40) ** 2.642;
}

/**
 * Sones from dBA by the rule that fan ratings are often converted with, dBA = 33.2 log10(sone) + 28;
 * a level in dBA is not a loudness level in phon, so this is a rule of its own, good to about 2 dB.
 * Source: from memory, AMCA-type rule of thumb.
 */
export function sonesFromDecibelA(level: number): number {
  return 10 ** ((level - 28) / 33.2);
}

/** The inverse of `sonesFromDecibelA`, dBA. */
export function decibelAFromSones(sones: number): number {
  return 33.2 * Math.log10(sones) + 28;
}
