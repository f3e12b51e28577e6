import { describe, expect, test } from 'vitest';
import { bendLoss } from '../../src/hydraulics/losses/bends.ts';
import { transitionLoss } from '../../src/hydraulics/losses/transitions.ts';
import { off, reference } from '../support/reference.ts';

interface BendRow {
  readonly angle: number;
  readonly r_over_D: number;
  readonly Rennels: number;
  readonly Miller: number;
  readonly straight_friction_of_arc_smooth: number;
}
type Methods = Readonly<Record<string, number>> & { readonly d_over_D: number; readonly angle?: number };
interface Transitions {
  readonly source: string;
  readonly contraction_sharp: { readonly rows: readonly Methods[] };
  readonly contraction_conical: { readonly rows: readonly Methods[] };
  readonly diffuser_sharp: { readonly rows: readonly Methods[] };
  readonly diffuser_conical: { readonly rows: readonly Methods[] };
}

const bends = reference<{ source: string; rows: readonly BendRow[] }>('bends.json');
const transitions = reference<Transitions>('transitions.json');

const change = (from: number, to: number, angle?: number): number =>
  transitionLoss({
    from: { shape: 'round', diameter: from },
    to: { shape: 'round', diameter: to },
    ...(angle === undefined ? { kind: 'abrupt' } : { kind: 'conical', angle }),
  }).c;
const grow = (row: Methods) => change(row.d_over_D, 1, row.angle);
const shrink = (row: Methods) => change(1, row.d_over_D, row.angle);
const opinions = ({ d_over_D: _ratio, angle: _angle, ...methods }: Methods) => Object.values(methods);

describe(`bends beside: ${bends.source}`, () => {
  const ordinary = bends.rows.filter(
    (row) => row.angle >= 45 && row.angle <= 90 && row.r_over_D >= 0.75 && row.r_over_D <= 2.5,
  );
  test('there are ordinary bends to compare', () => expect(ordinary.length).toBeGreaterThanOrEqual(20));
  for (const row of ordinary)
    test(`${row.angle}° at r/D ${row.r_over_D}, with its arc: within 25 % of the nearer of two methods`, () => {
      const section = { shape: 'round', diameter: 0.1524 } as const;
      const { c } = bendLoss({ kind: 'smooth', angle: row.angle, radiusRatio: row.r_over_D, section });
      const ours = c + row.straight_friction_of_arc_smooth;
      expect(Math.min(off(ours, row.Rennels), off(ours, row.Miller))).toBeLessThan(0.25);
    });
});

describe(`transitions beside: ${transitions.source}`, () => {
  for (const row of transitions.diffuser_sharp.rows)
    test(`abrupt expansion, d/D ${row.d_over_D}: Borda-Carnot to 1e-9`, () => {
      expect(off(grow(row), row.borda_carnot as number)).toBeLessThan(1e-9);
    });

  for (const row of transitions.diffuser_conical.rows)
    test(`cone of ${row.angle}°, growing, d/D ${row.d_over_D}: the Crane column to 0.6 %`, () => {
      expect(off(grow(row), row.Crane as number)).toBeLessThan(0.006);
    });

  for (const row of transitions.contraction_sharp.rows)
    test(`abrupt contraction, d/D ${row.d_over_D}: within a fifth of the methods' span`, () => {
      inSpan(shrink(row), opinions(row), 0.2);
    });

  for (const row of transitions.contraction_conical.rows)
    test(`cone of ${row.angle}°, shrinking, d/D ${row.d_over_D}: within two fifths of the methods' span`, () => {
      inSpan(shrink(row), opinions(row), 0.4);
    });
});

/** The methods scatter: ours lies between the least and the largest of them, give or take a share. */
function inSpan(ours: number, methods: readonly number[], share: number): void {
  expect(ours).toBeGreaterThan(Math.min(...methods) * (1 - share));
  expect(ours).toBeLessThan(Math.max(...methods) * (1 + share));
}
