import { type Places, placesOf } from '../graph/places.ts';
import type { Route } from '../graph/route.ts';
import { words } from '../words/index.ts';

const says = words.sheets.places;

const known = new WeakMap<Route, Places>();

function placesIn(route: Route): Places {
  const places = known.get(route) ?? placesOf(route);
  known.set(route, places);
  return places;
}

/** Short enough for a row: "turn 2", "hood", "cap". */
export function nodeName(route: Route, id: string): string {
  return placesIn(route).short(id);
}

/** A duct by its ends, in the direction of the air: "hood to turn 1", "turns 1–2". */
export function segmentName(route: Route, id: string): string {
  const segment = route.segments.get(id);
  if (!segment) return says.duct;
  const { short, turnNumber } = placesIn(route);
  const [from, to] = [turnNumber(segment.from), turnNumber(segment.to)];
  return from !== null && to !== null
    ? says.turns(from, to)
    : says.fromTo(short(segment.from), short(segment.to));
}
