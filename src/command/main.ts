import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { lineOf } from '../files/problem.ts';
import { type ReadResult, readJob } from '../files/read.ts';
import { solutionJson } from './json.ts';
import { solveJob } from './solve.ts';
import { solutionText } from './text.ts';

/** What the command line has around it; a Node process fits. */
export interface Surroundings {
  readonly stdout: { write(text: string): unknown };
  readonly stderr: { write(text: string): unknown };
  /** `INIT_CWD`: the folder that npm was started in, before it went to the project's own. */
  readonly env: { readonly INIT_CWD?: string | undefined };
}

const usage = `Usage: solve FILE.gentlebend.json [--json] [--losses] [--explain]

  Solves every scheme of a job at every fan speed.

  --json     one JSON object in SI units instead of a table
  --losses   adds to the table what every segment and fitting costs, and the temperatures
  --explain  adds for every figure its formula, inputs, sources and notes; with --json as "derivations"
  --help     this text
`;

/** Bad input: nothing was solved. */
const badInput = 2;

/**
 * The command line over the rooms before it: `solve FILE [--json] [--losses] [--explain]`. Resolves to the exit
 * code. On bad input it says what is wrong on standard error, writes nothing else and gives 2.
 */
export async function main(args: readonly string[], { stdout, stderr, env }: Surroundings): Promise<number> {
  const refuse = (message: string): number => {
    stderr.write(`${message}\n`);
    return badInput;
  };

  const asked = understand(args);
  if (typeof asked === 'string') return refuse(`${asked}\n\n${usage.trimEnd()}`);
  if (asked.help) {
    stdout.write(usage);
    return 0;
  }

  let text: string;
  try {
    text = await readFrom(asked.file, env.INIT_CWD);
  } catch (error) {
    return refuse(`${asked.file}: ${whyUnreadable(error)}`);
  }
  const read: ReadResult = readJob(text, { repair: false });
  if (!read.ok) return refuse(read.problems.map((problem) => `${asked.file}: ${lineOf(problem)}`).join('\n'));
  for (const repair of read.repairs) stderr.write(`${asked.file}: ${lineOf(repair)}\n`);

  const solved = solveJob(read.job);
  stdout.write(
    asked.json
      ? `${JSON.stringify(solutionJson(solved, asked.explain), null, 2)}\n`
      : solutionText(solved, asked),
  );
  return 0;
}

interface Asked {
  readonly help: boolean;
  readonly file: string;
  readonly json: boolean;
  readonly losses: boolean;
  readonly explain: boolean;
}

function understand(args: readonly string[]): Asked | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        losses: { type: 'boolean', default: false },
        explain: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    const [command, file, ...more] = positionals;
    if (values.help) return { ...values, file: '' };
    if (command !== 'solve') return command === undefined ? 'Nothing to do.' : `No command "${command}".`;
    if (file === undefined) return 'Which file?';
    if (more.length > 0) return `One file at a time, not also ${more.join(', ')}.`;
    return { ...values, file };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** Reads a file that is named from the working folder or, failing that, from the folder `elsewhere`. */
async function readFrom(file: string, elsewhere: string | undefined): Promise<string> {
  const path = elsewhere === undefined || existsSync(file) ? file : resolve(elsewhere, file);
  return await readFile(path, 'utf8');
}

function whyUnreadable(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'this is a folder, not a file';
  if (code === 'EACCES') return 'this file may not be read';
  return error instanceof Error ? error.message : String(error);
}
