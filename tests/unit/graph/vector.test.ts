import { describe, expect, test } from 'vitest';
import { angleBetween, lerp, nearestOnSegment, normalize } from '../../../src/graph/vector.ts';

describe('the angle between two directions', () => {
  test.each([
    [[1, 0, 0], [3, 0, 0], 0],
    [[1, 0, 0], [0, 0, 2], 90],
    [[1, 0, 0], [1, 1, 0], 45],
    [[0, 1, 0], [0, -4, 0], 180],
    [[1, 1, 1], [1, 0, 0], 54.735610317245346],
    [[0, 0, 0], [1, 0, 0], 0],
  ] as const)('of %j and %j is %d°', (a, b, degrees) => {
    expect(angleBetween([...a], [...b])).toBeCloseTo(degrees, 12);
  });

  test('is exact where a cosine would lose it', () => {
    expect(angleBetween([1, 0, 0], [1, 1e-9, 0])).toBeCloseTo((1e-9 * 180) / Math.PI, 20);
  });
});

describe('the place on a segment that is nearest', () => {
  test('is square to it', () => {
    expect(nearestOnSegment([1, 5, 2], [0, 0, 0], [4, 0, 0])).toEqual({ at: [1, 0, 0], t: 0.25 });
  });

  test('is an end for what lies beyond', () => {
    expect(nearestOnSegment([9, 1, 0], [0, 0, 0], [4, 0, 0]).at).toEqual([4, 0, 0]);
    expect(nearestOnSegment([-9, 1, 0], [0, 0, 0], [4, 0, 0]).t).toBe(0);
  });

  test('on a segment of no length is its place', () => {
    expect(nearestOnSegment([9, 1, 0], [1, 1, 1], [1, 1, 1])).toEqual({ at: [1, 1, 1], t: 0 });
  });
});

test('halfway between two places is halfway', () => {
  expect(lerp([0, 2, 4], [2, 2, 0], 0.5)).toEqual([1, 2, 2]);
});

test('the zero vector has no direction', () => {
  expect(normalize([0, 0, 0])).toEqual([0, 0, 0]);
});
