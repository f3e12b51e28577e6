import type { Draft } from 'immer';
import type { Job, Scheme, Vec3 } from '../../../graph/document.ts';
import { changeNote, moveBlock, moveExit, moveNodes } from '../../../graph/edits/index.ts';
import { schemeOf } from '../../../graph/infer.ts';
import { sentence } from '../../../graph/places.ts';
import { project, type SheetId } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import type { BoardState, Selection } from '../../board.ts';
import { idsOf, itemsOf, single } from '../../selection.ts';
import { wordsFor } from './names.ts';

const says = words.tools.select;

/** Two nodes whose places on a sheet differ by less than this, m, are drawn as one. */
const ONE_SPOT = 1e-6;

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

/** What a move carries, and what undo calls it. */
export interface Load {
  readonly nodes: readonly string[];
  readonly blocks: readonly string[];
  readonly exits: readonly string[];
  readonly notes: readonly string[];
  readonly name: string;
}

/** What is carried when the selection is moved on a sheet. Parts and dimensions go with what they are on. */
export function loadOf({ job, schemeId, selection, ...rest }: BoardState, sheet: SheetId): Load {
  const scheme = schemeOf(job, schemeId);
  const nodes = movingNodes(scheme, selection, sheet);
  const [blocks, exits] = [idsOf(selection, 'block'), idsOf(selection, 'exit')];
  const notes = idsOf(selection, 'note').filter((id) =>
    job.sheetNotes?.some((note) => note.id === id && note.sheet === sheet),
  );
  const one = single(selection);
  const boxed = blocks.length + exits.length + notes.length;
  const name =
    boxed === 0
      ? nameOf(scheme, selection, nodes)
      : one
        ? wordsFor(one, { job, schemeId, selection, ...rest })
        : words.counts.things(nodes.length + boxed);
  return { nodes, blocks, exits, notes, name };
}

export function isEmptyLoad({ nodes, blocks, exits, notes }: Load): boolean {
  return nodes.length + blocks.length + exits.length + notes.length === 0;
}

/** Moves what is carried by `delta`, m in space. */
export function moveLoad(job: Draft<Job>, schemeId: string, load: Load, delta: Vec3): void {
  if (load.nodes.length > 0) moveNodes(job, schemeId, load.nodes, delta);
  for (const id of load.blocks) moveBlock(job, id, delta);
  for (const id of load.exits) moveExit(job, id, delta);
  for (const id of load.notes) {
    const note = job.sheetNotes?.find((each) => each.id === id);
    if (!note) continue;
    const by = project(delta, note.sheet);
    changeNote(job, id, { at: [note.at[0] + by.u, note.at[1] + by.v] });
  }
}

/** What is moved, as undo names it: "turn", "hood", "duct", "riser", "3 nodes". */
function nameOf(scheme: Scheme, selection: Selection, moving: readonly string[]): string {
  if (selection.nodes.length === 0 && selection.segments.length === 1) return says.names.duct;
  const [first, ...others] = selection.nodes;
  if (selection.segments.length > 0 || others.length > 0 || first === undefined)
    return words.counts.nodes(moving.length);
  if (moving.length > 1) return says.names.riser;
  const role = scheme.nodes.find(({ id }) => id === first)?.role;
  if (role !== 'turn') return role === undefined ? says.names.node : says.names[role];
  const legs = scheme.segments.filter(({ from, to }) => from === first || to === first).length;
  return legs < 2 ? says.names.openEnd : legs === 2 ? says.names.turn : says.names.junction;
}

/** "turn 2 of 4", "2 of 3 here", for several things under one pointer. */
export function oneOfSeveral(name: string, place: number, count: number): string {
  return count > 1 ? says.oneOfSeveral(name, place + 1, count) : name;
}

/** What has been selected of several that lie over one another, as a sentence that says how to go on. */
export function choseOf(name: string, place: number, count: number): string {
  return says.choseOf(sentence(name), place + 1, count);
}

/** How many things are selected, in words. */
export function countedSelection(selection: Selection): string {
  const count = itemsOf(selection).length;
  return says.selected(words.counts.things(count));
}
