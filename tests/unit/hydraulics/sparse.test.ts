import { describe, expect, test } from 'vitest';
import { analyse, factorize, solveFactored } from '../../../src/hydraulics/sparse.ts';
import { between, seeded, whole } from '../../support/random.ts';

/** A grounded weighted Laplacian of random links, solved and multiplied back. */
function worstResidual(seed: number, size: number, links: number): { worst: number; fill: number } {
  const random = seeded(seed);
  const from: number[] = [];
  const to: number[] = [];
  for (let v = 1; v < size; v++) {
    from.push(whole(random, 0, v - 1));
    to.push(v);
  }
  while (from.length < links) {
    const [u, v] = [whole(random, 0, size - 1), whole(random, 0, size - 1)];
    if (u !== v) {
      from.push(u);
      to.push(v);
    }
  }
  const weight = from.map(() => between(random, 0.1, 10));
  const f = analyse(size, Int32Array.from(from), Int32Array.from(to));
  const matrix = Array.from({ length: size }, () => new Float64Array(size));
  const add = (i: number, j: number, w: number): void => {
    const row = matrix[i] as Float64Array;
    row[j] = (row[j] as number) + w;
  };
  const diagonal = new Float64Array(size).fill(0.5);
  const ordered = new Float64Array(size);
  for (let l = 0; l < from.length; l++) {
    const [u, v, w] = [from[l] as number, to[l] as number, weight[l] as number];
    add(u, v, -w);
    add(v, u, -w);
    (diagonal[u] as number) += w;
    (diagonal[v] as number) += w;
    const slot = f.slot[l] as number;
    (f.off[slot] as number) -= w;
  }
  for (let v = 0; v < size; v++) {
    add(v, v, diagonal[v] as number);
    ordered[f.position[v] as number] = diagonal[v] as number;
  }
  const right = Array.from({ length: size }, () => between(random, -1, 1));
  const x = new Float64Array(size);
  for (let v = 0; v < size; v++) x[f.position[v] as number] = right[v] as number;
  expect(factorize(f, ordered)).toBe(true);
  solveFactored(f, x);
  let worst = 0;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++)
      sum += ((matrix[i] as Float64Array)[j] as number) * (x[f.position[j] as number] as number);
    worst = Math.max(worst, Math.abs(sum - (right[i] as number)));
  }
  return { worst, fill: f.lower.length };
}

describe('sparse elimination', () => {
  test('solves random systems, with links side by side too', () => {
    for (let seed = 0; seed < 40; seed++)
      expect(worstResidual(seed, 30, 29 + 2 * seed).worst).toBeLessThan(1e-11);
  });

  test('fills in nothing on a tree: one entry for each link', () => {
    for (const size of [2, 10, 200]) expect(worstResidual(size, size, size - 1).fill).toBe(size - 1);
  });

  test('refuses a matrix that is not positive', () => {
    const f = analyse(2, Int32Array.of(0), Int32Array.of(1));
    f.off[0] = -2;
    expect(factorize(f, Float64Array.of(1, 1))).toBe(false);
  });
});
