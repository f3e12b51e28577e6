import type { Section } from '../hydraulics/types.ts';
import { formatDiameter, type System } from '../units/index.ts';

/** A section as it is called across the counter: "8 in round", "3 1/4 in x 10 in". */
export function sectionWords(section: Section, units: System): string {
  if (section.shape === 'round') return `${formatDiameter(section.diameter, units)} round`;
  const sides = [section.width, section.height].sort((a, b) => a - b);
  const words = sides.map((side) => formatDiameter(side, units)).join(' x ');
  return section.shape === 'oval' ? `${words} oval` : words;
}
