import type { Section } from '../hydraulics/types.ts';
import { formatDiameter, type System } from '../units/index.ts';
import { words } from '../words/index.ts';

const says = words.route.sections;

/** A section as it is called across the counter: "8 in round", "3 1/4 in x 10 in". */
export function sectionWords(section: Section, units: System): string {
  if (section.shape === 'round') return says.round(formatDiameter(section.diameter, units));
  const sides = [section.width, section.height].sort((a, b) => a - b);
  const [short = '', long = ''] = sides.map((side) => formatDiameter(side, units));
  return section.shape === 'oval' ? says.oval(short, long) : says.rectangular(short, long);
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
