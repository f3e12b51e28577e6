import type { Section } from './types.ts';

/** The two sides of a flat oval, longest first, whichever way round they were given. */
function ovalSides(width: number, height: number): [number, number] {
  return width >= height ? [width, height] : [height, width];
}

/**
 * Inside area of a duct, m2.
 *
 * A flat oval is two half circles of the minor axis joined by straights, so its area is
 * `π b²/4 + b (a - b)`. Source: plane geometry.
 */
export function area(section: Section): number {
  switch (section.shape) {
    case 'round':
      return (Math.PI / 4) * section.diameter * section.diameter;
    case 'rectangular':
      return section.width * section.height;
    case 'oval': {
      const [major, minor] = ovalSides(section.width, section.height);
      return (Math.PI / 4) * minor * minor + minor * (major - minor);
    }
  }
}

/** Inside perimeter of a duct, m. Source: plane geometry. */
export function perimeter(section: Section): number {
  switch (section.shape) {
    case 'round':
      return Math.PI * section.diameter;
    case 'rectangular':
      return 2 * (section.width + section.height);
    case 'oval': {
      const [major, minor] = ovalSides(section.width, section.height);
      return Math.PI * minor + 2 * (major - minor);
    }
  }
}

/** Hydraulic diameter `4A/P`, m: the diameter of a round duct, the side of a square one. */
export function hydraulicDiameter(section: Section): number {
  return section.shape === 'round' ? section.diameter : (4 * area(section)) / perimeter(section);
}
