import type { Air } from './types.ts';

/** Density at which fan curves are rated, kg/m3 (0.075 lb/ft3). Common practice. */
export const STANDARD_DENSITY = 1.2;

/** Gas constant of dry air, J/(kg·K). */
const DRY_AIR = 287.05;
/** Gas constant of water vapour, J/(kg·K). */
const VAPOUR = 461.5;
const KELVIN = 273.15;

/** Where the air is, and what state it is in. */
export interface AirState {
  /** m above sea level; below about 11 000 m. */
  readonly elevation: number;
  /** °C */
  readonly temperature: number;
  /** Relative humidity, 0-1. */
  readonly humidity: number;
}

/**
 * Barometric pressure at an elevation, Pa: `101325 (1 - 2.25577e-5 z)^5.2559`.
 * Source: the lower layer of the US Standard Atmosphere 1976, coefficients from memory.
 */
export function pressureAt(elevation: number): number {
  return 101325 * (1 - 2.25577e-5 * elevation) ** 5.2559;
}

/**
 * Pressure of saturated water vapour over water, Pa, at °C. Range about -45 to 60 °C, and within
 * half a percent of the steam tables up to 80 °C. Source: Magnus formula, coefficients 611.2,
 * 17.62 and 243.12, from memory.
 */
export function saturationPressure(temperature: number): number {
  return 611.2 * Math.exp((17.62 * temperature) / (243.12 + temperature));
}

/**
 * Dynamic viscosity of air, Pa·s, at °C: `1.458e-6 T^1.5 / (T + 110.4)` in kelvin. The effect of
 * humidity, under 1 % in a kitchen, is left out. Source: Sutherland's law as in the US Standard
 * Atmosphere 1976, coefficients from memory.
 */
export function viscosityAt(temperature: number): number {
  const kelvin = temperature + KELVIN;
  return (1.458e-6 * kelvin * Math.sqrt(kelvin)) / (kelvin + 110.4);
}

/**
 * Moist air as a mixture of ideal gases: density is the sum of dry air and vapour, each at its own
 * partial pressure. Humidity outside 0-1 is clamped.
 */
export function airAt(state: AirState): Air {
  const pressure = pressureAt(state.elevation);
  const kelvin = state.temperature + KELVIN;
  const humidity = Math.min(1, Math.max(0, state.humidity));
  const vapour = Math.min(pressure, humidity * saturationPressure(state.temperature));
  const density = (pressure - vapour) / (DRY_AIR * kelvin) + vapour / (VAPOUR * kelvin);
  return {
    temperature: state.temperature,
    pressure,
    humidity,
    density,
    viscosity: viscosityAt(state.temperature),
  };
}

/** Air known only by its density (kg/m3) and viscosity (Pa·s), as a reference case gives it. */
export function airOf(density: number, viscosity: number): Air {
  return { temperature: 20, pressure: 101325, humidity: 0, density, viscosity };
}
