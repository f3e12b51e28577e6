import type { Section } from '../hydraulics/types.ts';
import { formatDiameter, type System } from '../units/index.ts';

/** A section as it is called across the counter: "8 in round", "3 1/4 in x 10 in". */
export function sectionWords(section: Section, units: System): string {
  if (section.shape === 'round') return `${formatDiameter(section.diameter, units)} round`;
  const sides = [section.width, section.height].sort((a, b) => a - b);
  const words = sides.map((side) => formatDiameter(side, units)).join(' x ');
  return section.shape === 'oval' ? `${words} oval` : words;
}

/** True where two sections are the same to a thousandth of a millimetre. */
export function sameSection(a: Section, b: Section): boolean {
  if (a.shape === 'round' || b.shape === 'round') {
    return a.shape === 'round' && b.shape === 'round' && near(a.diameter, b.diameter);
  }
  return a.shape === b.shape && near(a.width, b.width) && near(a.height, b.height);
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-6;
}
