import * as english from './en/index.ts';

/** Every text the program shows, by area: plain strings, and functions where something stands in the middle. */
export type Words = typeof english;

/** The texts of the language in use. */
export const words: Words = english;
