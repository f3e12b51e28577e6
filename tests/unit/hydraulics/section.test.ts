import { describe, expect, test } from 'vitest';
import { area, hydraulicDiameter, perimeter } from '../../../src/hydraulics/section.ts';

/* Source: plane geometry. */
describe('a duct section', () => {
  test('round: the hydraulic diameter is the diameter', () => {
    const round = { shape: 'round', diameter: 0.2032 } as const;
    expect(area(round)).toBeCloseTo(Math.PI * 0.1016 ** 2, 15);
    expect(perimeter(round)).toBeCloseTo(Math.PI * 0.2032, 15);
    expect(hydraulicDiameter(round)).toBe(0.2032);
  });

  test('square: the hydraulic diameter is the side', () => {
    expect(hydraulicDiameter({ shape: 'rectangular', width: 0.25, height: 0.25 })).toBeCloseTo(0.25, 15);
  });

  test('a slot: the hydraulic diameter comes to twice its height', () => {
    expect(hydraulicDiameter({ shape: 'rectangular', width: 1000, height: 0.1 })).toBeCloseTo(0.2, 4);
  });

  test('a flat oval as wide as high is a circle', () => {
    const oval = { shape: 'oval', width: 0.2, height: 0.2 } as const;
    const round = { shape: 'round', diameter: 0.2 } as const;
    expect(area(oval)).toBeCloseTo(area(round), 15);
    expect(perimeter(oval)).toBeCloseTo(perimeter(round), 15);
  });

  test('a flat oval is a circle of its minor axis and a rectangle between', () => {
    const oval = { shape: 'oval', width: 0.3, height: 0.1 } as const;
    expect(area(oval)).toBeCloseTo(Math.PI * 0.05 ** 2 + 0.2 * 0.1, 15);
    expect(perimeter(oval)).toBeCloseTo(Math.PI * 0.1 + 2 * 0.2, 15);
  });

  test('a flat oval on its end has the same area', () => {
    expect(area({ shape: 'oval', width: 0.1, height: 0.3 })).toBe(
      area({ shape: 'oval', width: 0.3, height: 0.1 }),
    );
  });
});
