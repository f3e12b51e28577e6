import { type Combination, combining } from '../advice/combinations/search.ts';
import { formatMoney } from '../advice/cost/price.ts';
import { type Goal, goals, ranked } from '../advice/goals.ts';
import { judgedSpeed } from '../advice/proposals/candidate.ts';
import { type Effects, outcomeAt } from '../advice/proposals/effects.ts';
import { bringsWords, fitWords, houseWords } from '../advice/proposals/effects-text.ts';
import { type Proposal, proposing } from '../advice/proposals.ts';
import { requiredAirflow } from '../advice/required.ts';
import type { Job, Scheme } from '../graph/document.ts';
import type { SchemeSolution } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';
import { formatFlow, formatPressure, formatRun, type System } from '../units/index.ts';
import { cautionLines } from '../words/cautions.ts';
import { words } from '../words/index.ts';
import { jobCommand, type Work } from './command.ts';
import { type Column, table } from './table.ts';

const told = words.command.proposed;

interface Proposed {
  readonly id: string;
  readonly name: string;
  /** Name of the speed that the gains are judged at; null where no speed has air. */
  readonly speed: string | null;
  readonly flow: number | null;
  readonly proposals: readonly Proposal[];
  readonly combinations: readonly Combination[];
}

/** What would make each scheme better, each change solved. */
export const propose = jobCommand(
  'propose',
  words.command.propose,
  {
    goal: { type: 'string', choices: goals.map(({ id }) => id) },
    speed: { type: 'string', name: words.command.names.speed },
    together: { type: 'boolean' },
  },
  async ({ job, schemes, values, work }) => {
    const goal = (values.goal ?? 'air') as Goal;
    const all: Proposed[] = [];
    for (const scheme of schemes) {
      const { speeds } = solveScheme(job, scheme.id);
      const asked = speeds.findIndex(({ name }) => name === values.speed);
      if (values.speed !== undefined && asked < 0)
        return {
          ok: false,
          problems: [
            {
              path: 'hoods',
              message: told.noSpeed(
                values.speed,
                speeds.map(({ name }) => name),
              ),
            },
          ],
        };
      all.push(await proposedFor(job, scheme, goal, asked < 0 ? undefined : asked, values.together, work));
    }
    return {
      ok: true,
      text: `${[job.title, ...all.map((one) => proposedText(one, job.units)), cautionLines().join('\n')].join('\n\n')}\n`,
      json: {
        title: job.title,
        goal,
        cautions: cautionLines(),
        schemes: all.map((one) => ({
          ...one,
          proposals: one.proposals.map(changeJson),
          combinations: one.combinations.map((combination) => ({
            ...changeJson(combination),
            members: combination.members.map(({ id }) => id),
            calls: combination.calls.map(changeJson),
          })),
        })),
      },
    };
  },
);

async function proposedFor(
  job: Job,
  { id, name }: Scheme,
  goal: Goal,
  asked: number | undefined,
  together: boolean,
  work: Work,
): Promise<Proposed> {
  const solution = solveScheme(job, id);
  const judged = judgedSpeed(solution, asked);
  const options = asked === undefined ? {} : { speed: asked };
  const flow = outcomeAt(solution, judged)?.flow ?? null;
  const measure = { need: requiredAirflow(job.kitchen).governing.flow, flow: flow ?? 0 };
  const found = await through(proposing(job, id, options), work, words.command.doing.proposing(name));
  const proposals = ranked(found, goal, measure);
  const combinations = together
    ? await through(
        combining(job, id, { ...options, goal, singles: proposals }),
        work,
        words.command.doing.combining(name),
      )
    : [];
  return { id, name, speed: solution.speeds[judged]?.name ?? null, flow, proposals, combinations };
}

/** A search in small pieces to its end, heard between them. */
async function through<Found>(
  search: Generator<undefined, Found, undefined>,
  work: Work,
  doing: string,
): Promise<Found> {
  for (;;) {
    await work.step(doing);
    const step = search.next();
    if (step.done) return step.value;
  }
}

type Shown = Effects & {
  readonly solution: SchemeSolution;
  readonly id: string;
  readonly title: string;
  readonly reason: string;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  readonly kind?: string;
  readonly remedy?: true;
};

function changeJson(change: Shown) {
  const { id, kind = 'together', title, reason, remedy = false, nodes, segments } = change;
  const { gain, gains, sound, house, cost, opening, fits, brings, settles } = change;
  const effects = { gain, gains, sound, house, cost, opening, fits, brings, settles };
  return { id, kind, title, reason, remedy, ...effects, nodes, segments };
}

function proposedText({ id, name, speed, flow, proposals, combinations }: Proposed, units: System): string {
  const lines = [`${name} (${id})`];
  if (speed === null || flow === null) return [...lines, `  ${told.noAir}`].join('\n');
  lines.push(`  ${told.judged(speed, formatFlow(flow, units))}`);
  const all: readonly Shown[] = [...combinations, ...proposals];
  if (all.length === 0) return [...lines, `  ${told.nothing}`].join('\n');
  lines.push(table(all, columns(all, units)).trimEnd(), '');
  all.forEach((change, i) => {
    lines.push(`  ${i + 1}. ${change.title}`, `     ${change.reason}`);
    lines.push(...bringsWords(change).map((message) => `     ${told.brings(message)}`));
    lines.push(...[fitWords(change) ?? [], houseWords(change)].flat().map((sentence) => `     ${sentence}`));
  });
  return lines.join('\n');
}

function columns(all: readonly Shown[], units: System): Column<Shown>[] {
  const right = 'right' as const;
  const { headings } = told;
  const signed = (text: string, value: number) => `${value < 0 ? '−' : '+'}${text}`;
  const decibels = (change: number) => {
    const whole = `${Math.abs(change).toFixed(0)} dB`;
    return whole === '0 dB' ? `±${whole}` : signed(whole, change);
  };
  return [
    { title: '#', align: right, cell: (row) => String(all.indexOf(row) + 1) },
    {
      title: headings.gain,
      align: right,
      cell: ({ gain }) => signed(formatFlow(Math.abs(gain), units), gain),
    },
    {
      title: headings.sound,
      align: right,
      cell: ({ sound }) => (sound ? decibels(sound.after - sound.before) : '–'),
    },
    {
      title: headings.house,
      align: right,
      cell: ({ house }) => (house ? formatPressure(house.after, units) : '–'),
    },
    { title: headings.parts, align: right, cell: ({ cost }) => formatMoney(cost, true) },
    { title: headings.opening, align: right, cell: ({ opening }) => formatRun(opening, units) },
    { title: headings.fits, cell: ({ fits }) => (fits ? told.yes : told.no) },
    { title: headings.change, cell: ({ title }) => title },
  ];
}
