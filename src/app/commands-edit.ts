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
import { copySelection, cutSelection, pasteAny } from './clipboard.ts';
import { type App, type Command, command, edit, keysOf } from './command.ts';

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
  edit('line up', ({ schemeId, selection }) => (job) => {
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
  say(`Selected the whole run: ${segments.length} ducts.`);
}

/** A copy stands this far off, m east and south. */
const BESIDE: Vec3 = [0.3048, -0.3048, 0];

function duplicate({ board, say }: App): void {
  const { schemeId, selection } = board.getState();
  let made: Selection | null = null;
  board.dispatch('duplicate', (job) => {
    made = duplicateSelection(job, schemeId, selection, BESIDE);
  });
  if (made) board.set({ selection: made });
  say(made ? 'Duplicated.' : 'A turn without its ducts cannot be duplicated.');
}

/** Undo and what is done to a selection. */
export const editCommands: readonly Command[] = [
  command(
    'edit.undo',
    'edit',
    ({ undoLabel }) => (undoLabel ? `Undo ${undoLabel}` : 'Undo'),
    ({ board, say }) => {
      const { undoLabel } = board.getState();
      board.undo();
      if (undoLabel !== null) say(`Undone: ${undoLabel}.`);
    },
    { shortcuts: ['Mod+z'], also: 'take back', enabled: (state) => state.undoLabel !== null },
  ),
  command(
    'edit.redo',
    'edit',
    ({ redoLabel }) => (redoLabel ? `Redo ${redoLabel}` : 'Redo'),
    ({ board, say }) => {
      const { redoLabel } = board.getState();
      board.redo();
      if (redoLabel !== null) say(`Redone: ${redoLabel}.`);
    },
    { shortcuts: ['Mod+Shift+z', 'Mod+y'], also: 'again', enabled: (state) => state.redoLabel !== null },
  ),
  command('edit.steps', 'edit', 'List of edits', ({ ui }) => ui.setState({ steps: true }), {
    also: 'history undo steps back',
    enabled: (state) => state.undoLabel !== null || state.redoLabel !== null,
  }),
  command('edit.cut', 'edit', 'Cut', cutSelection, {
    shortcuts: ['Mod+x'],
    also: 'clipboard move',
    enabled: hasThings,
  }),
  command('edit.copy', 'edit', 'Copy', (app) => void copySelection(app), {
    shortcuts: ['Mod+c'],
    also: 'clipboard',
    enabled: hasThings,
  }),
  command('edit.paste', 'edit', 'Paste', (app) => void pasteAny(app), {
    shortcuts: ['Mod+v'],
    also: 'clipboard insert',
    byBrowser: true,
  }),
  command('edit.duplicate', 'edit', 'Duplicate', duplicate, {
    shortcuts: ['Mod+d'],
    also: 'copy again twice',
    enabled: hasThings,
  }),
  command(
    'edit.delete',
    'edit',
    'Delete what is selected',
    ({ board, say }) => {
      const { schemeId, selection } = board.getState();
      board.dispatch('delete', (job) => deleteSelected(job, schemeId, selection));
      board.set({ selection: nothing });
      say('Deleted.');
    },
    { shortcuts: keysOf('delete'), also: 'remove erase heal', enabled: hasSelection },
  ),
  command(
    'edit.selectAll',
    'edit',
    'Select everything',
    ({ board, say }) => {
      const { nodes, segments } = schemeOf(board.getState().job, board.getState().schemeId);
      board.set({
        tool: 'select',
        selection: { nodes: nodes.map((n) => n.id), segments: segments.map((s) => s.id) },
      });
      say(`Selected everything: ${segments.length} ducts.`);
    },
    { shortcuts: keysOf('select.all'), also: 'mark' },
  ),
  command('edit.selectRun', 'edit', 'Select the whole run', selectRun, {
    shortcuts: ['Mod+Shift+l'],
    also: 'connected branch duct',
    enabled: onRun,
  }),
  command('edit.mirrorX', 'edit', 'Mirror left and right', mirror(0, 'mirror left and right'), {
    also: 'flip east west reflect swap',
    enabled: hasThings,
  }),
  command('edit.mirrorY', 'edit', 'Mirror front and back', mirror(1, 'mirror front and back'), {
    also: 'flip north south reflect swap',
    enabled: hasThings,
  }),
  command(
    'edit.rotate',
    'edit',
    'Turn round by a quarter',
    edit('turn round by a quarter', (state) => {
      const [x, y] = pivot(state);
      return (job) => rotateSelection(job, state.schemeId, state.selection, [x, y], 90);
    }),
    { also: 'rotate 90 degrees', enabled: hasThings },
  ),
  command('edit.alignWest', 'edit', 'Line up with the westernmost', align(0, 'low'), {
    also: 'align left x same column',
    enabled: hasSeveral,
  }),
  command('edit.alignSouth', 'edit', 'Line up with the southernmost', align(1, 'low'), {
    also: 'align y same row front',
    enabled: hasSeveral,
  }),
  command('edit.alignHigh', 'edit', 'Line up with the highest', align(2, 'high'), {
    also: 'align height level z same',
    enabled: hasSeveral,
  }),
  command(
    'edit.reverse',
    'edit',
    'Reverse the flow',
    ({ board, say }) => {
      const state = board.getState();
      const start = startOf(state);
      if (start === undefined) return;
      let done = false;
      board.dispatch('reverse flow', (job) => {
        done = reverseRun(job, state.schemeId, start);
      });
      say(done ? 'The air now goes the other way.' : 'A run between junctions cannot be turned round alone.');
    },
    { also: 'direction turn round swap ends hood cap', enabled: onRun },
  ),
];
