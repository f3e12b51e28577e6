import { words } from './index.ts';

/** Every caution in a line of its own. */
export function cautionLines(): string[] {
  return words.cautions.all.map(({ title, text }) => `${title} ${text}`);
}
