import { placesOf } from '../places.ts';
import type { Finding } from '../route.ts';
import { caps, ductInGrease, leaks, whereItEnds } from './cautions.ts';
import { crossings } from './crossings.ts';
import { type Drawing, gravestFirst, type Rule } from './drawing.ts';
import { bendsThatDoNotFit, partsBeyondTheEnd, smallerThanCollar, unknownParts } from './fit.ts';
import { brokenLegs, capsInTheRun, ends, loops, loosePieces, noHood } from './whole.ts';

const rules: readonly Rule[] = [
  noHood,
  brokenLegs,
  loosePieces,
  ends,
  capsInTheRun,
  loops,
  crossings,
  bendsThatDoNotFit,
  smallerThanCollar,
  partsBeyondTheEnd,
  unknownParts,
  caps,
  ductInGrease,
  leaks,
  whereItEnds,
];

/** Everything the drawing itself shows to be wrong or worth saying, gravest first. */
export function drawingFindings(drawing: Omit<Drawing, 'places'>): readonly Finding[] {
  const full: Drawing = { ...drawing, places: placesOf(drawing.route, drawing.blocks) };
  return gravestFirst(rules.flatMap((rule) => rule(full)));
}
