import type { Vec3 } from '../graph/document.ts';
import { cross } from '../graph/vector.ts';
import { formatAngle } from '../units/index.ts';
import { words } from '../words/index.ts';
import type { View } from './view.ts';

/** From where the drawing is looked at, degrees: round the plumb line from the south towards the east, and above the floor. */
export interface Turn {
  readonly azimuth: number;
  readonly elevation: number;
}

/** The isometric itself: from the south-east, all three axes foreshortened alike, by √(2/3). */
export const isometric: Turn = { azimuth: 45, elevation: (Math.atan(Math.SQRT1_2) * 180) / Math.PI };

/** Straight down or up the picture would have no upright left to turn about. */
const steepest = 89;

/** Degrees that the picture turns for a pixel of a drag: half a turn across a usual sheet. */
const perPixel = 0.4;

/** Turned by degrees; the azimuth wraps round, the elevation stops short of the plumb line. */
export function turnedBy(turn: Turn, azimuth: number, elevation: number): Turn {
  const round = (((turn.azimuth + azimuth) % 360) + 360) % 360;
  return { azimuth: round, elevation: Math.max(-steepest, Math.min(steepest, turn.elevation + elevation)) };
}

/** Turned as if the drawing were taken hold of and dragged by pixels. */
export function draggedBy(turn: Turn, dx: number, dy: number): Turn {
  return turnedBy(turn, -dx * perPixel, dy * perPixel);
}

/** The directions of a turned picture in space. It is a parallel projection, so equal lengths that run alike look alike. */
export function turnedView({ azimuth, elevation }: Turn): View {
  const [a, e] = [(azimuth * Math.PI) / 180, (elevation * Math.PI) / 180];
  const right: Vec3 = [Math.cos(a), Math.sin(a), 0];
  const toward: Vec3 = [Math.sin(a) * Math.cos(e), -Math.cos(a) * Math.cos(e), Math.sin(e)];
  return { right, up: cross(toward, right), toward, solid: true };
}

const says = words.sheets.turned;
const { sides } = says;

/** By the azimuth, in steps of 45°. */
const compass = [
  sides.south,
  sides.southEast,
  sides.east,
  sides.northEast,
  sides.north,
  sides.northWest,
  sides.west,
  sides.southWest,
];

/** Where the viewer stands, in words: `from the south-east, 35° above`. */
export function turnText({ azimuth, elevation }: Turn): string {
  const degrees = Math.round(Math.abs(elevation));
  const angle = formatAngle(degrees);
  const height = degrees === 0 ? says.level : elevation > 0 ? says.above(angle) : says.below(angle);
  return says.from(compass[Math.round(azimuth / 45) % 8] ?? '', height);
}
