import type { InlinePart } from '../../graph/document.ts';
import { findInline, inlineParts } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';

/** Catalogue ids of the parts that can be put in line, in the catalogue's order. */
export const partKinds: readonly string[] = inlineParts.map(({ id }) => id);

/** What a part in line is called within a sentence: its own name, else the catalogue's. */
export function inlineName({ kind, name }: Pick<InlinePart, 'kind' | 'name'>): string {
  const row = findInline(kind)?.name ?? words.tools.part.unnamed;
  return name ?? row.charAt(0).toLowerCase() + row.slice(1);
}
