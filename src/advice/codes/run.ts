import { sentence } from '../../graph/places.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { airOf } from '../../hydraulics/air.ts';
import { ductLengthTable } from '../../hydraulics/catalogue.ts';
import { fanTotalPressure } from '../../hydraulics/fan.ts';
import { area, hydraulicDiameter } from '../../hydraulics/section.ts';
import type { FanCurve } from '../../hydraulics/types.ts';
import { formatDiameter, formatFlow, formatNumber, formatRun, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Check, type Checked, type Run, type Said, worst } from './types.ts';

const says = words.rules.run;

const NO_RUN = says.noRun;

const lengthOf = (run: Run) => run.legs.reduce((sum, leg) => sum + leg.length, 0);

/** The nodes where a run turns. */
function turnsOf(run: Run, { solution }: Checked): string[] {
  const passed = run.legs.slice(0, -1).map((leg) => leg.to);
  return passed.filter((id) => solution.route.nodes.get(id)?.bend !== undefined);
}

/** Each hood's run against a check; the worst speaks. */
const eachRun =
  (say: (run: Run, checked: Checked, limit: number) => Said): Check =>
  (checked, _rule, limit) =>
    worst(
      checked.runs
        .filter((run) => run.legs.length > 0)
        .map((run) => say(run, checked, typeof limit === 'number' ? limit : 0)),
      NO_RUN,
    );

export const runLength = eachRun((run, { job }, limit) => {
  const length = lengthOf(run);
  const measured = formatRun(length, job.units);
  const segments = run.legs.map((leg) => leg.id);
  const fails = length > limit * (1 + 1e-9);
  const say = fails ? says.tooLong : says.within;
  const message = say(run.hood.name, measured, formatRun(limit, job.units));
  return { state: fails ? 'fails' : 'meets', message, measured, segments };
});

export const turns = eachRun((run, checked, limit) => {
  const nodes = turnsOf(run, checked);
  const fails = nodes.length > limit;
  const say = fails ? says.turnsMore : says.turnsAtMost;
  const message = say(run.hood.name, times(nodes.length), formatTrimmed(limit));
  return { state: fails ? 'fails' : 'meets', message, measured: String(nodes.length), nodes };
});

function times(count: number): string {
  return count === 1 ? says.once : count === 0 ? says.never : says.times(count);
}

export const straight = eachRun((run, checked, limit) => {
  const bent = new Set(turnsOf(run, checked));
  const between = run.legs.filter((leg) => bent.has(leg.from) && bent.has(leg.to));
  const [first] = [...between].sort((a, b) => ratio(a) - ratio(b));
  if (!first) return { state: 'not applicable', message: says.noTwoTurns };
  const measured = says.diameters(formatNumber(ratio(first), 1));
  const fails = ratio(first) < limit * (1 - 1e-9);
  const short = between.filter((leg) => ratio(leg) < limit * (1 - 1e-9));
  const say = fails ? says.straightTooShort : says.straightWanted;
  const message = say(sentence(checked.places.leg(first.id)), measured, formatTrimmed(limit));
  return {
    state: fails ? 'fails' : 'meets',
    message,
    measured,
    segments: (fails ? short : [first]).map((leg) => leg.id),
  };
});

const ratio = (leg: Run['legs'][number]) => Math.max(0, leg.straight) / hydraulicDiameter(leg.section);

/** Flow of a fan at the static pressure that the table of duct lengths is rated at, m3/s; 0 where it never reaches it. */
export function flowAtRating(curve: FanCurve, collarArea: number): number {
  const air = airOf(curve.density, 1.8e-5);
  const above = (q: number) =>
    fanTotalPressure(curve, q, air) -
    (curve.density * (q / collarArea) ** 2) / 2 -
    ductLengthTable.ratedPressure;
  if (above(0) <= 0) return 0;
  let [low, high] = [0, curve.points.at(-1)?.[0] ?? 0];
  while (above(high) > 0) high *= 1.5;
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (above(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The longest duct that the residential table allows, m, elbows not yet taken off, or why it gives none.
 * Between columns the larger airflow counts, between rows the smaller diameter. Source: IRC Table M1506.2.
 */
export function tableLength(
  diameter: number,
  flow: number,
  duct: 'flex' | 'smooth',
): number | 'not allowed' | 'no limit' | 'beyond the table' {
  const column = ductLengthTable.airflows.findIndex((each) => flow <= each * (1 + 1e-6));
  if (column < 0) return 'beyond the table';
  const rows = ductLengthTable.rows.filter(
    (row) => row.duct === duct && row.diameter <= diameter * (1 + 1e-6),
  );
  const row = rows.reduce<(typeof rows)[number] | undefined>(
    (most, one) => (one.diameter > (most?.diameter ?? 0) ? one : most),
    undefined,
  );
  return row?.lengths[column] ?? 'not allowed';
}

/** The run with its deduction for each turn against the residential table, at the hood's highest speed. */
export const ductLength = eachRun((run, checked) => {
  const { units } = checked.job;
  const curve = speedCurve(run.hood, run.hood.speeds.length - 1);
  if (!curve.known) return { state: 'cannot tell', message: curve.reason };
  const flow = flowAtRating(curve.curve, area(run.hood.collar));
  const diameter = Math.min(...run.legs.map((leg) => hydraulicDiameter(leg.section)));
  const duct = run.legs.some((leg) => leg.material === 'flexible' || leg.material === 'semi-rigid')
    ? 'flex'
    : 'smooth';
  const bends = turnsOf(run, checked).length;
  const counted = lengthOf(run) + bends * ductLengthTable.deductionPerElbow;
  const measured = formatRun(counted, units);
  const allowed = tableLength(diameter, flow, duct);
  const where = { segments: run.legs.map((leg) => leg.id) };
  const fan = says[duct === 'flex' ? 'flexible' : 'smooth'](
    formatFlow(flow, units),
    formatDiameter(diameter, units),
  );
  const what = says.counts(formatRun(lengthOf(run), units), bends, measured);
  if (flow === 0)
    return {
      ...where,
      state: 'cannot tell',
      measured,
      message: says.neverReaches,
    };
  if (allowed === 'beyond the table')
    return {
      ...where,
      state: 'cannot tell',
      measured,
      message: says.tableEnds(fan, formatFlow(ductLengthTable.airflows.at(-1) ?? 0, units)),
    };
  if (allowed === 'no limit') return { ...where, state: 'meets', measured, message: says.noLimit(fan) };
  if (allowed === 'not allowed') return { ...where, state: 'fails', measured, message: says.notAllowed(fan) };
  const fails = counted > allowed * (1 + 1e-9);
  const message = says.allows(what, formatRun(allowed, units), fan);
  return { ...where, state: fails ? 'fails' : 'meets', measured, message };
});
