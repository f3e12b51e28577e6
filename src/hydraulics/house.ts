import type { LossPart, NetworkEdge, NetworkNode } from './types.ts';

/** The room as a node of the network; outdoors is 0 Pa. */
export const ROOM = 'room';
export const OUTDOORS = 'outdoors';

export interface House {
  /** m3 */
  readonly volume: number;
  /** Air changes an hour at 50 Pa. */
  readonly ach50: number;
  readonly leakageExponent: number;
  /** Other exhaust running at the same time, m3/s. */
  readonly otherExhaust: number;
  readonly makeUpAir: MakeUpAir | null;
}

export type MakeUpAir =
  | { readonly kind: 'opening'; readonly area: number; readonly c?: number | undefined }
  | { readonly kind: 'fan'; readonly flow: number };

/** Loss coefficient of a plain make-up opening with a grille, on its free area: a discharge of 0.6. Common practice. */
export const OPENING_C = 1 / 0.6 ** 2;

/**
 * The house's leakage as `Q = C dp^n`, from a blower-door figure: `C = ACH50·V/3600/50^n`. n is 0.65
 * unless measured (from memory: ASTM E779 practice). Refuses nothing; give positive numbers.
 */
export function leakage(house: Pick<House, 'volume' | 'ach50' | 'leakageExponent'>): LossPart & {
  kind: 'power';
} {
  const q50 = (house.ach50 * house.volume) / 3600;
  return {
    kind: 'power',
    coefficient: q50 / 50 ** house.leakageExponent,
    exponent: house.leakageExponent,
  };
}

/** Leakage flow at a pressure difference, m3/s. */
export function leakageFlow(house: Pick<House, 'volume' | 'ach50' | 'leakageExponent'>, dp: number): number {
  const part = leakage(house);
  return part.coefficient * dp ** part.exponent;
}

/** The house between outdoors and the room: leakage, make-up opening, and the flows that fans force. */
export function houseElements(house: House): { room: NetworkNode; edges: NetworkEdge[] } {
  const edges: NetworkEdge[] = [{ id: 'house/leakage', from: OUTDOORS, to: ROOM, parts: [leakage(house)] }];
  const makeUp = house.makeUpAir;
  if (makeUp?.kind === 'opening')
    edges.push({
      id: 'house/make-up',
      from: OUTDOORS,
      to: ROOM,
      parts: [{ kind: 'local', c: makeUp.c ?? OPENING_C, area: makeUp.area }],
    });
  const supplied = makeUp?.kind === 'fan' ? makeUp.flow : 0;
  return { room: { id: ROOM, inflow: supplied - house.otherExhaust }, edges };
}

/**
 * The free area of a make-up opening that keeps the house within `limit` Pa below outdoors while `exhaust`
 * m3/s leaves, m2; 0 where leakage alone does. Orifice flow through `c` (default `OPENING_C`).
 */
export function makeUpOpening(
  house: House,
  exhaust: number,
  limit: number,
  density: number,
  c: number = OPENING_C,
): number {
  return makeUpFlow(house, exhaust, limit) / Math.sqrt((2 * limit) / (c * density));
}

/** Make-up air needed to stay within `limit` Pa below outdoors, m3/s; 0 where leakage alone does. */
export function makeUpFlow(house: House, exhaust: number, limit: number): number {
  return Math.max(0, exhaust + house.otherExhaust - leakageFlow(house, limit));
}
