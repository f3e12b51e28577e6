import { capTables } from '../../../src/hydraulics/catalogue.ts';
import { openEnd } from '../../../src/hydraulics/losses/caps.ts';
import { entryLoss } from '../../../src/hydraulics/losses/entries.ts';
import { inlineLoss } from '../../../src/hydraulics/losses/inline.ts';
import { branchEntryFactor, junctionLoss } from '../../../src/hydraulics/losses/junctions.ts';
import { lookUp } from '../../../src/hydraulics/losses/table.ts';
import { transitionLoss } from '../../../src/hydraulics/losses/transitions.ts';
import { type Check, type Figure, input, register } from './figure.ts';
import { round, roundInches } from './model.ts';

const section = roundInches(6);
const DEGREES = 180 / Math.PI;

/** The angle, or the middle of a printed band such as `15-40`. */
function angleOf(x: Figure): number {
  const ends = String(x.inputs.theta_deg).split('-').map(Number);
  return ends.reduce((sum, end) => sum + end, 0) / ends.length;
}

const change = (from: number, to: number, angle?: number): number =>
  transitionLoss({
    from: round(from),
    to: round(to),
    kind: angle === undefined ? 'abrupt' : 'conical',
    ...(angle === undefined ? {} : { angle }),
  }).c;

/** Included angle of a cone between two diameters over a length, degrees. */
const cone = (x: Figure): number =>
  2 * Math.atan(Math.abs(input(x, 'D1') - input(x, 'D2')) / 2 / input(x, 'l')) * DEGREES;

const contraction: Check = {
  by: 'contraction',
  ours: (x) => change(0.2 * Math.sqrt(input(x, 'A1_over_A')), 0.2, angleOf(x)),
};
const abrupt: Check = { by: 'abrupt change', ours: (x) => change(input(x, 'D1'), input(x, 'D2')) };
const conical: Check = { by: 'conical change', ours: (x) => change(input(x, 'D1'), input(x, 'D2'), cone(x)) };
const entry = (
  kind: string,
  of: (x: Figure) => Omit<Parameters<typeof entryLoss>[0], 'kind' | 'section'>,
): Check => ({
  by: `entry ${kind}`,
  ours: (x) => entryLoss({ kind, section, ...of(x) }).c,
});
const inline = (kind: string, name: 'freeArea' | 'angle', from: string): Check => ({
  by: kind,
  ours: (x) => inlineLoss({ kind, section, [name]: input(x, from) }).c,
});
const plainEnd = entry('wall-entry', () => ({ projection: 1 }));
const flush = entry('wall-entry', () => ({}));
const leaving: Check = { by: 'open end', ours: () => openEnd(section).c };

export const fittingChecks = register([
  ['B-241', 'B-268', contraction],
  [
    'B-269',
    'B-289',
    entry('wall-entry', (x) => ({ thickness: input(x, 't_over_D'), projection: input(x, 'L_over_D') })),
  ],
  ['B-290', 'B-301', entry('bellmouth', (x) => ({ lipRadius: input(x, 'r_over_D') }))],
  ['B-315', 'B-319', { by: 'branch entry', ours: (x) => branchEntryFactor(input(x, 'angle_deg')) }],
  ['B-320', 'B-320', plainEnd],
  ['B-321', 'B-322', flush],
  ['B-323', 'B-325', abrupt],
  ['B-326', 'B-332', conical],
  [
    'B-333',
    'B-333',
    { by: 'conical change', ours: (x) => change(input(x, 'D1'), input(x, 'D2'), input(x, 'angle_deg')) },
  ],
  ['B-334', 'B-334', leaving],
  ['B-335', 'B-335', flush],
  ['B-336', 'B-336', plainEnd],
  ['B-339', 'B-340', inline('perforated-plate', 'freeArea', 'alpha')],
  ['B-346', 'B-347', contraction],
  ['B-348', 'B-348', { by: 'contraction, area ratio 2', ours: (x) => change(Math.SQRT2, 1, angleOf(x)) }],
  [
    'B-351',
    'B-351',
    { by: 'volume damper, open', ours: () => inlineLoss({ kind: 'volume-damper-open', section }).c },
  ],
  [
    'B-352',
    'B-352',
    {
      by: 'diverging wye, 45°',
      ours: () => junctionLoss({ angle: 45, flowRatio: 0.25, areaRatio: 0.5, converging: false }).branchC,
    },
  ],
  ['B-365', 'B-375', inline('screen', 'freeArea', 'n')],
  [
    'B-376',
    'B-383',
    {
      by: 'weather cap',
      ours: (x) => lookUp(capTables.weatherCap.table, { 'H/D': input(x, 'H_over_D') }).value,
    },
  ],
  ['B-384', 'B-390', inline('balancing-damper', 'angle', 'angle_deg')],
  ['B-391', 'B-391', leaving],
]);
