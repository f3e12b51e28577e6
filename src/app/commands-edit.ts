import { type BoardState, nothing, type Selection } from '../canvas/board.ts';
import { isEmpty } from '../canvas/selection.ts';
import { deleteSelected } from '../canvas/tools/select/delete.ts';
import type { Scheme, Vec3 } from '../graph/document.ts';
import {
  alignSelection,
  duplicateSelection,
  mirrorSelection,
  reverseRun,
  rotateSelection,
} from '../graph/edits/index.ts';
import { schemeOf } from '../graph/infer.ts';
import { stretchFrom } from '../graph/stretch.ts';
import { words } from '../words/index.ts';
import { copySelection, cutSelection, pasteAny } from './clipboard.ts';
import { type App, type Command, command, edit, keysOf } from './command.ts';

const says = words.commands.edit;

const hasSelection = ({ selection }: BoardState) => !isEmpty(selection);

/** What can be copied, mirrored and turned: nodes, ducts and blocks of the room. */
const hasThings = ({ selection }: BoardState) =>
  selection.nodes.length + selection.segments.length + (selection.blocks?.length ?? 0) > 0;

/** The nodes of a selection, the ends of its ducts included. */
function chosenNodes(scheme: Scheme, selection: Selection) {
  const ids = new Set(selection.nodes);
  for (const { id, from, to } of scheme.segments) if (selection.segments.includes(id)) ids.add(from).add(to);
  return scheme.nodes.filter(({ id }) => ids.has(id));
}

const hasSeveral = ({ job, schemeId, selection }: BoardState) =>
  chosenNodes(schemeOf(job, schemeId), selection).length > 1;

/** What a turn or a mirror keeps in its place: the hood where one is selected, else the middle. */
function pivot({ job, schemeId, selection }: BoardState): Vec3 {
  const nodes = chosenNodes(schemeOf(job, schemeId), selection);
  const hoods = nodes.filter(({ role }) => role === 'hood');
  const corners = job.blocks
    .filter(({ id }) => selection.blocks?.includes(id))
    .flatMap(({ min, max }) => [min, max]);
  const places = hoods.length > 0 ? hoods.map(({ at }) => at) : [...nodes.map(({ at }) => at), ...corners];
  const middle = (axis: 0 | 1 | 2) => {
    const along = places.map((at) => at[axis]);
    return (Math.min(...along) + Math.max(...along)) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}

const mirror = (axis: 0 | 1, label: string) =>
  edit(label, (state) => {
    const about = pivot(state)[axis];
    return (job) => mirrorSelection(job, state.schemeId, state.selection, axis, about);
  });

const align = (axis: 0 | 1 | 2, mode: 'low' | 'high') =>
  edit(words.edits.route.lineUp, ({ schemeId, selection }) => (job) => {
    alignSelection(job, schemeId, selection, axis, mode);
  });

/** The duct that a command about a run starts from: the one selected, or one that meets the node selected. */
function startOf({ selection, solution }: BoardState): string | undefined {
  const [segment] = selection.segments;
  const [node] = selection.nodes;
  if (segment !== undefined) return segment;
  return node === undefined ? undefined : solution.route.nodes.get(node)?.segments[0];
}

const onRun = (state: BoardState) => startOf(state) !== undefined;

function selectRun({ board, say }: App): void {
  const state = board.getState();
  const start = startOf(state);
  if (start === undefined) return;
  const { route } = state.solution;
  const segments = stretchFrom(route, start, 'run');
  const nodes = new Set(
    segments.flatMap((id) => {
      const leg = route.segments.get(id);
      return leg ? [leg.from, leg.to] : [];
    }),
  );
  board.set({ tool: 'select', selection: { nodes: [...nodes], segments } });
  say(says.selectRun.done(segments.length));
}

/** A copy stands this far off, m east and south. */
const BESIDE: Vec3 = [0.3048, -0.3048, 0];

function duplicate({ board, say }: App): void {
  const { schemeId, selection } = board.getState();
  let made: Selection | null = null;
  board.dispatch(words.edits.route.duplicate, (job) => {
    made = duplicateSelection(job, schemeId, selection, BESIDE);
  });
  if (made) board.set({ selection: made });
  say(made ? says.duplicate.done : says.duplicate.refused);
}

/** Undo and what is done to a selection. */
export const editCommands: readonly Command[] = [
  command(
    'edit.undo',
    'edit',
    ({ undoLabel }) => (undoLabel ? says.undo.what(undoLabel) : says.undo.title),
    ({ board, say }) => {
      const { undoLabel } = board.getState();
      board.undo();
      if (undoLabel !== null) say(says.undo.done(undoLabel));
    },
    { shortcuts: ['Mod+z'], also: says.undo.also, enabled: (state) => state.undoLabel !== null },
  ),
  command(
    'edit.redo',
    'edit',
    ({ redoLabel }) => (redoLabel ? says.redo.what(redoLabel) : says.redo.title),
    ({ board, say }) => {
      const { redoLabel } = board.getState();
      board.redo();
      if (redoLabel !== null) say(says.redo.done(redoLabel));
    },
    {
      shortcuts: ['Mod+Shift+z', 'Mod+y'],
      also: says.redo.also,
      enabled: (state) => state.redoLabel !== null,
    },
  ),
  command('edit.steps', 'edit', says.steps.title, ({ ui }) => ui.setState({ steps: true }), {
    also: says.steps.also,
    enabled: (state) => state.undoLabel !== null || state.redoLabel !== null,
  }),
  command('edit.cut', 'edit', says.cut.title, cutSelection, {
    shortcuts: ['Mod+x'],
    also: says.cut.also,
    enabled: hasThings,
  }),
  command('edit.copy', 'edit', says.copy.title, (app) => void copySelection(app), {
    shortcuts: ['Mod+c'],
    also: says.copy.also,
    enabled: hasThings,
  }),
  command('edit.paste', 'edit', says.paste.title, (app) => void pasteAny(app), {
    shortcuts: ['Mod+v'],
    also: says.paste.also,
    byBrowser: true,
  }),
  command('edit.duplicate', 'edit', says.duplicate.title, duplicate, {
    shortcuts: ['Mod+d'],
    also: says.duplicate.also,
    enabled: hasThings,
  }),
  command(
    'edit.delete',
    'edit',
    says.delete.title,
    ({ board, say }) => {
      const { schemeId, selection } = board.getState();
      board.dispatch(words.edits.route.delete, (job) => deleteSelected(job, schemeId, selection));
      board.set({ selection: nothing });
      say(says.delete.done);
    },
    { shortcuts: keysOf('delete'), also: says.delete.also, enabled: hasSelection },
  ),
  command(
    'edit.selectAll',
    'edit',
    says.selectAll.title,
    ({ board, say }) => {
      const { nodes, segments } = schemeOf(board.getState().job, board.getState().schemeId);
      board.set({
        tool: 'select',
        selection: { nodes: nodes.map((n) => n.id), segments: segments.map((s) => s.id) },
      });
      say(says.selectAll.done(segments.length));
    },
    { shortcuts: keysOf('select.all'), also: says.selectAll.also },
  ),
  command('edit.selectRun', 'edit', says.selectRun.title, selectRun, {
    shortcuts: ['Mod+Shift+l'],
    also: says.selectRun.also,
    enabled: onRun,
  }),
  command('edit.mirrorX', 'edit', says.mirrorX.title, mirror(0, words.edits.route.mirrorX), {
    also: says.mirrorX.also,
    enabled: hasThings,
  }),
  command('edit.mirrorY', 'edit', says.mirrorY.title, mirror(1, words.edits.route.mirrorY), {
    also: says.mirrorY.also,
    enabled: hasThings,
  }),
  command(
    'edit.rotate',
    'edit',
    says.rotate.title,
    edit(words.edits.route.rotate, (state) => {
      const [x, y] = pivot(state);
      return (job) => rotateSelection(job, state.schemeId, state.selection, [x, y], 90);
    }),
    { also: says.rotate.also, enabled: hasThings },
  ),
  command('edit.alignWest', 'edit', says.alignWest.title, align(0, 'low'), {
    also: says.alignWest.also,
    enabled: hasSeveral,
  }),
  command('edit.alignSouth', 'edit', says.alignSouth.title, align(1, 'low'), {
    also: says.alignSouth.also,
    enabled: hasSeveral,
  }),
  command('edit.alignHigh', 'edit', says.alignHigh.title, align(2, 'high'), {
    also: says.alignHigh.also,
    enabled: hasSeveral,
  }),
  command(
    'edit.reverse',
    'edit',
    says.reverse.title,
    ({ board, say }) => {
      const state = board.getState();
      const start = startOf(state);
      if (start === undefined) return;
      let done = false;
      board.dispatch(words.edits.route.reverse, (job) => {
        done = reverseRun(job, state.schemeId, start);
      });
      say(done ? says.reverse.done : says.reverse.refused);
    },
    { also: says.reverse.also, enabled: onRun },
  ),
];
