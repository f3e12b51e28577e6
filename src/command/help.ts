import { words } from '../words/index.ts';
import { everyOption, takes } from './arguments.ts';
import type { Command, Options } from './command.ts';

const { usage, codes, everyOption: everyWords } = words.command;

/** Columns of a terminal. */
const width = 80;

/** What the program can do: its commands, options and exit codes. */
export function programHelp(commands: readonly Command[]): string {
  return page([
    usage.line,
    wrapped(usage.lead),
    section(usage.commands, [
      ...commands.map(({ name, words: { does } }): Row => [name, does]),
      ['help', words.command.helpCommand],
    ]),
    section(usage.forEvery, optionRows(everyOption, everyWords)),
    section(usage.codes, codes),
    wrapped(usage.files),
    wrapped(usage.oneOrMany),
    wrapped(usage.more),
    wrapped(usage.clone),
  ]);
}

/** One command: what it does, its options, examples, JSON and exit codes. */
export function commandHelp({ name, words: told, options }: Command): string {
  return page([
    usage.ofCommand(name),
    ...told.about.map(wrapped),
    section(usage.options, [...optionRows(options, told.options), ...optionRows(everyOption, everyWords)]),
    section(
      usage.examples,
      told.examples.map(([typed, what]): Row => [`${words.command.program} ${typed}`, what]),
    ),
    section(usage.json, told.json),
    section(usage.codes, codes),
  ]);
}

type Row = readonly [string, string];

function optionRows(options: Options, about: Readonly<Record<string, string>>): Row[] {
  return Object.entries(options).map(([key, option]) => [
    `--${key} ${takes(option)}`.trimEnd(),
    about[key] ?? '',
  ]);
}

function page(parts: readonly string[]): string {
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** A heading, and under it rows of two columns; where the first column is long, the second goes below it. */
function section(heading: string, rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  const longest = Math.max(...rows.map(([left]) => left.length));
  const room = Math.min(longest, 30);
  const lines = rows.flatMap(([left, right]) => {
    if (right === '') return [`  ${left}`];
    const [first = '', ...more] = wrap(right, width - room - 4);
    const below = more.map((line) => `${' '.repeat(room + 4)}${line}`);
    return left.length > room
      ? [`  ${left}`, `${' '.repeat(room + 4)}${first}`, ...below]
      : [`  ${left.padEnd(room)}  ${first}`, ...below];
  });
  return [`${heading}:`, ...lines].join('\n');
}

const wrapped = (text: string) => wrap(text, width).join('\n');

function wrap(text: string, columns: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
