import type { CsvTable } from '../files/csv/csv.ts';
import { lineOf, type Problem } from '../files/problem.ts';
import { readJob } from '../files/read.ts';
import type { Job, Scheme } from '../graph/document.ts';
import {
  currentStyle,
  isLocale,
  plainChoice,
  plainStyle,
  type Style,
  type System,
  setStyle,
  styleOf,
} from '../units/index.ts';
import { words } from '../words/index.ts';

/**
 * What an option takes: nothing, one of a few words, or a text of its own, which the help calls by `name` and which is
 * refused with the sentence that `refuses` gives.
 */
export type Option =
  | { readonly type: 'boolean' }
  | { readonly type: 'string'; readonly choices: readonly string[] }
  | {
      readonly type: 'string';
      readonly name: string;
      readonly refuses?: (given: string) => string | null;
    };

export type Options = Readonly<Record<string, Option>>;

/** What was given for options: whether, or what. */
export type Values<O extends Options> = {
  readonly [K in keyof O]: O[K] extends { readonly type: 'boolean' }
    ? boolean
    : O[K] extends { readonly choices: readonly (infer Choice)[] }
      ? Choice | undefined
      : string | undefined;
};

/** How a command is told in the help. */
export interface CommandWords {
  /** One line for the list of commands. */
  readonly does: string;
  /** What it does, what it does not, what its exit code says: a paragraph each. */
  readonly about: readonly string[];
  readonly options: Readonly<Record<string, string>>;
  /** Arguments as typed, and what they do. */
  readonly examples: readonly (readonly [string, string])[];
  /** What `--json` gives: a key and what it holds, each. */
  readonly json: readonly (readonly [string, string])[];
}

/** One file as it was named and what stands in it. */
export interface TextFile {
  /** As named on the command line; `-` for standard input. */
  readonly file: string;
  readonly text: string;
}

/** Standing work: where it says how far it is, and hears that it is called off. */
export interface Work {
  /**
   * Shows what is being done, where somebody is looking, and lets the process hear an interruption.
   * @throws Interrupted once the work is called off
   */
  step(doing: string): Promise<void>;
  /** Writes a file, its name taken from the folder that the command was started in; gives its path. */
  write(name: string, data: string | Uint8Array): Promise<string>;
}

export class Interrupted extends Error {}

/** What came of one file. */
export type Done =
  | {
      readonly ok: true;
      /** For people; ends in a line feed. */
      readonly text: string;
      /** For programs; the file's name is put before it. */
      readonly json: object;
      /** Said on standard error, a line each, unless `--quiet`. */
      readonly notes?: readonly string[];
      /** True where a script should stop: exit code 1. */
      readonly failed?: boolean;
      /** Asked for in place of the text: the tables of all files are put under one another. */
      readonly table?: CsvTable;
    }
  /** Bad input: exit code 2, nothing on standard output. */
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** One command of the command line, done to one file after the other. */
export interface Command {
  readonly name: string;
  readonly words: CommandWords;
  readonly options: Options;
  readonly run: (input: TextFile, values: Values<Options>, work: Work) => Promise<Done>;
}

/** Options of a command that gives tables for spreadsheets, in the order of their names. */
export function csvOptions<const Names extends readonly string[]>(names: Names) {
  return {
    csv: { type: 'string', choices: names },
    decimal: { type: 'string', choices: ['point', 'comma'] },
    out: { type: 'string', name: words.command.names.file },
  } as const satisfies Options;
}

/** What a command over jobs gets for each file. */
export interface JobInput<O extends Options> extends TextFile {
  /** In the units asked for. */
  readonly job: Job;
  /** Those asked for, all where none was named. */
  readonly schemes: readonly Scheme[];
  readonly values: Values<O>;
  /** How figures for people are written, in use already unless the result is for programs. */
  readonly style: Style;
  readonly work: Work;
}

/** Options of every command over jobs. */
const jobOptions = {
  scheme: { type: 'string', name: words.command.names.scheme },
  units: { type: 'string', choices: ['imperial', 'metric'] },
  locale: {
    type: 'string',
    name: words.command.names.locale,
    refuses: (given: string) => (isLocale(given) ? null : words.command.failures.noLocale(given)),
  },
} as const satisfies Options;

/**
 * A command over jobs: each file is read without repairs, its schemes and units chosen by `--scheme` (an id or a name)
 * and `--units`, and what the format does not know is told in a note. `--locale` says how text for people is written;
 * JSON and tables for programs stay plain.
 */
export function jobCommand<const O extends Options>(
  name: string,
  commandWords: CommandWords,
  options: O,
  run: (input: JobInput<O>) => Promise<Done>,
): Command {
  return {
    name,
    words: { ...commandWords, options: { ...commandWords.options, ...words.command.jobOptions } },
    options: { ...options, ...jobOptions },
    async run(input, values, work) {
      const read = readJob(input.text, { repair: false });
      if (!read.ok) return read;
      const { scheme: wanted, units, locale } = values as Values<typeof jobOptions>;
      const job: Job = units === undefined ? read.job : { ...read.job, units: units as System };
      const schemes = job.schemes.filter(
        (one) => wanted === undefined || one.id === wanted || one.name === wanted,
      );
      if (schemes.length === 0)
        return { ok: false, problems: [{ path: 'schemes', message: words.command.noScheme(wanted ?? '') }] };
      const style = locale === undefined ? plainStyle : styleOf({ ...plainChoice, locale });
      const forPrograms = Boolean(values.json) || values.csv !== undefined;
      const done = await writing(forPrograms ? plainStyle : style, () =>
        run({ ...input, job, schemes, values: values as Values<O>, style, work }),
      );
      if (!done.ok || read.repairs.length === 0) return done;
      return { ...done, notes: [...read.repairs.map(lineOf), ...(done.notes ?? [])] };
    },
  };
}

/** What `run` resolves to, with a style in use until then. */
async function writing<T>(style: Style, run: () => Promise<T>): Promise<T> {
  const before = currentStyle();
  setStyle(style);
  try {
    return await run();
  } finally {
    setStyle(before);
  }
}
