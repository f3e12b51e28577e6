import { airAt, airOf, pressureAt, STANDARD_DENSITY, viscosityAt } from '../../../src/hydraulics/air.ts';
import { decibelAFromSones, sonesFromPhon } from '../../../src/hydraulics/decibel.ts';
import { area } from '../../../src/hydraulics/section.ts';
import { fanPower, fanShift, straightDuctPower } from '../../../src/hydraulics/sound.ts';
import { INCH_OF_WATER as CONVENTIONAL_INCH } from '../../../src/units/index.ts';
import { type Check, type Figure, input, register } from './figure.ts';
import { crossing, FOOT, FPM, INCH_OF_WATER, POUND, round, velocityPressure } from './model.ts';

/** °C of the standard atmosphere below 11 km. */
const standardTemperature = (x: Figure): number => 15 - 0.0065 * geopotential(x);
/** The table is by geometric height; pressure and temperature go by geopotential height. */
const geopotential = (x: Figure): number => {
  const z = input(x, 'z_m');
  return (6_356_766 * z) / (6_356_766 + z);
};
const pressure: Check = { by: 'air pressure', ours: (x) => pressureAt(geopotential(x)) };
const density: Check = {
  by: 'air density, dry, at the standard temperature',
  ours: (x) =>
    airAt({ elevation: geopotential(x), temperature: standardTemperature(x), humidity: 0 }).density,
};
const viscosity: Check = { by: 'air viscosity', ours: (x) => viscosityAt(standardTemperature(x)) };

const dry = (x: Figure) => airAt({ elevation: 0, temperature: input(x, 'T_C'), humidity: 0 });
const dryDensity: Check = { by: 'air density, dry', ours: (x) => dry(x).density };
const kinematic: Check = { by: 'air viscosity over density', ours: (x) => dry(x).viscosity / dry(x).density };
const pounds = (x: Figure) => airOf((input(x, 'rho_lb_ft3') * POUND) / FOOT ** 3, 1.8e-5);
const inches: Check = {
  by: 'velocity pressure',
  ours: (x) => velocityPressure(input(x, 'V_fpm') * FPM) / INCH_OF_WATER,
};
const duct: Check = {
  by: 'sound of straight duct',
  ours: (x) => straightDuctPower(input(x, 'V_m_s'), area(round(input(x, 'D_mm') / 1000))),
};
const overall = (flow: number, pa: number): number => fanPower(flow, pa).overall;
const sones: Check = { by: 'sones from phon', ours: (x) => sonesFromPhon(input(x, 'phon')) };

export const airChecks = register([
  ['E-002', 'E-002', pressure],
  ['E-003', 'E-003', density],
  ['E-004', 'E-004', viscosity],
  ['E-006', 'E-006', pressure],
  ['E-007', 'E-007', density],
  ['E-008', 'E-008', viscosity],
  ['E-010', 'E-010', pressure],
  ['E-011', 'E-011', density],
  ['E-012', 'E-012', viscosity],
  ['E-014', 'E-014', pressure],
  ['E-015', 'E-015', density],
  ['E-016', 'E-016', viscosity],
  [
    'E-017',
    'E-017',
    {
      by: 'velocity at 1 in w.g. of velocity pressure',
      ours: (x) => crossing((v) => velocityPressure(v, pounds(x)), INCH_OF_WATER, 1, 100) / FPM,
    },
  ],
  [
    'E-018',
    'E-018',
    {
      by: 'velocity at 1 Pa of velocity pressure',
      ours: (x) => crossing((v) => velocityPressure(v, airOf(input(x, 'rho'), 1.8e-5)), 1, 0.1, 10),
    },
  ],
  [
    'E-019',
    'E-019',
    { by: 'velocity pressure at 1 m/s', ours: (x) => velocityPressure(1, airOf(input(x, 'rho'), 1.8e-5)) },
  ],
  [
    'E-020',
    'E-020',
    {
      by: 'velocity pressure, air of 20 °C',
      ours: (x) => velocityPressure(input(x, 'V_m_s'), airAt({ elevation: 0, temperature: 20, humidity: 0 })),
    },
  ],
  ['E-021', 'E-025', inches],
  ['E-026', 'E-026', dryDensity],
  ['E-027', 'E-027', { by: 'air viscosity', ours: (x) => viscosityAt(input(x, 'T_C')) }],
  ['E-028', 'E-028', kinematic],
  ['E-029', 'E-029', dryDensity],
  ['E-030', 'E-030', kinematic],
  [
    'E-031',
    'E-031',
    {
      by: 'standard density',
      ours: () => (STANDARD_DENSITY * FOOT ** 3) / POUND,
      within: { tolerance: { abs: 5e-4 }, because: 'printed to three decimals; 1.2 kg/m³ is 0.0749' },
    },
  ],
  ['E-032', 'E-032', { by: 'inch of water', ours: () => CONVENTIONAL_INCH }],
  ['E-033', 'E-033', { by: 'air, dry', ours: (x) => [dry(x).density, dry(x).viscosity / dry(x).density] }],
  ['G-001', 'G-002', duct],
  ['G-003', 'G-003', { by: 'sound of straight duct at 1 m/s and 1 m²', ours: () => straightDuctPower(1, 1) }],
  [
    'G-004',
    'G-004',
    { by: 'sound power of a fan', ours: (x) => overall(input(x, 'Q_m3_s'), input(x, 'p_Pa')) },
  ],
  [
    'G-005',
    'G-005',
    {
      by: 'sound power of a fan',
      ours: (x) => overall(input(x, 'q_cfm') * FOOT * FOOT * FPM, input(x, 'h_inwg') * INCH_OF_WATER),
    },
  ],
  [
    'G-006',
    'G-006',
    {
      by: 'octaves of a fan over its overall power',
      ours: () => fanPower(1, 100).shape,
    },
  ],
  ['G-030', 'G-035', sones],
  ['G-036', 'G-039', { by: 'dBA from sones', ours: (x) => decibelAFromSones(input(x, 'sone')) }],
  [
    'G-040',
    'G-040',
    {
      by: 'shift of a fan at twice its speed',
      ours: (x) => {
        const ratio = input(x, 'N2_over_N1');
        return fanShift({ flow: 1, pressure: 1 }, { flow: ratio, pressure: ratio ** 2 });
      },
      within: { tolerance: { abs: 0.005 }, because: 'printed to two decimals' },
    },
  ],
]);
