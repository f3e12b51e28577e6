import type { ToolId } from '../canvas/board.ts';
import { addScheme, duplicateScheme, removeScheme } from '../graph/edits/index.ts';
import { words } from '../words/index.ts';
import { arrange, arrangements } from './arrangement.ts';
import { checkCommands } from './check-commands.ts';
import { type App, type Command, command, edit, keysOf } from './command.ts';
import { editCommands } from './commands-edit.ts';
import { runCommands } from './commands-run.ts';
import { helpCommands } from './help/commands.ts';
import { jobCommands } from './jobs/commands.ts';
import { partsCommands } from './parts-list/commands.ts';
import { printDesk, printsItself } from './print/printing.ts';
import { shareCommands } from './share/commands.ts';
import { exampleJob, newJob } from './start.ts';
import { underlayCommands } from './underlay/commands.ts';

const says = words.commands;
const drawingWords = words.drawings.command;
const paperWords = words.paper.command;

export type { App, Command } from './command.ts';

/** Tools for underlays have commands of their own. */
type PlainTool = Exclude<ToolId, 'underlay' | 'scale'>;

const toolTitles: Record<PlainTool, string> = {
  select: words.tools.titles.select,
  pan: words.tools.titles.pan,
  hood: words.tools.titles.hood,
  draw: words.tools.titles.draw,
  cap: words.tools.titles.cap,
  insert: words.tools.titles.insert,
  part: words.tools.titles.part,
  split: words.tools.titles.split,
  join: words.tools.titles.join,
  block: words.tools.titles.block,
  exit: words.tools.titles.exit,
  dimension: words.tools.titles.dimension,
  note: words.tools.titles.note,
  measure: words.tools.titles.measure,
};

const toolWords: Record<PlainTool, string> = {
  select: words.tools.also.select,
  pan: words.tools.also.pan,
  hood: words.tools.also.hood,
  draw: words.tools.also.draw,
  cap: words.tools.also.cap,
  insert: words.tools.also.insert,
  part: words.tools.also.part,
  split: words.tools.also.split,
  join: words.tools.also.join,
  block: words.tools.also.block,
  exit: words.tools.also.exit,
  dimension: words.tools.also.dimension,
  note: words.tools.also.note,
  measure: words.tools.also.measure,
};

function tool(id: PlainTool): Command {
  return command(`tool.${id}`, 'tool', toolTitles[id], ({ board }) => board.set({ tool: id }), {
    shortcuts: keysOf(`tool.${id}`),
    also: toolWords[id],
    checked: (state) => state.tool === id,
  });
}

/** The job sheet, or what lies over the desk as it is. */
function printSheet({ ui }: App): void {
  if (printsItself(ui.getState())) window.print();
  else ui.setState({ printing: 'at once' });
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
  command('view.find', 'view', says.view.find.title, ({ ui }) => ui.setState({ commandBox: true }), {
    shortcuts: ['Mod+k'],
    also: says.view.find.also,
  }),
  ...helpCommands,
  command('view.shortcuts', 'view', says.view.shortcuts.title, ({ ui }) => ui.setState({ shortcuts: true }), {
    shortcuts: ['?'],
    also: says.view.shortcuts.also,
  }),
  command(
    'view.settings',
    'view',
    words.settings.command.title,
    ({ ui }) => ui.setState({ settings: true }),
    {
      shortcuts: ['Mod+,'],
      also: words.settings.command.also,
    },
  ),
  command(
    'view.table',
    'view',
    says.view.table.title,
    ({ ui }) => ui.setState(({ table }) => ({ table: !table })),
    {
      shortcuts: ['t'],
      also: says.view.table.also,
    },
  ),
  command(
    'view.charts',
    'view',
    says.view.charts.title,
    ({ ui }) => ui.setState(({ charts }) => ({ charts: !charts, table: false, parts: false })),
    { also: says.view.charts.also },
  ),
  command('view.lab', 'view', says.view.lab.title, ({ ui }) => ui.setState({ lab: { node: null } }), {
    also: says.view.lab.also,
  }),
  command(
    'view.lessons',
    'view',
    says.view.lessons.title,
    ({ ui }) => ui.setState({ lab: { node: null, page: 'lessons' } }),
    { also: says.view.lessons.also },
  ),
  command('view.kitchen', 'view', says.view.kitchen.title, ({ ui }) => ui.setState({ panel: 'kitchen' }), {
    also: says.view.kitchen.also,
  }),
  command('view.fit', 'view', says.view.fit.title, ({ sheets }) => sheets.fit(), {
    shortcuts: keysOf('zoom.fit'),
    also: says.view.fit.also,
  }),
  ...arrangements.map(({ id, title }) =>
    command(`view.${id}`, 'view', title, ({ ui }) => arrange(ui, id), {
      also: says.view.arrangement.also,
    }),
  ),
  command(
    'view.section',
    'view',
    ({ section }) => (section === 'section-x' ? says.view.section.west : says.view.section.north),
    ({ board }) =>
      board.set({ section: board.getState().section === 'section-x' ? 'section-y' : 'section-x' }),
    { also: says.view.section.also },
  ),
  command(
    'view.colour',
    'view',
    ({ colourBy }) => (colourBy === 'velocity' ? says.view.colour.byLoss : says.view.colour.byVelocity),
    ({ board }) => board.set({ colourBy: board.getState().colourBy === 'velocity' ? 'loss' : 'velocity' }),
    { also: says.view.colour.also },
  ),
  command(
    'view.theme',
    'view',
    ({ theme }) => (theme === 'dark' ? says.view.theme.light : says.view.theme.dark),
    ({ board }) => board.set({ theme: board.getState().theme === 'dark' ? 'light' : 'dark' }),
    { also: says.view.theme.also },
  ),
  command(
    'view.units',
    'view',
    ({ units }) => (units === 'imperial' ? says.view.units.metric : says.view.units.imperial),
    edit(words.edits.job.changeUnits, ({ units }) => (job) => {
      job.units = units === 'imperial' ? 'metric' : 'imperial';
    }),
    { also: says.view.units.also },
  ),
  command('file.new', 'file', says.file.new.title, ({ files }) => void files.replace(newJob), {
    also: says.file.new.also,
  }),
  command('file.open', 'file', says.file.open.title, ({ files }) => void files.open(), {
    shortcuts: ['Mod+o'],
    also: says.file.open.also,
  }),
  command('file.save', 'file', says.file.save.title, ({ files }) => void files.save(), {
    shortcuts: ['Mod+s'],
    also: says.file.save.also,
  }),
  command('file.saveAs', 'file', says.file.saveAs.title, ({ files }) => void files.saveAs(), {
    shortcuts: ['Mod+Shift+s'],
    also: says.file.saveAs.also,
  }),
  ...jobCommands,
  ...shareCommands,
  command('file.print', 'file', says.file.print.title, printSheet, {
    shortcuts: ['Mod+p'],
    also: says.file.print.also,
  }),
  command('file.printDesk', 'file', says.file.printDesk.title, printDesk, {
    also: says.file.printDesk.also,
  }),
  command('file.jobSheet', 'file', paperWords.title, ({ ui }) => ui.setState({ jobSheet: true }), {
    also: paperWords.also,
  }),
  command('file.drawing', 'file', drawingWords.save.title, ({ ui }) => ui.setState({ drawing: true }), {
    also: drawingWords.save.also,
  }),
  command('file.example', 'file', says.file.example.title, ({ files }) => void files.replace(exampleJob), {
    also: says.file.example.also,
  }),
  command(
    'scheme.new',
    'scheme',
    says.scheme.new.title,
    ({ board }) => {
      const { schemeId } = board.getState();
      let made = schemeId;
      board.dispatch(words.edits.scheme.add, (job) => {
        made = addScheme(job, schemeId);
      });
      board.set({ schemeId: made });
    },
    { also: says.scheme.new.also },
  ),
  command(
    'scheme.duplicate',
    'scheme',
    says.scheme.duplicate.title,
    ({ board }) => {
      const { schemeId } = board.getState();
      let made = schemeId;
      board.dispatch(words.edits.scheme.duplicate, (job) => {
        made = duplicateScheme(job, schemeId);
      });
      board.set({ schemeId: made });
    },
    { also: says.scheme.duplicate.also },
  ),
  command(
    'scheme.search',
    'scheme',
    says.scheme.search.title,
    ({ ui }) => ui.setState({ routeSearch: true }),
    {
      also: says.scheme.search.also,
    },
  ),
  ...partsCommands,
  command(
    'scheme.compare',
    'scheme',
    says.scheme.compare.title,
    ({ ui }) => ui.setState({ comparing: true }),
    {
      also: says.scheme.compare.also,
      enabled: (state) => state.job.schemes.length > 1,
    },
  ),
  command('scheme.prices', 'scheme', says.scheme.prices.title, ({ ui }) => ui.setState({ prices: true }), {
    also: says.scheme.prices.also,
  }),
  command('scheme.rename', 'scheme', says.scheme.rename.title, ({ board, ui }) =>
    ui.setState({ renaming: board.getState().schemeId }),
  ),
  command(
    'scheme.delete',
    'scheme',
    says.scheme.delete.title,
    edit(words.edits.scheme.delete, ({ schemeId }) => (job) => {
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
