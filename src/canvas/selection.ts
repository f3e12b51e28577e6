import type { Job } from '../graph/document.ts';
import { nothing, type Selection } from './board.ts';

/** What can be selected, and the list of a selection that holds its ids. */
export const listOf = {
  node: 'nodes',
  segment: 'segments',
  part: 'parts',
  block: 'blocks',
  exit: 'exits',
  note: 'notes',
  dimension: 'dimensions',
} as const satisfies Record<string, keyof Selection>;

export type ItemKind = keyof typeof listOf;

export interface Item {
  readonly kind: ItemKind;
  readonly id: string;
}

const kinds = Object.keys(listOf) as ItemKind[];

export function idsOf(selection: Selection, kind: ItemKind): readonly string[] {
  return selection[listOf[kind]] ?? [];
}

/** A selection from the ids of each kind; kinds with none have no list, but for nodes and segments. */
export function selectionOf(ids: (kind: ItemKind) => readonly string[]): Selection {
  const made = Object.fromEntries(
    kinds.flatMap((kind) => {
      const list = ids(kind);
      return list.length > 0 || kind === 'node' || kind === 'segment' ? [[listOf[kind], list]] : [];
    }),
  );
  return { ...nothing, ...made };
}

export function only(item: Item): Selection {
  return selectionOf((kind) => (kind === item.kind ? [item.id] : []));
}

export function has(selection: Selection, { kind, id }: Item): boolean {
  return idsOf(selection, kind).includes(id);
}

export function toggled(selection: Selection, item: Item): Selection {
  if (!has(selection, item)) return joined(selection, only(item));
  return selectionOf((kind) =>
    kind === item.kind ? idsOf(selection, kind).filter((id) => id !== item.id) : idsOf(selection, kind),
  );
}

export function joined(a: Selection, b: Selection): Selection {
  return selectionOf((kind) => [...new Set([...idsOf(a, kind), ...idsOf(b, kind)])]);
}

export function sameSelection(a: Selection, b: Selection): boolean {
  return kinds.every((kind) => {
    const [x, y] = [idsOf(a, kind), idsOf(b, kind)];
    return x.length === y.length && x.every((id, i) => id === y[i]);
  });
}

/** Everything in a selection, kind by kind. */
export function itemsOf(selection: Selection): Item[] {
  return kinds.flatMap((kind) => idsOf(selection, kind).map((id) => ({ kind, id })));
}

export function isEmpty(selection: Selection): boolean {
  return kinds.every((kind) => idsOf(selection, kind).length === 0);
}

/** The one thing selected, where it is one. */
export function single(selection: Selection): Item | undefined {
  const [first, ...others] = itemsOf(selection);
  return others.length === 0 ? first : undefined;
}

/** What of a selection a document still has; the very selection where that is all of it. */
export function surviving(selection: Selection, job: Job, schemeId: string): Selection {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  const lists: Record<ItemKind, readonly { readonly id: string }[]> = {
    node: scheme?.nodes ?? [],
    segment: scheme?.segments ?? [],
    part: [],
    block: job.blocks,
    exit: job.exits,
    note: job.sheetNotes ?? [],
    dimension: scheme?.dimensions ?? [],
  };
  const there = ({ kind, id }: Item) => {
    if (kind !== 'part') return lists[kind].some((each) => each.id === id);
    const { segment, index } = partOf(id);
    return scheme?.segments.find((each) => each.id === segment)?.fittings?.[index] !== undefined;
  };
  const kept = selectionOf((kind) => idsOf(selection, kind).filter((id) => there({ kind, id })));
  if (sameSelection(kept, selection)) return selection;
  return isEmpty(kept) ? nothing : kept;
}

/** A part in line goes by its segment and its place among the segment's parts. */
export function partId(segment: string, index: number): string {
  return `${segment}/${index}`;
}

export function partOf(id: string): { readonly segment: string; readonly index: number } {
  const slash = id.lastIndexOf('/');
  return { segment: id.slice(0, slash), index: Number(id.slice(slash + 1)) };
}
