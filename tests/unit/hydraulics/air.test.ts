import { describe, expect, test } from 'vitest';
import {
  airAt,
  airOf,
  pressureAt,
  STANDARD_DENSITY,
  saturationPressure,
} from '../../../src/hydraulics/air.ts';

describe('air', () => {
  const at = (elevation: number, temperature: number, humidity = 0) =>
    airAt({ elevation, temperature, humidity });

  test('dry air at 20 °C at sea level is within half a percent of standard air', () => {
    expect(at(0, 20).density / STANDARD_DENSITY).toBeCloseTo(1.0035, 3);
  });

  test('air thins with height and with warmth', () => {
    expect(at(1600, 20).density).toBeLessThan(at(0, 20).density);
    expect(at(0, 60).density).toBeLessThan(at(0, 20).density);
  });

  test('moist air is lighter than dry air, and viscosity rises with warmth', () => {
    expect(at(0, 30, 1).density).toBeLessThan(at(0, 30, 0).density);
    expect(at(0, 60).viscosity).toBeGreaterThan(at(0, 20).viscosity);
  });

  test('the pressure at sea level is the standard atmosphere', () => {
    expect(pressureAt(0)).toBe(101325);
  });

  test('vapour saturates at 2.34 kPa at 20 °C (steam tables, from memory)', () => {
    expect(saturationPressure(20)).toBeGreaterThan(2330);
    expect(saturationPressure(20)).toBeLessThan(2345);
  });

  test('humidity beyond saturation counts as saturation', () => {
    expect(at(0, 20, 3)).toEqual(at(0, 20, 1));
  });

  test('air by density and viscosity carries exactly those', () => {
    expect(airOf(1.1, 1.9e-5)).toMatchObject({ density: 1.1, viscosity: 1.9e-5 });
  });
});
