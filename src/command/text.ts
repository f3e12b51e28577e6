import { requiredAirflow, requiredDerivation } from '../advice/required.ts';
import { explained } from '../graph/derive/derive.ts';
import type { Job } from '../graph/document.ts';
import type { Finding } from '../graph/route.ts';
import type { FittingResult, SchemeSolution, SegmentResult, Solved, SpeedResult } from '../graph/solution.ts';
import {
  formatFlow,
  formatLossRate,
  formatNumber,
  formatPressure,
  formatRun,
  formatTemperature,
  formatVelocity,
  type System,
} from '../units/index.ts';
import { cautionLines } from '../words/cautions.ts';
import { words } from '../words/index.ts';
import { derivationText } from './explain.ts';
import type { SolvedJob } from './solve.ts';
import { type Column, table } from './table.ts';

const told = words.command.solved;
const { heads } = told;

/** The results for people, in the job's units: a table of speeds for each scheme, findings, cautions. */
export function solutionText({ job, schemes }: SolvedJob, show: Shown): string {
  const parts = [
    job.title,
    requiredText(job),
    ...schemes.map(({ name, solution }) => schemeText(job, name, solution, show)),
    ...(show.explain ? [derivationText(requiredDerivation(job.kitchen), job.units)] : []),
  ];
  return `${[...parts, cautionLines().join('\n')].join('\n\n')}\n`;
}

/** What goes beyond the table of speeds. */
export interface Shown {
  readonly losses: boolean;
  readonly explain: boolean;
}

function requiredText({ kitchen, units }: Job): string {
  const { rules, governing } = requiredAirflow(kitchen);
  const others = rules
    .filter((rule) => rule !== governing)
    .map(({ name, flow }) => `${name}: ${formatFlow(flow, units)}`);
  const lead = told.asksFor(formatFlow(governing.flow, units), governing.name, governing.source);
  return others.length > 0 ? `${lead} ${told.otherRules(others.join('; '))}` : lead;
}

function schemeText(job: Job, name: string, solution: SchemeSolution, { losses, explain }: Shown): string {
  const { units } = job;
  const { speeds } = solution;
  const lines = [`${name} (${solution.schemeId})`, table(speeds, speedColumns(solution, units)).trimEnd()];
  for (const { hoodName, name: speed, outcome } of speeds) {
    if (!outcome.solved) lines.push(`  ${hoodName}, ${speed}: ${outcome.reason}`);
    else lines.push(...outcome.stall.map((note) => `  ${hoodName}, ${speed}: ${note.message}`));
  }
  lines.push(...solution.findings.map(findingText));
  if (losses) {
    for (const { hoodName, name: speed, outcome } of speeds) {
      if (outcome.solved) lines.push('', `  ${hoodName}, ${speed}: ${told.losses}`, lossText(outcome, units));
    }
  }
  if (explain) {
    speeds.forEach(({ hoodName, name: speed }, k) => {
      const texts = explained(job, solution, k).map((found) => derivationText(found, units));
      if (texts.length > 0) lines.push('', `  ${hoodName}, ${speed}: ${told.explained}`, ...texts);
    });
  }
  return lines.join('\n');
}

function speedColumns({ speeds }: SchemeSolution, units: System): Column<SpeedResult>[] {
  const number = (
    title: string,
    cell: (solved: Solved, row: SpeedResult) => string,
  ): Column<SpeedResult> => ({
    title,
    align: 'right',
    cell: (row) => (row.outcome.solved ? cell(row.outcome, row) : '-'),
  });
  const hood: Column<SpeedResult> = { title: heads.hood, cell: (row) => row.hoodName };
  const house = speeds.some(({ outcome }) => outcome.solved && outcome.house !== null);
  return [
    ...(new Set(speeds.map((row) => row.hood)).size > 1 ? [hood] : []),
    { title: heads.speed, cell: (row) => row.name },
    number(heads.delivered, (solved) => formatFlow(solved.flow, units)),
    { title: heads.rated, align: 'right', cell: (row) => formatFlow(row.ratedFlow, units) },
    number(heads.ofRated, (solved, row) => `${Math.round((100 * solved.flow) / row.ratedFlow)} %`),
    number(heads.total, (solved) => formatPressure(solved.totalPressure, units)),
    number(heads.static, (solved) => formatPressure(solved.staticPressure, units)),
    number(heads.fastest, ({ fastest }) => (fastest ? formatVelocity(fastest.velocity, units) : '-')),
    { title: heads.in, cell: ({ outcome }) => (outcome.solved && outcome.fastest?.segment) || '-' },
    number(heads.cook, ({ sound }) => `${sound.cook.level.toFixed(0)} ±${sound.uncertainty} dBA`),
    number(heads.sones, ({ sound }) => sones(sound.cook.sones)),
    ...(house
      ? [number(heads.house, (solved) => (solved.house ? formatPressure(solved.house.pressure, units) : '-'))]
      : []),
  ];
}

/** Two figures, as sound is known. */
const sones = (value: number) => formatNumber(value, value < 9.95 ? 1 : 0);

/** A finding as one line: how grave, what, what to do. */
export function findingText({ severity, message, remedy }: Finding): string {
  return `  ${told.severities[severity]}: ${message}${remedy === undefined ? '' : ` ${remedy}`}`;
}

function lossText({ segments, fittings }: Solved, units: System): string {
  const right = 'right' as const;
  const percent = (share: number) => `${formatNumber(100 * share, 1)} %`;
  const segmentColumns: Column<SegmentResult>[] = [
    { title: heads.segment, cell: (row) => row.id },
    { title: heads.air, align: right, cell: (row) => formatFlow(row.flow, units) },
    { title: heads.velocity, align: right, cell: (row) => formatVelocity(row.velocity, units) },
    { title: heads.perLength, align: right, cell: (row) => formatLossRate(row.lossPerMetre, units) },
    { title: heads.friction, align: right, cell: (row) => formatPressure(row.frictionLoss, units) },
    { title: heads.share, align: right, cell: (row) => percent(row.share) },
    { title: heads.leaves, align: right, cell: (row) => formatTemperature(row.outletTemperature, units) },
    {
      title: heads.wall,
      align: right,
      cell: (row) =>
        `${formatTemperature(row.wallTemperature, units)}${row.condensation.risk ? told.wet : ''}`,
    },
  ];
  const fittingColumns: Column<FittingResult>[] = [
    { title: heads.at, cell: (row) => row.at },
    { title: heads.fitting, cell: (row) => row.label },
    { title: heads.c, align: right, cell: (row) => formatNumber(row.c, 2) },
    { title: heads.loss, align: right, cell: (row) => formatPressure(row.loss, units) },
    { title: heads.equivalent, align: right, cell: (row) => formatRun(row.equivalentLength, units) },
    { title: heads.share, align: right, cell: (row) => percent(row.share) },
  ];
  const tables = [
    table([...segments.values()], segmentColumns, '    '),
    table(fittings, fittingColumns, '    '),
  ];
  return tables
    .filter((text) => text !== '')
    .join('\n')
    .trimEnd();
}
