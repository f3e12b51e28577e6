import { words } from '../../words/index.ts';
import { type Derivation, type DerivationInput, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.air;

const idealGas = formulaSource('moist-air', say.mixtureSource);

const atmosphere = formulaSource('barometer', say.atmosphereSource, 'memory');

/** Density of the air in the duct, kg/m3. */
export function density({ solution, speed, job }: Scene): Derivation {
  const { air } = solution;
  return {
    ref: { figure: 'density', speed },
    title: say.density,
    symbol: 'ρ',
    value: air.density,
    unit: 'kg/m³',
    kind: 'density',
    formula:
      'ρ = (p − p_v) / (287.05 T) + p_v / (461.5 T), p = 101325 (1 − 2.25577e-5 h)^5.2559, p_v = φ · 611.2 exp(17.62 t / (243.12 + t)), T = t + 273.15',
    inputs: [
      { symbol: 'h', name: say.elevation, value: job.air.elevation, unit: 'm', kind: 'elevation' },
      { symbol: 'p', name: say.barometric, value: air.pressure, unit: 'Pa' },
      { symbol: 't', name: say.temperature, value: air.temperature, unit: '°C', kind: 'temperature' },
      { symbol: 'φ', name: say.humidity, value: air.humidity, unit: '' },
    ],
    sources: [idealGas, atmosphere],
    notes: [],
  };
}

/** Dynamic viscosity of the air in the duct, Pa·s. */
export function viscosity({ solution, speed }: Scene): Derivation {
  const { air } = solution;
  return {
    ref: { figure: 'viscosity', speed },
    title: say.viscosity,
    symbol: 'μ',
    value: air.viscosity,
    unit: 'Pa·s',
    formula: 'μ = 1.458e-6 T^1.5 / (T + 110.4), T = t + 273.15',
    inputs: [{ symbol: 't', name: say.temperature, value: air.temperature, unit: '°C', kind: 'temperature' }],
    sources: [formulaSource('sutherland', say.sutherlandSource, 'memory')],
    notes: [],
  };
}

/** The density as an input of another figure. */
export function densityInput(scene: Scene): DerivationInput {
  return {
    symbol: 'ρ',
    name: say.airDensity,
    value: scene.solution.air.density,
    unit: 'kg/m³',
    kind: 'density',
    ref: { figure: 'density', speed: scene.speed },
  };
}
