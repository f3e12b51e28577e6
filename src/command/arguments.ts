import { words } from '../words/index.ts';
import type { Command, Option, Options, Values } from './command.ts';

/** What a command line asks for. */
export type Asked =
  | {
      readonly kind: 'run';
      readonly command: Command;
      readonly files: readonly string[];
      readonly values: AllValues;
    }
  /** Of the whole program where there is no command. */
  | { readonly kind: 'help'; readonly command: Command | undefined }
  | { readonly kind: 'version' }
  | { readonly kind: 'refused'; readonly message: string; readonly command: Command | undefined };

type AllValues = Values<Options> & Values<typeof everyOption>;

/** What every command takes. */
export const everyOption = {
  json: { type: 'boolean' },
  quiet: { type: 'boolean' },
  help: { type: 'boolean' },
  version: { type: 'boolean' },
} as const satisfies Options;

const { failures } = words.command;

/**
 * Reads a command line: `COMMAND FILE... --option value --option=value`, options anywhere, `--` before files that
 * begin with a dash. `help`, `help COMMAND` and `--help` ask for help. Whatever is wrong is refused with a sentence,
 * and a name that is nearly right with what it is near to.
 */
export function understand(args: readonly string[], commands: readonly Command[]): Asked {
  const plain = args.filter((arg) => arg === '-' || !arg.startsWith('-'));
  const helping = plain[0] === 'help' || args.includes('--help') || args.includes('-h');
  const [name] = plain[0] === 'help' ? plain.slice(1) : plain;
  const command = commands.find((one) => one.name === name);
  if (name !== undefined && !command) {
    const near = nearest(name, [...commands.map((one) => one.name), 'help']);
    return { kind: 'refused', message: failures.noCommand(name, near), command: undefined };
  }
  if (helping) return { kind: 'help', command };
  if (args.includes('--version')) return { kind: 'version' };
  if (!command) return { kind: 'refused', message: failures.nothing, command };
  const refused = (message: string): Asked => ({ kind: 'refused', message, command });

  const allowed: Options = { ...command.options, ...everyOption };
  const values: Record<string, string | boolean> = {};
  const files: string[] = [];
  let rest = [...args];
  rest.splice(rest.indexOf(command.name), 1);
  while (rest.length > 0) {
    const [arg = '', ...after] = rest;
    rest = after;
    if (arg === '--') {
      files.push(...rest);
      break;
    }
    if (arg === '-' || !arg.startsWith('-')) {
      files.push(arg);
      continue;
    }
    const [, key = '', given] = /^--?([^=]*)(?:=(.*))?$/s.exec(arg) ?? [];
    const option = Object.hasOwn(allowed, key) && arg.startsWith('--') ? allowed[key] : undefined;
    if (!option) return refused(wrongOption(key, command, allowed, commands));
    if (option.type === 'boolean') {
      if (given !== undefined) return refused(failures.noValue(key));
      values[key] = true;
      continue;
    }
    const value = given ?? rest.shift();
    if (value === undefined) return refused(failures.needsValue(key, takes(option)));
    if ('choices' in option && !option.choices.includes(value))
      return refused(failures.notAmong(key, value, option.choices));
    const why = 'refuses' in option ? option.refuses?.(value) : null;
    if (why) return refused(why);
    values[key] = value;
  }
  for (const [key, option] of Object.entries(allowed)) if (option.type === 'boolean') values[key] ??= false;
  if (files.length === 0) return refused(failures.whichFile);
  if (values.csv !== undefined && values.json) return refused(failures.eitherOr('csv', 'json'));
  for (const key of ['decimal', 'out'])
    if ('csv' in command.options && values[key] !== undefined && values.csv === undefined)
      return refused(failures.goesWith(key, 'csv'));
  if (files.filter((file) => file === '-').length > 1) return refused(failures.inputTwice);
  return { kind: 'run', command, files, values: values as AllValues };
}

/** What stands after an option in the help: `comma|semicolon`, `FILE`. */
export function takes(option: Option): string {
  if (option.type === 'boolean') return '';
  return 'choices' in option ? option.choices.join('|') : option.name;
}

function wrongOption(key: string, command: Command, allowed: Options, commands: readonly Command[]): string {
  if (commands.some(({ options }) => Object.hasOwn(options, key)))
    return failures.notOfThis(key, command.name);
  return failures.noOption(key, nearest(key, Object.keys(allowed)));
}

/** The name that a word is a slip of the fingers away from: at most a third of its letters wrong. */
function nearest(word: string, names: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const name of names) {
    const away = name.startsWith(word) && word.length > 1 ? 1 : edits(word.toLowerCase(), name);
    if (away < least) [best, least] = [name, away];
  }
  return best;
}

/** Letters put in, left out, changed or swapped with their neighbour that make one word of another. */
function edits(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row[j] = Math.min(
        (last[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (last[j - 1] ?? 0) + (same ? 0 : 1),
        swapped ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
      );
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
