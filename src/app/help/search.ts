import type { HelpBlock, HelpSection } from '../../words/en/help.ts';
import { stressed } from '../../words/strong.ts';

/** A text as it is compared: no marks, no accents, small letters. */
function plain(text: string): string {
  return stressed(text)
    .map((piece) => piece.text)
    .join('')
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase();
}

/** True where every word that was typed stands in the text, whole or as a beginning or part of one. */
export function holds(text: string, typed: string): boolean {
  const within = plain(text);
  return plain(typed)
    .split(/\s+/)
    .every((word) => within.includes(word));
}

/**
 * The sections that a search finds, each with the pieces that it is found in. A section whose title fits is
 * shown whole; an empty search gives everything.
 */
export function findHelp(sections: readonly HelpSection[], typed: string): readonly HelpSection[] {
  if (typed.trim() === '') return sections;
  return sections.flatMap((section) => {
    if (holds(section.title, typed)) return [section];
    const blocks = section.blocks.flatMap((block) => within(block, typed));
    return blocks.length > 0 ? [{ ...section, blocks }] : [];
  });
}

/** A piece, a list cut to the entries that fit. */
function within(block: HelpBlock, typed: string): HelpBlock[] {
  if ('text' in block) return block.kind !== 'heading' && holds(block.text, typed) ? [block] : [];
  const items = block.items.filter((item) => holds(item, typed));
  // An entry of a numbered list has its number from its place among all.
  return items.length > 0 ? [{ kind: 'list', items }] : [];
}
