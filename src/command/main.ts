import about from '../../package.json' with { type: 'json' };
import { lineOf, type Problem } from '../files/problem.ts';
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
    stdout.write(`${about.version}\n`);
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

/** One file after the other; text as it comes, JSON in one piece at the end. The gravest exit code stands. */
async function overFiles({ command, files, values }: Run, around: Surroundings, desk: Desk): Promise<number> {
  const { stdout, stderr } = around;
  const many = files.length > 1;
  const found: object[] = [];
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
      if (many) found.push({ file, problems: done.problems satisfies readonly Problem[] });
      continue;
    }
    if (done.failed) code = Math.max(code, exitCode.found);
    if (!values.quiet) for (const note of done.notes ?? []) stderr.write(`${name}: ${note}\n`);
    if (values.json) found.push({ file, ...done.json });
    else
      stdout.write(many ? `${i > 0 ? '\n' : ''}${words.command.fileHeading(name)}\n${done.text}` : done.text);
  }
  if (values.json && found.length > 0) stdout.write(`${JSON.stringify(many ? found : found[0], null, 2)}\n`);
  return code;
}
