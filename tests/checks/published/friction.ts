import { airAt } from '../../../src/hydraulics/air.ts';
import { findMaterial } from '../../../src/hydraulics/catalogue.ts';
import { colebrook, frictionFactor } from '../../../src/hydraulics/friction.ts';
import { roughnessOf } from '../../../src/hydraulics/losses/materials.ts';
import { area } from '../../../src/hydraulics/section.ts';
import type { Section } from '../../../src/hydraulics/types.ts';
import { type Check, type Figure, input, register } from './figure.ts';
import {
  CFM,
  crossing,
  ductDrop,
  FOOT,
  FPM,
  INCH,
  INCH_OF_WATER,
  round,
  roundInches,
  standardAir,
} from './model.ts';

const GALVANIZED = roughnessOf('galvanized', roundInches(6)).roughness;

const factor: Check = {
  by: 'friction factor, Colebrook',
  ours: (x) => colebrook(input(x, 'Re'), typeof x.inputs.eD === 'number' ? x.inputs.eD : 0),
};
const per100ft: Check = {
  by: 'duct loss, galvanized',
  ours: (x) =>
    ductDrop(roundInches(input(x, 'D_in')), 100 * FOOT, GALVANIZED, input(x, 'cfm') * CFM) / INCH_OF_WATER,
};
const velocity: Check = {
  by: 'flow over area',
  ours: (x) => (input(x, 'cfm') * CFM) / area(roundInches(input(x, 'D_in'))) / FPM,
};
const roughness = (id: string): Check => ({
  by: `material ${id}`,
  ours: () => (findMaterial(id)?.roughness ?? Number.NaN) / FOOT,
});
const reynolds = (length: number, speed: number): Check => ({
  by: 'air at 20 °C and 0.075 lb/ft³',
  ours: () => (standardAir.density * length * speed) / standardAir.viscosity,
});

/** The round duct that loses as much as the rectangle at the same flow: what a circular equivalent means. */
function circularEquivalent(x: Figure): number {
  const section: Section = {
    shape: 'rectangular',
    width: input(x, 'a_in') * INCH,
    height: input(x, 'b_in') * INCH,
  };
  const flow = 6 * area(section);
  const loss = ductDrop(section, 1, GALVANIZED, flow);
  return crossing((d) => -ductDrop(round(d), 1, GALVANIZED, flow), -loss, 0.02, 1) / INCH;
}

function elevationFactor(x: Figure): number {
  const at = (elevation: number) => {
    const air = airAt({ elevation, temperature: 20, humidity: 0 });
    return ductDrop(roundInches(8), 1, GALVANIZED, 0.2, air);
  };
  return at(input(x, 'z_ft') * FOOT) / at(0);
}

const slack = (inches: number, percent: number): number =>
  roughnessOf('flexible', roundInches(inches), 1 - percent / 100).multiplier;
const slackMean = (percent: number): Check => ({
  by: `flexible duct ${percent} % slack, mean of 6, 8 and 10 in`,
  ours: () => [6, 8, 10].reduce((sum, inches) => sum + slack(inches, percent), 0) / 3,
});

export const friction = register([
  ['A-002', 'A-002', factor],
  ['A-004', 'A-004', { by: 'friction factor, laminar', ours: (x) => frictionFactor(input(x, 'Re'), 0) }],
  ['A-005', 'A-010', factor],
  ['A-012', 'A-012', factor],
  [
    'A-013',
    'A-013',
    {
      by: 'friction factor, Colebrook',
      ours: (x) => colebrook(input(x, 'Re'), input(x, 'eps_m') / input(x, 'D_m')),
    },
  ],
  ['A-015', 'A-015', velocity],
  ['A-016', 'A-016', per100ft],
  ['A-017', 'A-017', velocity],
  ['A-018', 'A-018', per100ft],
  ['A-019', 'A-019', velocity],
  ['A-020', 'A-020', per100ft],
  ['A-021', 'A-021', velocity],
  ['A-023', 'A-025', per100ft],
  ['A-028', 'A-028', roughness('aluminium')],
  ['A-029', 'A-029', roughness('galvanized')],
  ['A-030', 'A-030', roughness('flexible')],
  ['A-031', 'A-031', roughness('galvanized-short-joints')],
  ['A-032', 'A-032', roughness('flexible')],
  ['A-033', 'A-034', roughness('galvanized')],
  ['A-040', 'A-040', roughness('spiral')],
  ['A-041', 'A-041', reynolds(INCH, FPM)],
  ['A-042', 'A-042', reynolds(0.001, 1)],
  ['A-043', 'A-063', { by: 'round duct of the same loss at the same flow', ours: circularEquivalent }],
  ['A-064', 'A-064', { by: 'duct loss at elevation over that at sea level', ours: elevationFactor }],
  ['A-065', 'A-065', slackMean(15)],
  ['A-066', 'A-066', slackMean(30)],
  [
    'A-069',
    'A-075',
    { by: 'flexible duct, friction multiplier', ours: (x) => slack(input(x, 'D_in'), input(x, 'r_percent')) },
  ],
]);
