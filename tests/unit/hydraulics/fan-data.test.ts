import { describe, expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { fanTotalPressure, freeDelivery } from '../../../src/hydraulics/fan.ts';
import {
  curveOf,
  fromFreeAir,
  fromSingle,
  fromTwoPoints,
  scaledBy,
} from '../../../src/hydraulics/fan-data.ts';

const air = airOf(1.2, 1.8e-5);
const on = { basis: 'total', collarArea: 0.03, density: 1.2 } as const;
function made<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('no curve was made');
  return value;
}

describe('fan data as people have it', () => {
  test('two certified points lie on the curve, in whichever order they come', () => {
    for (const [one, other] of [
      [
        [0.14, 25],
        [0.12, 62],
      ],
      [
        [0.12, 62],
        [0.14, 25],
      ],
    ] as const) {
      const { curve, assumption } = made(fromTwoPoints(one, other, on));
      expect(fanTotalPressure(curve, 0.14, air)).toBeCloseTo(25, 9);
      expect(fanTotalPressure(curve, 0.12, air)).toBeCloseTo(62, 9);
      expect(freeDelivery(curve)).toBeGreaterThan(0.14);
      expect(assumption).toContain('parabola');
    }
  });

  test('two points that do not fall are refused', () => {
    expect(fromTwoPoints([0.1, 20], [0.2, 30], on)).toBeUndefined();
    expect(fromTwoPoints([0.1, 20], [0.1, 10], on)).toBeUndefined();
  });

  test('a free-air rating is met at no pressure, and the shut-off pressure at no flow', () => {
    const { curve } = made(fromFreeAir(0.28, 300, on));
    expect(freeDelivery(curve)).toBeCloseTo(0.28, 12);
    expect(fanTotalPressure(curve, 0, air)).toBe(300);
    expect(fanTotalPressure(curve, 0.14, air)).toBeCloseTo(225, 9);
  });

  test('a single number comes with its assumption, which can be replaced', () => {
    expect(made(fromSingle(0.28, on)).assumption).toContain('250 Pa');
    expect(made(fromSingle(0.28, on, 180)).assumption).toContain('180 Pa');
    expect(fanTotalPressure(made(fromSingle(0.28, on, 180)).curve, 0, air)).toBe(180);
  });

  test('at half the speed a fan moves half the air at a quarter of the pressure (fan laws)', () => {
    const full = made(fromFreeAir(0.28, 300, on)).curve;
    const half = made(scaledBy(full, 0.5)).curve;
    expect(freeDelivery(half)).toBeCloseTo(0.14, 12);
    expect(fanTotalPressure(half, 0.07, air)).toBeCloseTo(fanTotalPressure(full, 0.14, air) / 4, 9);
    expect(scaledBy(full, 0)).toBeUndefined();
  });

  test('a speed scaled from a scaled speed carries both assumptions; a ring of speeds has no curve', () => {
    const sheet = { pressureBasis: 'total', density: 1.2 } as const;
    const speeds = [
      { ...sheet, name: 'low', scaledFrom: { speed: 'mid', ratio: 0.5 } },
      { ...sheet, name: 'mid', scaledFrom: { speed: 'high', ratio: 0.8 } },
      { ...sheet, name: 'high', single: { flow: 0.3 } },
      { ...sheet, name: 'odd', scaledFrom: { speed: 'odd', ratio: 0.8 } },
    ];
    const low = made(curveOf(speeds, 0, 0.03));
    expect(freeDelivery(low.curve)).toBeCloseTo(0.12, 12);
    expect(low.assumptions).toHaveLength(3);
    expect(curveOf(speeds, 3, 0.03)).toBeUndefined();
    expect(curveOf(speeds, 9, 0.03)).toBeUndefined();
  });

  test('a full curve needs no assumption', () => {
    const points = [
      [0, 200],
      [0.2, 0],
    ] as const;
    const speed = { name: 'high', pressureBasis: 'static', density: 1.2, curve: points } as const;
    expect(made(curveOf([speed], 0, 0.03)).assumptions).toEqual([]);
  });
});
