import { requiredAirflow } from '../../../src/advice/required.ts';
import { ductLengthTable, findLimit, type LimitRow } from '../../../src/hydraulics/catalogue.ts';
import { leakageFlow } from '../../../src/hydraulics/house.ts';
import { hydraulicDiameter } from '../../../src/hydraulics/section.ts';
import { type Check, type Figure, input, register, type Value } from './figure.ts';
import { CFM, FOOT, FPM, INCH } from './model.ts';

function lengthAllowed(x: Figure): Value {
  const row = ductLengthTable.rows.find(
    (each) => each.duct === x.inputs.duct && Math.abs(each.diameter - input(x, 'D_in') * INCH) < 1e-6,
  );
  const flow = input(x, 'fan_cfm_at_0.25_inwc') * CFM;
  const cell = row?.lengths[ductLengthTable.airflows.findIndex((each) => Math.abs(each - flow) < 1e-6)];
  if (cell === undefined) throw new Error(`${x.id} has no place in the table`);
  if (typeof cell === 'number') return cell / FOOT;
  return cell === 'not allowed' ? 'X' : 'NL';
}

/** A limit of the catalogue, in the unit of the figure; depressurization is written as below zero there. */
const limit = (id: string, unit: number): Check => ({
  by: `limit ${id}`,
  ours: () => {
    const value = (findLimit(id) as LimitRow).value;
    return typeof value === 'number' ? value / unit : value.map((each) => each / unit);
  },
});

const BTU_PER_HOUR = 1055.05585262 / 3600;
const airflow = (
  rule: string,
  cooktop: (x: Figure) => { width: number; island?: boolean; heat?: number },
) => ({
  by: `required airflow, rule ${rule}`,
  ours: (x: Figure): number => {
    const { width, island, heat } = cooktop(x);
    const { rules } = requiredAirflow({
      ceilingHeight: 2.44,
      cooktop: {
        fuel: 'gas',
        width,
        placement: island ? 'island' : 'wall',
        ...(heat === undefined ? {} : { heatInput: heat * BTU_PER_HOUR }),
      },
    });
    return (rules.find(({ id }) => id === rule)?.flow ?? Number.NaN) / CFM;
  },
});
const both = (width: number): Check => {
  const wall = airflow('width', () => ({ width }));
  const island = airflow('width', () => ({ width, island: true }));
  return { by: wall.by, ours: (x) => [wall.ours(x), island.ours(x)] };
};
const aFoot = (rule: string, island: boolean) => airflow(rule, () => ({ width: FOOT, island }));

const leak: Check = {
  by: 'leakage of a house over that at 50 Pa',
  ours: (x) => {
    const house = { volume: 400, ach50: 6, leakageExponent: input(x, 'n') };
    return leakageFlow(house, input(x, 'dP_Pa')) / leakageFlow(house, 50);
  },
};

export const ruleChecks = register([
  ['C-001', 'C-096', { by: 'code table of duct lengths', ours: lengthAllowed }],
  [
    'C-097',
    'C-097',
    { by: 'code table of duct lengths', ours: () => ductLengthTable.deductionPerElbow / FOOT },
  ],
  [
    'C-098',
    'C-098',
    {
      by: 'hydraulic diameter',
      ours: (x) =>
        hydraulicDiameter({ shape: 'rectangular', width: input(x, 'b_in'), height: input(x, 'a_in') }),
      within: { tolerance: { abs: 5e-5 }, because: 'derived, printed to four decimals' },
    },
  ],
  ['C-099', 'C-099', limit('clear-property-line', FOOT)],
  ['C-100', 'C-100', limit('clear-opening', FOOT)],
  ['C-101', 'C-101', limit('clear-intake', FOOT)],
  ['C-105', 'C-105', limit('clear-cooktop', INCH)],
  ['C-106', 'C-106', limit('make-up-trigger', CFM)],
  ['C-109', 'C-109', limit('make-up-trigger', CFM)],
  ['C-114', 'C-114', airflow('code-minimum', () => ({ width: 1 }))],
  ['C-118', 'C-118', limit('velocity-least-commercial', FPM)],
  ['D-001', 'D-001', aFoot('width', false)],
  ['D-002', 'D-002', aFoot('width', true)],
  ['D-003', 'D-003', airflow('width', (x) => ({ width: input(x, 'width_in') * INCH }))],
  ['D-004', 'D-004', airflow('width', (x) => ({ width: input(x, 'width_in') * INCH, island: true }))],
  ['D-005', 'D-005', airflow('heat-input', () => ({ width: 1, heat: 100 }))],
  ['D-006', 'D-006', airflow('heat-input', (x) => ({ width: 1, heat: input(x, 'Btu_h') }))],
  ['D-010', 'D-010', limit('run-advised', FOOT)],
  ['D-013', 'D-013', aFoot('width-minimum', false)],
  ['D-014', 'D-014', aFoot('width-minimum', true)],
  ['D-015', 'D-015', both(3 * FOOT)],
  ['D-016', 'D-016', both(4 * FOOT)],
  ['F-008', 'F-008', limit('continuous', -1)],
  ['F-009', 'F-009', limit('none', -1)],
  ['F-010', 'F-010', limit('wood-stove', -1)],
  ['F-011', 'F-011', limit('wood-stove', 1)],
  ['F-012', 'F-012', limit('make-up-minnesota', CFM)],
  ['F-013', 'F-013', limit('make-up-care', CFM)],
  ['F-014', 'F-014', limit('dp-chimney-fails', 1)],
  ['F-015', 'F-015', limit('natural-draught-water-heater', -1)],
  ['F-016', 'F-016', limit('natural-draught-common-vent', -1)],
  ['F-017', 'F-017', limit('natural-draught-furnace', -1)],
  ['F-018', 'F-018', limit('induced-draught', -1)],
  ['F-019', 'F-019', limit('sealed-combustion', -1)],
  ['F-021', 'F-023', leak],
  ['G-024', 'G-024', limit('velocity-loud-rectangular', FPM)],
  ['G-025', 'G-025', limit('velocity-loud', FPM)],
]);
