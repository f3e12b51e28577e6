import { airAt, airOf } from '../../../src/hydraulics/air.ts';
import { frictionFactor } from '../../../src/hydraulics/friction.ts';
import { roughnessOf } from '../../../src/hydraulics/losses/materials.ts';
import { solveNetwork } from '../../../src/hydraulics/network.ts';
import { area } from '../../../src/hydraulics/section.ts';
import type { Air, FanCurve, LossPart, Section } from '../../../src/hydraulics/types.ts';
import { type Check, type Figure, figures, input, register } from './figure.ts';
import {
  CFM,
  crossing,
  duct,
  ductDrop,
  FOOT,
  FPM,
  GRAVITY,
  INCH_OF_WATER,
  lossAt,
  POUND,
  round,
  roundInches,
  standardAir,
  velocityPressure,
} from './model.ts';

const GALVANIZED = roughnessOf('galvanized', roundInches(6)).roughness;
/** The basis of the older friction chart, which the industrial method goes by. */
const MANY_JOINTS = roughnessOf('galvanized-short-joints', roundInches(6)).roughness;
const LITRE_PER_MINUTE = 1e-3 / 60;
const GALLON_PER_MINUTE = 3.785411784e-3 / 60;
const POUND_PER_SQUARE_INCH = 6894.757;

/** Flow through parts in series from one pressure to another, m3/s, by the network's own solve. */
function flowThrough(parts: readonly LossPart[], air: Air, pressure: number, fan?: FanCurve): number {
  const solution = solveNetwork({
    nodes: [
      { id: 'in', pressure },
      { id: 'out', pressure: 0 },
    ],
    edges: [{ id: 'run', from: 'in', to: 'out', parts, ...(fan ? { fan } : {}) }],
    air,
  });
  if (!solution.converged) throw new Error(solution.reason);
  return solution.flows.get('run') ?? Number.NaN;
}

/** A hood on a duct with a fan of parabolic curve: litres a minute. */
function parabolicFan(x: Figure): number {
  const section = round(input(x, 'D_mm') / 1000);
  const air = airOf(input(x, 'rho'), input(x, 'rho') * input(x, 'nu'));
  const [shutOff, fall] = [input(x, 'H0_mmH2O'), input(x, 'a_mmH2O_per_Lpm2')];
  const free = Math.sqrt(shutOff / fall);
  const points = Array.from({ length: 401 }, (_, i) => {
    const flow = (free * i) / 400;
    return [flow * LITRE_PER_MINUTE, (shutOff - fall * flow ** 2) * GRAVITY] as const;
  });
  const curve: FanCurve = { points, basis: 'total', collarArea: area(section), density: air.density };
  const c = 3 * 0.21 + 3.3 + 1.8 + 0.36 + 6.6 + input(x, 'alpha2');
  const parts: LossPart[] = [
    duct(section, input(x, 'L_m'), input(x, 'eps_mm') / 1000),
    { kind: 'local', c, area: area(section) },
  ];
  return flowThrough(parts, air, 0, curve) / LITRE_PER_MINUTE;
}

const branch = (of: (speed: number, section: Section, x: Figure) => number, by: string): Check => ({
  by,
  ours: (x) => {
    const section = roundInches(input(x, 'D_in'));
    return of((input(x, 'Q_cfm') * CFM) / area(section), section, x);
  },
});
const branchDuct = (x: Figure, section: Section) =>
  ductDrop(section, input(x, 'L_ft') * FOOT, MANY_JOINTS, input(x, 'Q_cfm') * CFM);
const branchEntry = (x: Figure, speed: number) =>
  lossAt(input(x, 'entry_factor') + input(x, 'accel'), velocityPressure(speed));

const inchesLost: Check = {
  by: 'loss of a given C',
  ours: (x) => lossAt(input(x, 'C'), input(x, 'Vp_inwg') * INCH_OF_WATER) / INCH_OF_WATER,
};
const pascalsLost: Check = { by: 'loss of a given C', ours: (x) => lossAt(input(x, 'C'), input(x, 'Vp_Pa')) };

const warmAir = (x: Figure) => airAt({ elevation: 0, temperature: input(x, 'T_C'), humidity: 0 });

/** Smooth duct whose loss is a given head of the air itself. */
function plasticDuct(x: Figure): number {
  const air = warmAir(x);
  const head = (d: number) =>
    -ductDrop(round(d), input(x, 'L_m'), 0, input(x, 'Q_m3_s'), air) / (air.density * GRAVITY);
  return crossing(head, -input(x, 'hL_m'), 0.05, 2);
}

/** Friction factor, velocity and Reynolds number in that duct. */
function plasticDuctState(): number[] {
  const given = figures.find(({ id }) => id === 'H-053') as Figure;
  const air = warmAir(given);
  const diameter = plasticDuct(given);
  const speed = input(given, 'Q_m3_s') / area(round(diameter));
  const re = (air.density * speed * diameter) / air.viscosity;
  return [frictionFactor(re, 0), speed, re];
}

/** Head lost by a liquid, in its own height, m. */
function liquidHead(section: Section, length: number, roughness: number, flow: number, nu: number): number {
  const liquid = airOf(900, 900 * nu);
  return ductDrop(section, length, roughness, flow, liquid) / (900 * GRAVITY);
}

function airLine(x: Figure): number {
  const psi = input(x, 'P_psig') + 14.696;
  const rankine = input(x, 'T_F') + 459.67;
  const density = (((psi * 144) / (53.35 * rankine)) * POUND) / FOOT ** 3;
  const free = ((14.696 * 144) / (53.35 * 519.67)) * (POUND / FOOT ** 3);
  const flow = (input(x, 'scfm') * CFM * free) / density;
  const section = roundInches(1.049);
  return (
    ductDrop(section, input(x, 'L_ft') * FOOT, 0.00015 * FOOT, flow, airOf(density, 1.9e-5)) /
    POUND_PER_SQUARE_INCH
  );
}

/** A water tunnel from reservoir to reservoir, ft3/s. */
function tunnel(x: Figure): number {
  const section: Section = {
    shape: 'rectangular',
    width: input(x, 'W_ft') * FOOT,
    height: input(x, 'H_ft') * FOOT,
  };
  const water = airOf(999, 1.1e-3);
  const parts: LossPart[] = [
    duct(section, input(x, 'L_ft') * FOOT, input(x, 'eps_ft') * FOOT),
    { kind: 'local', c: input(x, 'K_entr') + input(x, 'K_exit'), area: area(section) },
  ];
  return flowThrough(parts, water, input(x, 'head_ft') * FOOT * 999 * GRAVITY) / FOOT ** 3;
}

function opening(x: Figure): number[] {
  const free = input(x, 'A_ft2') * FOOT ** 2;
  const flow = flowThrough(
    [{ kind: 'local', c: 1, area: free }],
    standardAir,
    input(x, 'dp_inwg') * INCH_OF_WATER,
  );
  return [flow / free / FPM, flow / CFM];
}

export const workedChecks = register([
  ['H-007', 'H-008', { by: 'network: duct, losses and a parabolic fan', ours: parabolicFan }],
  ['H-010', 'H-010', branch((speed) => speed / FPM, 'flow over area')],
  ['H-011', 'H-011', branch((speed) => velocityPressure(speed) / INCH_OF_WATER, 'velocity pressure')],
  ['H-012', 'H-012', branch((speed, _, x) => branchEntry(x, speed) / INCH_OF_WATER, 'loss of a given C')],
  [
    'H-013',
    'H-013',
    branch(
      (speed, section, x) => branchDuct(x, section) / velocityPressure(speed) / input(x, 'L_ft'),
      'duct loss a foot over velocity pressure, roughness 0.0005 ft',
    ),
  ],
  [
    'H-014',
    'H-014',
    branch(
      (speed, section, x) => branchDuct(x, section) / velocityPressure(speed),
      'duct loss over velocity pressure, roughness 0.0005 ft',
    ),
  ],
  [
    'H-015',
    'H-015',
    branch((_, section, x) => branchDuct(x, section) / INCH_OF_WATER, 'duct loss, roughness 0.0005 ft'),
  ],
  [
    'H-016',
    'H-016',
    branch(
      (speed, section, x) => (branchEntry(x, speed) + branchDuct(x, section)) / INCH_OF_WATER,
      'entry, acceleration and duct loss, roughness 0.0005 ft',
    ),
  ],
  [
    'H-031',
    'H-031',
    {
      by: 'duct loss, galvanized',
      ours: (x) =>
        ductDrop(
          roundInches(input(x, 'D_in')),
          input(x, 'Leq_ft') * FOOT,
          GALVANIZED,
          input(x, 'cfm') * CFM,
        ) / INCH_OF_WATER,
    },
  ],
  ['H-032', 'H-032', inchesLost],
  ['H-036', 'H-036', inchesLost],
  ['H-039', 'H-040', inchesLost],
  ['H-042', 'H-045', pascalsLost],
  ['H-048', 'H-048', pascalsLost],
  ['H-053', 'H-053', { by: 'duct loss, smooth', ours: plasticDuct }],
  ['H-054', 'H-054', { by: 'friction factor, velocity and Reynolds number', ours: plasticDuctState }],
  [
    'H-055',
    'H-055',
    {
      by: 'duct loss of a liquid',
      ours: (x) =>
        liquidHead(
          round(input(x, 'D_m')),
          input(x, 'L_m'),
          input(x, 'eps_mm') / 1000,
          input(x, 'Q_m3_s'),
          input(x, 'nu'),
        ),
    },
  ],
  [
    'H-056',
    'H-056',
    {
      by: 'duct loss of a liquid',
      ours: (x) =>
        liquidHead(
          roundInches(input(x, 'D_in')),
          input(x, 'L_ft') * FOOT,
          input(x, 'eps_ft') * FOOT,
          input(x, 'Q_gpm') * GALLON_PER_MINUTE,
          input(x, 'nu_ft2_s') * FOOT ** 2,
        ) / FOOT,
    },
  ],
  ['H-057', 'H-057', { by: 'duct loss at the inlet density', ours: airLine }],
  ['H-059', 'H-059', { by: 'network: rectangular duct, entrance and exit', ours: tunnel }],
  ['H-063', 'H-063', { by: 'network: a loss of C 1', ours: opening }],
  [
    'H-064',
    'H-064',
    {
      by: 'velocity pressure',
      ours: (x) => -velocityPressure(input(x, 'V_fpm') * FPM) / INCH_OF_WATER,
    },
  ],
]);
