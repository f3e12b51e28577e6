import { describe, expect, test } from 'vitest';
import { colebrook, frictionFactor } from '../../src/hydraulics/friction.ts';
import { off, reference } from '../support/reference.ts';

interface Roots {
  readonly source: string;
  readonly rows: readonly { Re: number; relativeRoughness: number; colebrook: number }[];
}

const roots = reference<Roots>('friction.json');

describe(`friction against: ${roots.source}`, () => {
  for (const row of roots.rows) {
    test(`Re ${row.Re}, relative roughness ${row.relativeRoughness}: the Colebrook root to 1e-14`, () => {
      expect(off(colebrook(row.Re, row.relativeRoughness), row.colebrook)).toBeLessThan(1e-14);
      expect(off(frictionFactor(row.Re, row.relativeRoughness), row.colebrook)).toBeLessThan(1e-14);
    });
  }
});
