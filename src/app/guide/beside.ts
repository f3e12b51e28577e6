import type { Place, Side } from './steps.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels between the marked thing and the card, and from the card to the window's edge. */
const GAP = 16;

/**
 * Where a card stands in a window without covering what it is about: on the side that is wished for, or the
 * first that has room; near the lower left corner where none has, or nothing is marked. px
 */
export function beside(
  place: Place | null,
  card: Size,
  window: Size,
  wished: Side = 'above',
): { left: number; top: number } {
  const within = (value: number, size: number, room: number) =>
    Math.max(GAP, Math.min(value, room - size - GAP));
  const corner = { left: 3 * GAP + 16, top: within(window.height, card.height, window.height - 140) };
  if (!place) return corner;
  const left = within(place.left + place.width - card.width, card.width, window.width);
  const top = within(place.top + place.height / 2 - card.height / 2, card.height, window.height);
  const spots = {
    above: { left, top: place.top - card.height - GAP },
    below: { left, top: place.top + place.height + GAP },
    right: { left: place.left + place.width + GAP, top },
    left: { left: place.left - card.width - GAP, top },
  };
  const fits = (spot: { left: number; top: number }) =>
    spot.left >= GAP / 2 &&
    spot.top >= GAP / 2 &&
    spot.left + card.width <= window.width - GAP / 2 &&
    spot.top + card.height <= window.height - GAP / 2;
  return [spots[wished], ...Object.values(spots)].find(fits) ?? corner;
}
