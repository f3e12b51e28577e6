import { type Forms, pluralsOf } from '../plural.ts';

/** The form that goes with a count: "turn" with 1, "turns" with any other. */
export const plural = pluralsOf('en');

/** A whole count and its noun: "1 turn", "3 turns". */
export const counted = (count: number, forms: Forms): string => `${count} ${plural(count, forms)}`;
