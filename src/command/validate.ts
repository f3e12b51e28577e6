import { lineOf } from '../files/problem.ts';
import { readJob } from '../files/read.ts';
import { words } from '../words/index.ts';
import type { Command, Done } from './command.ts';

const told = words.command.validated;

/** Reads a text as it stands and, where that fails, as the program would mend it. */
export const validate: Command = {
  name: 'validate',
  words: words.command.validate,
  options: {},
  run: async ({ text }) => validated(text),
};

function validated(text: string): Done {
  const strict = readJob(text, { repair: false });
  const mended = strict.ok ? strict : readJob(text);
  const problems = strict.ok ? [] : strict.problems;
  const repairs = mended.ok ? mended.repairs : [];
  const verdict = strict.ok
    ? told.sound(strict.job.schemes.length, strict.job.title)
    : mended.ok
      ? told.mended
      : told.refused;
  const lines = [
    verdict,
    ...problems.map((problem) => `  ${told.wrong}: ${lineOf(problem)}`),
    ...repairs.map((repair) => `  ${told.repair}: ${lineOf(repair)}`),
  ];
  return {
    ok: true,
    text: `${lines.join('\n')}\n`,
    json: {
      valid: strict.ok,
      loads: mended.ok,
      title: mended.ok ? mended.job.title : null,
      schemes: mended.ok
        ? mended.job.schemes.map(({ id, name, nodes, segments }) => ({
            id,
            name,
            nodes: nodes.length,
            segments: segments.length,
          }))
        : [],
      problems,
      repairs: repairs.map(({ path, message }) => ({ path, message })),
    },
    failed: !strict.ok,
  };
}
