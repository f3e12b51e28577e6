import { requiredAirflow, requiredDerivation } from '../advice/required.ts';
import { explained } from '../graph/derive/derive.ts';
import type { Job } from '../graph/document.ts';
import type { Finding } from '../graph/route.ts';
import type { FittingResult, SchemeSolution, SegmentResult, Solved, SpeedResult } from '../graph/solution.ts';
import {
  formatFlow,
  formatLossRate,
  formatPressure,
  formatRun,
  formatTemperature,
  formatVelocity,
  type System,
} from '../units/index.ts';
import { words } from '../words/index.ts';
import { derivationText } from './explain.ts';
import type { SolvedJob } from './solve.ts';
import { type Column, table } from './table.ts';

/** The results for people, in the job's units: a table of speeds for each scheme, findings, cautions. */
export function solutionText({ job, schemes }: SolvedJob, show: Shown): string {
  const parts = [
    job.title,
    requiredText(job),
    ...schemes.map(({ name, solution }) => schemeText(job, name, solution, show)),
    ...(show.explain ? [derivationText(requiredDerivation(job.kitchen), job.units)] : []),
  ];
  return `${[...parts, words.command.cautions.join('\n')].join('\n\n')}\n`;
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
  const lead = `The cooktop asks for ${formatFlow(governing.flow, units)} (${governing.name}; ${governing.source}).`;
  return others.length > 0 ? `${lead} Other rules: ${others.join('; ')}.` : lead;
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
      if (outcome.solved)
        lines.push('', `  ${hoodName}, ${speed}: where the pressure goes`, lossText(outcome, units));
    }
  }
  if (explain) {
    speeds.forEach(({ hoodName, name: speed }, k) => {
      const texts = explained(job, solution, k).map((found) => derivationText(found, units));
      if (texts.length > 0) lines.push('', `  ${hoodName}, ${speed}: how every figure comes about`, ...texts);
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
  const hood: Column<SpeedResult> = { title: 'hood', cell: (row) => row.hoodName };
  const house = speeds.some(({ outcome }) => outcome.solved && outcome.house !== null);
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
    number('at the cook', ({ sound }) => `${sound.cook.level.toFixed(0)} ±${sound.uncertainty} dBA`),
    number('sones', ({ sound }) => sound.cook.sones.toPrecision(2)),
    ...(house
      ? [number('house', (solved) => (solved.house ? formatPressure(solved.house.pressure, units) : '-'))]
      : []),
  ];
}

/** A finding as one line: how grave, what, what to do. */
export function findingText({ severity, message, remedy }: Finding): string {
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
    { title: 'air leaves at', align: right, cell: (row) => formatTemperature(row.outletTemperature, units) },
    {
      title: 'wall',
      align: right,
      cell: (row) =>
        `${formatTemperature(row.wallTemperature, units)}${row.condensation.risk ? ', wet' : ''}`,
    },
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
