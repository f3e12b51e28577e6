import { type CsvStyle, csvText } from '../../files/csv/csv.ts';
import { cuttingTable, partsTable } from '../../files/csv/parts.ts';
import { resultsTable, routeTable } from '../../files/csv/run.ts';
import { stemFor } from '../../files/open-save.ts';
import { saveFile } from '../../files/save-file.ts';
import { currentStyle } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type App, type Command, command } from '../command.ts';

const says = words.partsList.tables;

const tables = { parts: partsTable, cutting: cuttingTable, route: routeTable, results: resultsTable };
export type TableName = keyof typeof tables;
export const tableNames = Object.keys(tables) as readonly TableName[];

/** As the reader writes numbers, where nothing else was chosen. */
export const usualStyle = (): CsvStyle => (currentStyle().decimal === ',' ? 'comma' : 'point');

/** Saves one of the tables: that of the scheme in hand, or for the results of all. */
async function saveTable({ board, ui, say }: App, name: TableName): Promise<void> {
  const { job, schemeId } = board.getState();
  const ids = name === 'results' ? job.schemes.map(({ id }) => id) : [schemeId];
  const text = csvText(tables[name](job, ids), ui.getState().csvStyle ?? usualStyle());
  const kind = {
    name: `${stemFor(job.title)}-${says[name].file}.csv`,
    extension: '.csv',
    mimeType: 'text/csv',
    description: says.description,
  };
  try {
    const blob = new Blob([text], { type: 'text/csv;charset=utf-8' });
    if (await saveFile(Promise.resolve(blob), kind)) say(says.saved(kind.name));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    ui.setState({ notice: { title: says.notSaved, text: why, details: [] } });
  }
}

/** The parts list under the sheets, and its tables for spreadsheets. */
export const partsCommands: readonly Command[] = [
  command(
    'scheme.parts',
    'scheme',
    words.partsList.command.title,
    ({ ui }) => ui.setState(({ parts }) => ({ parts: !parts, table: false, charts: false })),
    { also: words.partsList.command.also },
  ),
  ...tableNames.map((name) =>
    command(`file.table-${name}`, 'file', says[name].title, (app) => void saveTable(app, name), {
      also: says.also,
    }),
  ),
];
