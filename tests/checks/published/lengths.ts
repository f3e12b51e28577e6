import { ductLengthTable, findCap } from '../../../src/hydraulics/catalogue.ts';
import { capLoss } from '../../../src/hydraulics/losses/caps.ts';
import { roughnessOf } from '../../../src/hydraulics/losses/materials.ts';
import { area } from '../../../src/hydraulics/section.ts';
import { CFM, ductDrop, FOOT, INCH, round, velocityPressure } from './model.ts';

/** One cell of the residential duct table beside the model. Lengths in ft. */
export interface Cell {
  readonly diameter: number;
  readonly duct: 'flex' | 'smooth';
  readonly airflow: number;
  readonly table: number | 'not allowed' | 'no limit';
  /** Straight duct with an open end, and with a wall cap with a flap. */
  readonly open: number;
  readonly capped: number;
  /** What the table leaves for everything but its length, as C on the duct; NaN where it gives no length. */
  readonly allowance: number;
}

/**
 * The longest straight duct that the model gives to a fan that moves its rated airflow against the static
 * pressure of the table; 0 where the end alone costs more.
 */
export function lengthCells(): Cell[] {
  const { rows, airflows, ratedPressure } = ductLengthTable;
  return rows.flatMap((row) =>
    row.lengths.map((cell, i) => {
      const flow = airflows[i] as number;
      const section = round(row.diameter);
      const { roughness } = roughnessOf(row.duct === 'flex' ? 'flexible' : 'galvanized', section);
      const perFoot = ductDrop(section, FOOT, roughness, flow);
      const vp = velocityPressure(flow / area(section));
      const cap = capLoss({ cap: 'wall-flap', section }).c - 1;
      const flap = findCap('wall-flap')?.flap?.openingPressure ?? 0;
      const table = typeof cell === 'number' ? Math.round(cell / FOOT) : cell;
      return {
        diameter: Math.round(row.diameter / INCH),
        duct: row.duct,
        airflow: Math.round(flow / CFM),
        table,
        open: ratedPressure / perFoot,
        capped: Math.max(0, (ratedPressure - cap * vp - flap) / perFoot),
        allowance: typeof table === 'number' ? (ratedPressure - table * perFoot) / vp : Number.NaN,
      };
    }),
  );
}

/** The page that holds the table beside the model, as Markdown. */
export function lengthsPage(): string {
  const cells = lengthCells();
  const rows = cells.map((cell) => [
    `${cell.diameter} in${cell.diameter === 8 ? ' and above' : ''}`,
    cell.duct,
    String(cell.airflow),
    typeof cell.table === 'number' ? String(cell.table) : cell.table,
    cell.open.toFixed(0),
    cell.capped.toFixed(0),
    Number.isNaN(cell.allowance) ? '' : cell.allowance.toFixed(1),
  ]);
  const steady = cells.filter((cell) => typeof cell.table === 'number' && cell.table >= 10);
  const spread = steady.map((cell) => cell.allowance).sort((a, b) => a - b);
  const middle = spread[Math.floor(spread.length / 2)] ?? Number.NaN;
  return [
    '# The residential duct length table beside the model',
    '',
    `Source of the table: ${ductLengthTable.source}. The rows for 7 in and 8 in are recalled, the others were read in a copy.`,
    '',
    'The table says how long a duct without elbows may be for a fan that moves the stated airflow at 0.25 in w.g. of',
    'static pressure. Ours is the length of straight duct that uses up that pressure at that airflow: once with an open',
    'end, once with a wall cap with a flap (common practice). Smooth duct is galvanized, flex is fully stretched.',
    '',
    'What the table holds back for all that is not straight duct (its cap, a bend or two, sag) is given in the last column',
    'as a loss coefficient on the duct: what is left of 0.25 in w.g. after the printed length, over the velocity pressure.',
    `Over the ${steady.length} cells of 10 ft and more its middle value is ${middle.toFixed(1)}, from ${(spread[0] ?? 0).toFixed(1)} to ${(spread.at(-1) ?? 0).toFixed(1)}.`,
    'So the table is shorter than a bare straight duct by design, and the more so the faster the air; a model that met it',
    'with nothing at the end would be wrong. "No limit" in the table stands where ours runs to hundreds of feet, and "not',
    'allowed" where the held-back losses alone use up the pressure.',
    '',
    'The adopted edition of the code decides, not this page.',
    '',
    '| diameter | duct | cfm | table, ft | ours, open end, ft | ours, wall cap, ft | held back, as C |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows.map((row) => `| ${row.join(' | ')} |`),
    '',
  ].join('\n');
}
