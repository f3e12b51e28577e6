import * as english from './en/index.ts';

/** Every text the program shows, by area: plain strings, and functions where something stands in the middle. */
export type Words = typeof english;

/** The language of the texts before another is chosen, and the one that is always whole. */
const firstLanguage = 'en';

/** The texts of the language in use. Modules may keep parts of it: the language is chosen before they load. */
export let words: Words = english;

/** The language in use, as a BCP 47 tag. */
export let language: string = firstLanguage;

/**
 * Translations by BCP 47 tag, each loaded when it is chosen. `en-XA` is the pseudo-language that shows which
 * texts cannot be translated yet and where longer ones break the layout; only tests ask for it.
 */
const translations: Readonly<Record<string, () => Promise<Words>>> = {
  'en-XA': async () => (await import('./pseudo.ts')).pseudo(english),
};

/**
 * The first of the wished languages that there are texts in, else English. `de-AT` is served by `de`
 * where there is nothing nearer.
 */
export function spoken(wishes: readonly string[]): string {
  const known = [firstLanguage, ...Object.keys(translations)];
  for (const wish of wishes) {
    const near = [wish, wish.split('-')[0]].map((tag) => known.find((one) => one === tag));
    const found = near.find((tag) => tag !== undefined);
    if (found) return found;
  }
  return firstLanguage;
}

/** Takes a language into use. To be awaited before any module loads that shows a text. */
export async function speak(tag: string): Promise<void> {
  const load = translations[tag];
  words = load ? await load() : english;
  language = load ? tag : firstLanguage;
}
