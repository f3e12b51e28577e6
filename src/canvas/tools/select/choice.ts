import type { Scheme } from '../../../graph/document.ts';
import { project, type SheetId } from '../../../graph/sheet.ts';
import type { Selection } from '../../board.ts';

export interface Item {
  readonly kind: 'node' | 'segment';
  readonly id: string;
}

/** Two nodes whose places on a sheet differ by less than this, m, are drawn as one. */
const ONE_SPOT = 1e-6;

export function only({ kind, id }: Item): Selection {
  return kind === 'node' ? { nodes: [id], segments: [] } : { nodes: [], segments: [id] };
}

export function has(selection: Selection, { kind, id }: Item): boolean {
  return (kind === 'node' ? selection.nodes : selection.segments).includes(id);
}

export function toggled(selection: Selection, item: Item): Selection {
  if (!has(selection, item)) return joined(selection, only(item));
  const without = (ids: readonly string[]) => ids.filter((id) => id !== item.id);
  return item.kind === 'node'
    ? { ...selection, nodes: without(selection.nodes) }
    : { ...selection, segments: without(selection.segments) };
}

export function joined(a: Selection, b: Selection): Selection {
  return {
    nodes: [...new Set([...a.nodes, ...b.nodes])],
    segments: [...new Set([...a.segments, ...b.segments])],
  };
}

export function sameSelection(a: Selection, b: Selection): boolean {
  const same = (x: readonly string[], y: readonly string[]) =>
    x.length === y.length && x.every((id, i) => id === y[i]);
  return same(a.nodes, b.nodes) && same(a.segments, b.segments);
}

export function isEmpty({ nodes, segments }: Selection): boolean {
  return nodes.length + segments.length === 0;
}

/**
 * The nodes that move with a selection on a sheet: those chosen, the ends of chosen legs, and all that
 * hang on them by legs along the line of sight, so that what is drawn as one riser stays one.
 */
export function movingNodes(scheme: Scheme, selection: Selection, sheet: SheetId): string[] {
  const moving = new Set(selection.nodes);
  for (const { id, from, to } of scheme.segments)
    if (selection.segments.includes(id)) moving.add(from).add(to);
  const places = new Map(scheme.nodes.map(({ id, at }) => [id, project(at, sheet)]));
  const risers = scheme.segments.filter(({ from, to }) => {
    const [a, b] = [places.get(from), places.get(to)];
    return a && b && Math.hypot(a.u - b.u, a.v - b.v) < ONE_SPOT;
  });
  for (let size = -1; size !== moving.size; ) {
    size = moving.size;
    for (const { from, to } of risers) if (moving.has(from) || moving.has(to)) moving.add(from).add(to);
  }
  return scheme.nodes.filter(({ id }) => moving.has(id)).map(({ id }) => id);
}

/** What is moved, as undo names it: "turn", "hood", "duct", "riser", "3 nodes". */
export function nameOf(scheme: Scheme, selection: Selection, moving: readonly string[]): string {
  if (selection.nodes.length === 0 && selection.segments.length === 1) return 'duct';
  const [first, ...others] = selection.nodes;
  if (selection.segments.length > 0 || others.length > 0 || first === undefined)
    return `${moving.length} nodes`;
  if (moving.length > 1) return 'riser';
  const role = scheme.nodes.find(({ id }) => id === first)?.role;
  if (role !== 'turn') return role ?? 'node';
  const legs = scheme.segments.filter(({ from, to }) => from === first || to === first).length;
  return legs < 2 ? 'open end' : legs === 2 ? 'turn' : 'junction';
}
