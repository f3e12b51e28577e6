import { joined } from '../files/csv/columns.ts';
import { type CsvTable, csvText } from '../files/csv/csv.ts';
import { lineOf } from '../files/problem.ts';
import { programVersion } from '../files/version.ts';
import { words } from '../words/index.ts';
import { understand } from './arguments.ts';
import { type Done, Interrupted } from './command.ts';
import { commands } from './commands.ts';
import { commandHelp, programHelp } from './help.ts';
import { readText, type Surroundings, whyNot } from './reading.ts';
import { type Desk, deskOf, NotWritten } from './work.ts';

export type { Surroundings } from './reading.ts';

/** What a process ends with; `words.command.codes` says them to people. */
const exitCode = { fine: 0, found: 1, badInput: 2, failed: 3, calledOff: 130 } as const;

/**
 * The command line over the rooms before it: `COMMAND FILE... [options]`; see `programHelp`. Resolves to the exit
 * code, and never ends the process.
 *
 * @param signal calls the work off: nothing more is written, and the code is 130
 */
export async function main(
  args: readonly string[],
  around: Surroundings,
  signal?: AbortSignal,
): Promise<number> {
  const { stdout, stderr } = around;
  const asked = understand(args, commands);
  if (asked.kind === 'version') {
    stdout.write(`${programVersion}\n`);
    return exitCode.fine;
  }
  if (asked.kind === 'help') {
    stdout.write(asked.command ? commandHelp(asked.command) : programHelp(commands));
    return exitCode.fine;
  }
  if (asked.kind === 'refused') {
    stderr.write(`${asked.message}\n${words.command.failures.seeHelp(asked.command?.name)}\n`);
    return exitCode.badInput;
  }
  const desk = deskOf(around, asked.values.quiet, signal);
  try {
    return await overFiles(asked, around, desk);
  } catch (error) {
    desk.clear();
    if (error instanceof Interrupted) {
      stderr.write(`${words.command.failures.calledOff}\n`);
      return exitCode.calledOff;
    }
    if (!(error instanceof NotWritten)) throw error;
    stderr.write(`${words.command.failures.cannotWrite(error.file, whyNot(error.cause))}\n`);
    return exitCode.failed;
  }
}

type Run = Extract<ReturnType<typeof understand>, { kind: 'run' }>;

/** One file after the other; text as it comes, JSON and tables in one piece at the end. The gravest code stands. */
async function overFiles({ command, files, values }: Run, around: Surroundings, desk: Desk): Promise<number> {
  const { stdout, stderr } = around;
  const many = files.length > 1;
  const found: object[] = [];
  const tables: CsvTable[] = [];
  let code: number = exitCode.fine;
  for (const [i, file] of files.entries()) {
    if (many) desk.at(words.command.doing.file(i + 1, files.length, file));
    const name = file === '-' ? words.command.standardInput : file;
    const read = await readText(file, around);
    const done: Done = read.ok
      ? await command.run({ file, text: read.text }, values, desk)
      : { ok: false, problems: [{ path: '', message: read.why }] };
    desk.clear();
    if (!done.ok) {
      code = exitCode.badInput;
      for (const problem of done.problems) stderr.write(`${name}: ${lineOf(problem)}\n`);
      if (many) found.push({ file, problems: done.problems });
      continue;
    }
    if (done.failed) code = Math.max(code, exitCode.found);
    if (!values.quiet) for (const note of done.notes ?? []) stderr.write(`${name}: ${note}\n`);
    if (values.json) found.push({ file, ...done.json });
    else if (done.table) tables.push(many ? fromFile(name, done.table) : done.table);
    else
      stdout.write(many ? `${i > 0 ? '\n' : ''}${words.command.fileHeading(name)}\n${done.text}` : done.text);
  }
  if (values.json && found.length > 0) stdout.write(`${JSON.stringify(many ? found : found[0], null, 2)}\n`);
  if (tables.length > 0 && !(await tablesOut(tables, values, stdout, desk))) {
    stderr.write(`${words.command.failures.otherUnits}\n`);
    return exitCode.badInput;
  }
  return code;
}

/** A table with the file that each row is from. */
function fromFile(file: string, { heads, rows }: CsvTable): CsvTable {
  return { heads: [words.command.fileColumn, ...heads], rows: rows.map((row) => [file, ...row]) };
}

/** Tables as one; false where their units differ, and nothing is written then. */
async function tablesOut(
  tables: readonly CsvTable[],
  { decimal, out }: Run['values'],
  stdout: Surroundings['stdout'],
  desk: Desk,
): Promise<boolean> {
  const all = joined(tables);
  if (!all) return false;
  const text = csvText(all, decimal === 'comma' ? 'comma' : 'point');
  if (typeof out === 'string') await desk.write(out, text);
  else stdout.write(text);
  return true;
}
