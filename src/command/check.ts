import { checkCodes } from '../advice/codes/check.ts';
import type { CodeResult, CodeState } from '../advice/codes/types.ts';
import type { Finding, Severity } from '../graph/route.ts';
import { cautionLines } from '../words/cautions.ts';
import { words } from '../words/index.ts';
import { jobCommand } from './command.ts';
import { solved } from './solve.ts';
import { findingText } from './text.ts';

const told = words.command.checked;

interface CheckedScheme {
  readonly id: string;
  readonly name: string;
  readonly failed: boolean;
  readonly findings: readonly Finding[];
  readonly codes: readonly CodeResult[];
}

const grave: readonly Severity[] = ['danger', 'error'];

/** Findings of the drawing and of the solve, and every rule of the job's profile. */
export const check = jobCommand(
  'check',
  words.command.check,
  { strict: { type: 'boolean' }, all: { type: 'boolean' } },
  async (input) => {
    const { job, values } = input;
    const { schemes } = await solved(input);
    const checked = schemes.map(({ name, solution }): CheckedScheme => {
      const codes = checkCodes(job, solution);
      const { schemeId: id, findings } = solution;
      return { id, name, failed: fails(findings, codes, values.strict), findings, codes };
    });
    return {
      ok: true,
      text: `${[job.title, ...checked.map((one) => schemeText(one, values.all)), cautionLines().join('\n')].join('\n\n')}\n`,
      json: { title: job.title, cautions: cautionLines(), schemes: checked },
      failed: checked.some(({ failed }) => failed),
    };
  },
);

/** Strictly: what warns, and what cannot be told, fails too. */
function fails(findings: readonly Finding[], codes: readonly CodeResult[], strict: boolean): boolean {
  return (
    findings.some(({ severity }) => grave.includes(severity) || (strict && severity === 'warning')) ||
    codes.some(({ state }) => state === 'fails' || (strict && state === 'cannot tell'))
  );
}

function schemeText({ id, name, failed, findings, codes }: CheckedScheme, all: boolean): string {
  const shown = codes.filter(({ state }) => all || state === 'fails' || state === 'cannot tell');
  const count = (state: CodeState) => codes.filter((one) => one.state === state).length;
  const found = findings.length === 0 ? [`  ${told.noFindings}`] : findings.map(findingText);
  return [
    `${name} (${id}): ${failed ? told.fails : told.passes}`,
    ...found,
    `  ${told.rules(count('meets'), count('fails'), count('cannot tell'), count('not applicable'))}`,
    ...shown.map(codeText),
  ].join('\n');
}

function codeText(result: CodeResult): string {
  const { state, name, measured, limit, message, remedy, source, edition } = result;
  const figures = [measured, limit && told.limit(limit)].filter(Boolean).join('; ');
  return [
    `  ${told.states[state]}: ${name}${figures === '' ? '' : ` (${figures})`}`,
    `    ${message}${state === 'fails' && !message.includes(remedy) ? ` ${remedy}` : ''}`,
    `    ${told.source(source, edition)}`,
  ].join('\n');
}
