import type { Finding } from '../graph/route.ts';
import type { FittingResult, SchemeSolution, SegmentResult, Solved, SpeedResult } from '../graph/solution.ts';
import {
  formatFlow,
  formatLossRate,
  formatPressure,
  formatRun,
  formatVelocity,
  type System,
} from '../units/index.ts';
import { cautions, type SolvedJob } from './solve.ts';
import { type Column, table } from './table.ts';

/** The results for people, in the job's units: a table of speeds for each scheme, findings, cautions. */
export function solutionText({ job, schemes }: SolvedJob, losses: boolean): string {
  const parts = [
    job.title,
    ...schemes.map(({ name, solution }) => schemeText(name, solution, job.units, losses)),
  ];
  return `${[...parts, cautions.join('\n')].join('\n\n')}\n`;
}

function schemeText(name: string, solution: SchemeSolution, units: System, losses: boolean): string {
  const { speeds } = solution;
  const lines = [`${name} (${solution.schemeId})`, table(speeds, speedColumns(solution, units)).trimEnd()];
  for (const { hoodName, name: speed, outcome } of speeds) {
    if (!outcome.solved) lines.push(`  ${hoodName}, ${speed}: ${outcome.reason}`);
    else lines.push(...outcome.stall.map((note) => `  ${hoodName}, ${speed}: ${note.message}`));
  }
  lines.push(...solution.findings.map(findingText));
  if (losses) {
    for (const { hoodName, name: speed, outcome } of speeds) {
      if (outcome.solved)
        lines.push('', `  ${hoodName}, ${speed}: where the pressure goes`, lossText(outcome, units));
    }
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
  const hood: Column<SpeedResult> = { title: 'hood', cell: (row) => row.hoodName };
  return [
    ...(new Set(speeds.map((row) => row.hood)).size > 1 ? [hood] : []),
    { title: 'speed', cell: (row) => row.name },
    number('delivered', (solved) => formatFlow(solved.flow, units)),
    { title: 'rated', align: 'right', cell: (row) => formatFlow(row.ratedFlow, units) },
    number('of rated', (solved, row) => `${Math.round((100 * solved.flow) / row.ratedFlow)} %`),
    number('total pressure', (solved) => formatPressure(solved.totalPressure, units)),
    number('static pressure', (solved) => formatPressure(solved.staticPressure, units)),
    number('fastest', ({ fastest }) => (fastest ? formatVelocity(fastest.velocity, units) : '-')),
    { title: 'in', cell: ({ outcome }) => (outcome.solved && outcome.fastest?.segment) || '-' },
  ];
}

function findingText({ severity, message, remedy }: Finding): string {
  return `  ${severity}: ${message}${remedy === undefined ? '' : ` ${remedy}`}`;
}

function lossText({ segments, fittings }: Solved, units: System): string {
  const right = 'right' as const;
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const segmentColumns: Column<SegmentResult>[] = [
    { title: 'segment', cell: (row) => row.id },
    { title: 'air', align: right, cell: (row) => formatFlow(row.flow, units) },
    { title: 'velocity', align: right, cell: (row) => formatVelocity(row.velocity, units) },
    { title: 'per length', align: right, cell: (row) => formatLossRate(row.lossPerMetre, units) },
    { title: 'friction', align: right, cell: (row) => formatPressure(row.frictionLoss, units) },
    { title: 'share', align: right, cell: (row) => percent(row.share) },
  ];
  const fittingColumns: Column<FittingResult>[] = [
    { title: 'at', cell: (row) => row.at },
    { title: 'fitting', cell: (row) => row.label },
    { title: 'C', align: right, cell: (row) => row.c.toFixed(2) },
    { title: 'loss', align: right, cell: (row) => formatPressure(row.loss, units) },
    { title: 'equivalent length', align: right, cell: (row) => formatRun(row.equivalentLength, units) },
    { title: 'share', align: right, cell: (row) => percent(row.share) },
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
