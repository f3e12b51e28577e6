import type { BoardState, Recipe, ToolId } from '../canvas/board.ts';
import { type Action, shortcuts as toolKeys } from '../canvas/tools/keys.ts';
import { addScheme, deleteSelection, duplicateScheme, removeScheme } from '../graph/edits/index.ts';
import type { Advisor } from './advisor.ts';
import type { FileDesk } from './file-desk.ts';
import type { SheetsView } from './sheets-view.ts';
import type { Shortcut } from './shortcut.ts';
import { exampleJob, newJob } from './start.ts';
import type { AppStore } from './store.ts';
import { printDesk } from './theme.ts';
import type { Ui } from './ui.ts';

/** What a command may act on. */
export interface App {
  readonly board: AppStore;
  readonly ui: Ui;
  readonly files: FileDesk;
  readonly advisor: Advisor;
  readonly sheets: SheetsView;
}

export type CommandGroup = 'edit' | 'file' | 'tool' | 'scheme' | 'view';

/** One thing that a person can ask for. Toolbar, menus, shortcuts and the command box all read this. */
export interface Command {
  readonly id: string;
  readonly group: CommandGroup;
  /** What it does, in the words of the moment: "Undo move turn". */
  title(state: BoardState): string;
  readonly shortcuts: readonly Shortcut[];
  /** Other words that people search by. */
  readonly also?: string;
  enabled(state: BoardState): boolean;
  /** For a command that stands for a state: whether it holds. */
  checked?(state: BoardState): boolean;
  run(app: App): void;
}

const always = () => true;

function command(
  id: string,
  group: CommandGroup,
  title: string | ((state: BoardState) => string),
  run: (app: App) => void,
  more: Partial<Pick<Command, 'shortcuts' | 'also' | 'enabled' | 'checked'>> = {},
): Command {
  return {
    id,
    group,
    title: typeof title === 'string' ? () => title : title,
    shortcuts: [],
    enabled: always,
    run,
    ...more,
  };
}

const toolTitles: Record<ToolId, string> = {
  select: 'Select and move',
  pan: 'Pan',
  hood: 'Place hood',
  draw: 'Draw duct',
  cap: 'Place cap',
  insert: 'Insert a node',
};

const toolWords: Record<ToolId, string> = {
  select: 'pointer arrow drag',
  pan: 'hand scroll',
  hood: 'fan add',
  draw: 'route leg pipe riser',
  cap: 'exit wall roof outside',
  insert: 'turn split point',
};

/** Where the tools have a key for the same thing, it is the one that is printed. */
function keysOf(action: Action): readonly Shortcut[] {
  return toolKeys.find((row) => row.action === action)?.keys ?? [];
}

function tool(id: ToolId): Command {
  return command(`tool.${id}`, 'tool', toolTitles[id], ({ board }) => board.set({ tool: id }), {
    shortcuts: keysOf(`tool.${id}`),
    also: toolWords[id],
    checked: (state) => state.tool === id,
  });
}

const edit = (label: string, recipe: (state: BoardState) => Recipe) => (app: App) =>
  app.board.dispatch(label, recipe(app.board.getState()));

const hasSelection = ({ selection }: BoardState) => selection.nodes.length + selection.segments.length > 0;

/** Everything that can be asked for, in the order in which it is listed. */
export const commands: readonly Command[] = [
  command(
    'edit.undo',
    'edit',
    ({ undoLabel }) => (undoLabel ? `Undo ${undoLabel}` : 'Undo'),
    ({ board }) => board.undo(),
    { shortcuts: ['Mod+z'], also: 'take back', enabled: (state) => state.undoLabel !== null },
  ),
  command(
    'edit.redo',
    'edit',
    ({ redoLabel }) => (redoLabel ? `Redo ${redoLabel}` : 'Redo'),
    ({ board }) => board.redo(),
    { shortcuts: ['Mod+Shift+z', 'Mod+y'], also: 'again', enabled: (state) => state.redoLabel !== null },
  ),
  command(
    'edit.delete',
    'edit',
    'Delete what is selected',
    edit(
      'delete',
      ({ schemeId, selection }) =>
        (job) =>
          deleteSelection(job, schemeId, selection),
    ),
    { shortcuts: keysOf('delete'), also: 'remove erase', enabled: hasSelection },
  ),
  command(
    'edit.selectAll',
    'edit',
    'Select everything',
    ({ board }) => {
      const { job, schemeId } = board.getState();
      const scheme = job.schemes.find((s) => s.id === schemeId);
      if (scheme)
        board.set({
          tool: 'select',
          selection: { nodes: scheme.nodes.map((n) => n.id), segments: scheme.segments.map((s) => s.id) },
        });
    },
    { shortcuts: keysOf('select.all') },
  ),
  tool('select'),
  tool('pan'),
  tool('hood'),
  tool('draw'),
  tool('cap'),
  tool('insert'),
  command('view.find', 'view', 'Find a command', ({ ui }) => ui.setState({ commandBox: true }), {
    shortcuts: ['Mod+k'],
    also: 'search help',
  }),
  command('view.fit', 'view', 'Fit the drawing', ({ sheets }) => sheets.fit(), {
    shortcuts: keysOf('zoom.fit'),
    also: 'zoom whole',
  }),
  command(
    'view.section',
    'view',
    ({ section }) => (section === 'section-x' ? 'Section looking west (y-z)' : 'Section looking north (x-z)'),
    ({ board }) =>
      board.set({ section: board.getState().section === 'section-x' ? 'section-y' : 'section-x' }),
    { also: 'switch sheet elevation' },
  ),
  command(
    'view.colour',
    'view',
    ({ colourBy }) => (colourBy === 'velocity' ? 'Colour by pressure loss' : 'Colour by velocity'),
    ({ board }) => board.set({ colourBy: board.getState().colourBy === 'velocity' ? 'loss' : 'velocity' }),
    { also: 'fill legend scale' },
  ),
  command(
    'view.theme',
    'view',
    ({ theme }) => (theme === 'dark' ? 'Light theme' : 'Dark theme'),
    ({ board }) => board.set({ theme: board.getState().theme === 'dark' ? 'light' : 'dark' }),
    { also: 'night appearance' },
  ),
  command(
    'view.units',
    'view',
    ({ units }) => (units === 'imperial' ? 'Show millimetres and m³/h' : 'Show feet, inches and cfm'),
    edit('change units', ({ units }) => (job) => {
      job.units = units === 'imperial' ? 'metric' : 'imperial';
    }),
    { also: 'imperial metric' },
  ),
  command('file.new', 'file', 'New job', ({ files }) => files.replace(newJob), { also: 'empty blank' }),
  command('file.open', 'file', 'Open…', ({ files }) => void files.open(), {
    shortcuts: ['Mod+o'],
    also: 'load',
  }),
  command('file.save', 'file', 'Save', ({ files }) => void files.save(), {
    shortcuts: ['Mod+s'],
    also: 'write',
  }),
  command('file.saveAs', 'file', 'Save as…', ({ files }) => void files.saveAs(), {
    shortcuts: ['Mod+Shift+s'],
    also: 'copy',
  }),
  command('file.print', 'file', 'Print…', ({ board }) => void printDesk(board), {
    shortcuts: ['Mod+p'],
    also: 'paper PDF',
  }),
  command('file.example', 'file', 'Open the example', ({ files }) => files.replace(exampleJob), {
    also: 'demo kitchen',
  }),
  command(
    'scheme.new',
    'scheme',
    'New scheme',
    ({ board }) => {
      const { schemeId } = board.getState();
      let made = schemeId;
      board.dispatch('add scheme', (job) => {
        made = addScheme(job, schemeId);
      });
      board.set({ schemeId: made });
    },
    { also: 'route alternative' },
  ),
  command(
    'scheme.duplicate',
    'scheme',
    'Duplicate scheme',
    ({ board }) => {
      const { schemeId } = board.getState();
      let made = schemeId;
      board.dispatch('duplicate scheme', (job) => {
        made = duplicateScheme(job, schemeId);
      });
      board.set({ schemeId: made });
    },
    { also: 'copy alternative compare' },
  ),
  command('scheme.rename', 'scheme', 'Rename scheme', ({ board, ui }) =>
    ui.setState({ renaming: board.getState().schemeId }),
  ),
  command(
    'scheme.delete',
    'scheme',
    'Delete scheme',
    edit('delete scheme', ({ schemeId }) => (job) => {
      removeScheme(job, schemeId);
    }),
    { enabled: (state) => state.job.schemes.length > 1 },
  ),
];

const byId = new Map(commands.map((c) => [c.id, c]));

/** The command of that id; an id that is not there is a mistake in the program. */
export function commandById(id: string): Command {
  const found = byId.get(id);
  if (!found) throw new Error(`no command "${id}"`);
  return found;
}
