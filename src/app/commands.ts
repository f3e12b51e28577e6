import type { ToolId } from '../canvas/board.ts';
import { addScheme, duplicateScheme, removeScheme } from '../graph/edits/index.ts';
import { arrange, arrangements } from './arrangement.ts';
import { checkCommands } from './check-commands.ts';
import { type Command, command, edit, keysOf } from './command.ts';
import { editCommands } from './commands-edit.ts';
import { runCommands } from './commands-run.ts';
import { exampleJob, newJob } from './start.ts';
import { underlayCommands } from './underlay/commands.ts';

export type { App, Command } from './command.ts';

/** Tools for underlays have commands of their own. */
type PlainTool = Exclude<ToolId, 'underlay' | 'scale'>;

const toolTitles: Record<PlainTool, string> = {
  select: 'Select and move',
  pan: 'Pan',
  hood: 'Place hood',
  draw: 'Draw duct',
  cap: 'Place cap',
  insert: 'Insert a node',
  part: 'Place a part in line',
  split: 'Split a run',
  join: 'Join two ends',
  block: 'Draw a block',
  exit: 'Draw an exit face',
  dimension: 'Dimension',
  note: 'Pin a note',
  measure: 'Measure',
};

const toolWords: Record<PlainTool, string> = {
  select: 'pointer arrow drag',
  pan: 'hand scroll',
  hood: 'fan add',
  draw: 'route leg pipe riser',
  cap: 'exit wall roof outside',
  insert: 'turn split point',
  part: 'damper silencer screen filter fitting',
  split: 'cut part break disconnect',
  join: 'connect weld close gap',
  block: 'chase cabinet joist beam wall obstacle box',
  exit: 'outside wall roof',
  dimension: 'chain length figure',
  note: 'text words label comment',
  measure: 'distance ruler tape',
};

function tool(id: PlainTool): Command {
  return command(`tool.${id}`, 'tool', toolTitles[id], ({ board }) => board.set({ tool: id }), {
    shortcuts: keysOf(`tool.${id}`),
    also: toolWords[id],
    checked: (state) => state.tool === id,
  });
}

/** Everything that can be asked for, in the order in which it is listed. */
export const commands: readonly Command[] = [
  ...editCommands,
  ...runCommands,
  tool('select'),
  tool('pan'),
  tool('hood'),
  tool('draw'),
  tool('cap'),
  tool('insert'),
  tool('part'),
  tool('split'),
  tool('join'),
  tool('block'),
  tool('exit'),
  tool('dimension'),
  tool('note'),
  tool('measure'),
  ...underlayCommands,
  ...checkCommands,
  command('view.find', 'view', 'Find a command', ({ ui }) => ui.setState({ commandBox: true }), {
    shortcuts: ['Mod+k'],
    also: 'search help',
  }),
  command('view.shortcuts', 'view', 'List of shortcuts', ({ ui }) => ui.setState({ shortcuts: true }), {
    shortcuts: ['?'],
    also: 'keys keyboard help',
  }),
  command('view.table', 'view', 'Route table', ({ ui }) => ui.setState(({ table }) => ({ table: !table })), {
    shortcuts: ['t'],
    also: 'grid list rows keyboard screen reader',
  }),
  command(
    'view.charts',
    'view',
    'Charts',
    ({ ui }) => ui.setState(({ charts }) => ({ charts: !charts, table: false })),
    { also: 'fan curve system profile pressure budget graph diagram' },
  ),
  command('view.lab', 'view', 'Bend lab', ({ ui }) => ui.setState({ lab: { node: null } }), {
    also: 'teach trainer apprentice radius elbow compare kinds guess',
  }),
  command(
    'view.lessons',
    'view',
    'Lessons',
    ({ ui }) => ui.setState({ lab: { node: null, page: 'lessons' } }),
    { also: 'teach trainer apprentice tight turns squeezed duct small cap' },
  ),
  command('view.kitchen', 'view', 'Kitchen, house and air', ({ ui }) => ui.setState({ panel: 'kitchen' }), {
    also: 'cooktop burners airtightness blower door make-up air combustion elevation temperature hood fan',
  }),
  command('view.fit', 'view', 'Fit the drawing', ({ sheets }) => sheets.fit(), {
    shortcuts: keysOf('zoom.fit'),
    also: 'zoom whole',
  }),
  ...arrangements.map(({ id, title }) =>
    command(`view.${id}`, 'view', title, ({ ui }) => arrange(ui, id), {
      also: 'layout arrangement section isometric 3d',
    }),
  ),
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
  command('file.print', 'file', 'Print…', () => window.print(), {
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
  command('scheme.search', 'scheme', 'Find a route', ({ ui }) => ui.setState({ routeSearch: true }), {
    also: 'search automatic shortest least loss path exit',
  }),
  command('scheme.compare', 'scheme', 'Compare schemes', ({ ui }) => ui.setState({ comparing: true }), {
    also: 'side by side table recommend difference print',
    enabled: (state) => state.job.schemes.length > 1,
  }),
  command('scheme.prices', 'scheme', 'Parts and prices', ({ ui }) => ui.setState({ prices: true }), {
    also: 'cost list money bill of materials',
  }),
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
