import type { ScreenPoint } from '../graph/sheet.ts';
import { type Box, boxAt, type Candidate } from './label-place.ts';
import { MIN_TEXT } from './palette.ts';

/** Width of a text in px at the labels' size. */
export type Measure = (text: string) => number;

/** Height of a line of label text, px. */
export const lineHeight = MIN_TEXT + 4;

/** Leaders are for drawings of at most so many labelled legs: among more they would be a thicket. */
export const mostWithLeaders = 60;

/** A text's box on whole pixels around a place. */
export function textBox(centre: ScreenPoint, text: string, measure: Measure, padding = 3): Box {
  const box = boxAt(centre, Math.ceil(measure(text)) + 2 * padding, lineHeight);
  const [dx, dy] = [Math.round(box.minX) - box.minX, Math.round(box.minY) - box.minY];
  return { minX: box.minX + dx, minY: box.minY + dy, maxX: box.maxX + dx, maxY: box.maxY + dy };
}

/** How far a text's box reaches from its centre in a direction, px. */
export function extent(text: string, measure: Measure, direction: ScreenPoint): number {
  return (Math.abs(direction.x) * (measure(text) + 6) + Math.abs(direction.y) * lineHeight) / 2;
}

/** A place some pixels from another. */
export function off(at: ScreenPoint, direction: ScreenPoint, by: number): ScreenPoint {
  return { x: at.x + direction.x * by, y: at.y + direction.y * by };
}

/** A direction of length 1. */
export function unit(x: number, y: number): ScreenPoint {
  const length = Math.hypot(x, y) || 1;
  return { x: x / length, y: y / length };
}

/** A text at the end of a leader of `reach` px that goes away from what it is about. */
export function led(
  foot: ScreenPoint,
  away: ScreenPoint,
  reach: number,
  text: string,
  measure: Measure,
  cost: number,
): Candidate {
  const end = off(foot, away, reach);
  const [halfWidth, halfHeight] = [(measure(text) + 6) / 2, lineHeight / 2];
  // The leader ends at the nearer side of the text: at its left or right end, or under or over its middle.
  const sideways = Math.abs(away.x) > 0.3;
  const centre = sideways
    ? { x: end.x + Math.sign(away.x) * (halfWidth + 1), y: end.y }
    : { x: end.x, y: end.y + Math.sign(away.y) * (halfHeight + 1) };
  return { box: textBox(centre, text, measure), text, leader: [foot, end], cost };
}
