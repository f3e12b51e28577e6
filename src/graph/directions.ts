import { words } from '../words/index.ts';
import type { Vec3 } from './document.ts';
import { isVertical } from './inference/orientation.ts';
import { norm } from './vector.ts';

const says = words.route.directions;

/** A rise or fall below this counts as level, as its sine: 1°. */
const level = Math.sin(Math.PI / 180);

/**
 * A direction in words: "up", "down" within 5° of upright, else one of sixteen points of the compass,
 * and whether it slopes: "north", "east-northeast, sloping up". Empty for no direction.
 */
export function directionWords(direction: Vec3): string {
  const length = norm(direction);
  if (length === 0) return '';
  const rise = direction[2] / length;
  if (isVertical([direction[0] / length, direction[1] / length, rise])) return rise > 0 ? says.up : says.down;
  const sixteenth = Math.round((Math.atan2(direction[1], direction[0]) / Math.PI) * 8);
  const point = says.compass[(sixteenth + 16) % 16] as string;
  return Math.abs(rise) < level ? point : (rise > 0 ? says.slopingUp : says.slopingDown)(point);
}
