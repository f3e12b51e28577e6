import { type BudgetPart, pressureBudget } from '../../../graph/budget.ts';
import { sentence } from '../../../graph/places.ts';
import type { Solved, SpeedResult } from '../../../graph/solution.ts';
import { speedCurve } from '../../../graph/speeds.ts';
import { systemCurve } from '../../../graph/system-curve.ts';
import { fanTotalPressure, freeDelivery } from '../../../hydraulics/fan.ts';
import { formatPercent, formatPressure, quantity, unitOf } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { Page, TextStyle } from '../../pdf/page.ts';
import type { ChartBlock } from '../types.ts';
import { type ChartFrame, drawAxes, drawCurve } from './chart-frame.ts';
import type { Drawn } from './drawn.ts';
import { type Area, inks, sizes, style, type Type } from './look.ts';
import { drawCircle, drawRect } from './shapes.ts';

const heights = { fan: 66, profile: 54 } as const;
const barHeight = 6.4;

/** How high a chart is, mm. */
export function chartHeight({ chart, speed }: ChartBlock, { solution }: Drawn): number {
  if (chart !== 'budget') return heights[chart];
  const outcome = solution.speeds[speed]?.outcome;
  return outcome?.solved ? pressureBudget(outcome).length * barHeight : 0;
}

/** Draws a chart in ink: what is to be told apart differs in width and dashes, and is named beside it. */
export function drawChart(page: Page, area: Area, block: ChartBlock, drawn: Drawn, type: Type): void {
  const speed = drawn.solution.speeds[block.speed];
  if (!speed) return;
  if (block.chart === 'fan') drawFan(page, area, block.speed, speed, drawn, type);
  else if (speed.outcome.solved && block.chart === 'profile')
    drawProfile(page, area, speed.outcome, drawn, type);
  else if (speed.outcome.solved) drawBudget(page, area, speed.outcome, drawn, type);
}

const samples = 64;

/** Every speed of a hood with the point where it works, and what the run asks for. */
function drawFan(
  page: Page,
  area: Area,
  index: number,
  { hood: hoodId }: SpeedResult,
  { job, solution }: Drawn,
  type: Type,
): void {
  const hood = job.hoods.find(({ id }) => id === hoodId);
  if (!hood) return;
  const { units } = job;
  const shown = (flow: number, pressure: number): [number, number] => [
    quantity('flow', flow, units).value,
    quantity('pressure', pressure, units).value,
  ];
  const curves = hood.speeds.flatMap(({ name }, k) => {
    const known = speedCurve(hood, k);
    if (!known.known) return [];
    const end = freeDelivery(known.curve);
    const points = Array.from({ length: samples + 1 }, (_, i) => {
      const flow = (end * i) / samples;
      return shown(flow, fanTotalPressure(known.curve, flow, solution.air));
    });
    const at = solution.speeds.findIndex((each) => each.hood === hoodId && each.speed === k);
    return [{ name, points, end, at }];
  });
  if (curves.length === 0) return;
  const all = curves.flatMap(({ points }) => points);
  const frame = drawAxes(
    page,
    area,
    {
      x: [0, Math.max(...all.map(([flow]) => flow)) * 1.04],
      y: [0, Math.max(...all.map(([, pressure]) => pressure))],
      xTitle: words.paper.chart.flow(unitOf('flow', units)),
      yTitle: words.paper.chart.pressure(unitOf('pressure', units)),
    },
    type,
  );
  const most = Math.max(...curves.map(({ end }) => end));
  const flows = Array.from({ length: samples + 1 }, (_, i) => (most * i) / samples);
  const run = systemCurve(job, solution, index, flows).map(([flow, pressure]) => shown(flow, pressure));
  for (const { points, at } of curves)
    drawCurve(page, frame, points, { width: at === index ? 0.55 : 0.25, colour: inks.ink });
  drawCurve(page, frame, run, { width: 0.4, colour: inks.accent, dash: [2, 1.2] });
  const bold = style(type, sizes.small, 'semibold', inks.ink, true);
  const plain = style(type, sizes.small, 'regular', inks.ink, true);
  for (const { name, at, points } of curves) {
    const outcome = solution.speeds[at]?.outcome;
    const set = at === index ? bold : plain;
    const [first] = points;
    if (first) label(page, { x: frame.x(first[0]) + 2, y: frame.y(first[1]) - 1 }, name, set);
    if (!outcome?.solved) continue;
    const place = frame.at(shown(outcome.flow, outcome.totalPressure));
    drawCircle(page, place, 0.95, {
      fill: at === index ? inks.ink : inks.paper,
      line: { width: 0.3, colour: inks.ink },
    });
  }
  drawRunName(page, frame, run, type);
}

/** The name of the run's curve beside its end inside the field. */
function drawRunName(
  page: Page,
  frame: ChartFrame,
  run: readonly (readonly [number, number])[],
  type: Type,
): void {
  const [, top = 0] = frame.y.domain();
  const last = [...run].reverse().find(([, pressure]) => pressure <= top * 0.94);
  if (!last) return;
  const at = frame.at(last);
  const set = style(type, sizes.small, 'regular', inks.accent, true);
  label(page, { x: at.x - 3, y: at.y - 1.5 }, words.paper.chart.run, set, 'right');
}

/** Words on a plate, so that no line runs through them. */
function label(
  page: Page,
  at: { readonly x: number; readonly y: number },
  text: string,
  set: TextStyle,
  align: 'left' | 'right' = 'left',
): void {
  const width = set.font.width(text, set.size, set.tabular) + 0.8;
  const x = align === 'left' ? at.x - 0.4 : at.x - width + 0.4;
  drawRect(page, { x, y: at.y - 2.1, width, height: 2.8 }, { fill: inks.paper });
  page.text(at, text, set, align);
}

/** Total and static pressure against the way from the hood. */
function drawProfile(page: Page, area: Area, { profile }: Solved, { job }: Drawn, type: Type): void {
  const { units } = job;
  const end = profile.at(-1)?.distance ?? 0;
  if (profile.length < 2 || end <= 0) return;
  const at = (of: 'total' | 'static') =>
    profile.map((point): [number, number] => [
      quantity('run', point.distance, units).value,
      quantity('pressure', point[of], units).value,
    ]);
  const [total, still] = [at('total'), at('static')];
  const values = [...total, ...still].map(([, pressure]) => pressure);
  const [least, most] = [Math.min(0, ...values), Math.max(...values)];
  const frame = drawAxes(
    page,
    area,
    {
      x: [0, quantity('run', end, units).value],
      y: [least < -0.01 * most ? least : 0, most],
      xTitle: words.paper.chart.along(unitOf('run', units)),
      yTitle: words.paper.chart.pressureAlong(unitOf('pressure', units)),
    },
    type,
  );
  drawCurve(page, frame, still, { width: 0.3, colour: inks.ink, dash: [1.6, 1] });
  drawCurve(page, frame, total, { width: 0.55, colour: inks.ink });
  const set = style(type, sizes.small, 'regular', inks.ink, true);
  const right = frame.field.x + frame.field.width;
  const key = [
    [words.paper.chart.total, { width: 0.55, colour: inks.ink }],
    [words.paper.chart.static, { width: 0.3, colour: inks.ink, dash: [1.6, 1] }],
  ] as const;
  drawRect(page, { x: right - 26, y: frame.field.y + 0.6, width: 24, height: 8.6 }, { fill: inks.paper });
  key.forEach(([text, line], i) => {
    const y = frame.field.y + 3 + i * 4;
    page.text({ x: right - 14, y: y + 0.9 }, text, set);
    page.draw({ line }, (path) => {
      path.move({ x: right - 24, y });
      path.line({ x: right - 16, y });
    });
  });
}

/** What uses up the fan's pressure, a bar each: filled where it costs, open where a fan in the run helps. */
function drawBudget(page: Page, area: Area, solved: Solved, { job }: Drawn, type: Type): void {
  const parts: readonly BudgetPart[] = pressureBudget(solved);
  const most = Math.max(...parts.map(({ loss }) => Math.abs(loss)), Number.MIN_VALUE);
  const set = style(type, sizes.table, 'regular');
  const [labels, figures] = [34, 34];
  const room = area.width - labels - figures;
  parts.forEach(({ cause, loss, share }, i) => {
    const y = area.y + i * barHeight;
    const width = Math.max(0.3, (Math.abs(loss) / most) * room);
    page.text({ x: area.x, y: y + 4.2 }, sentence(words.causes.pressure[cause]), set);
    const bar = { x: area.x + labels, y: y + 1.2, width, height: barHeight - 2.4 };
    drawRect(page, bar, {
      fill: loss < 0 ? inks.paper : inks.muted,
      line: { width: 0.25, colour: inks.muted },
    });
    const text = `${formatPressure(loss, job.units)}, ${formatPercent(share)}`;
    page.text({ x: bar.x + width + 2, y: y + 4.2 }, text, set);
  });
}
