import { describe, expect, test } from 'vitest';
import { airOf } from '../../src/hydraulics/air.ts';
import { fanTotalPressure, freeDelivery } from '../../src/hydraulics/fan.ts';
import { scaledBy } from '../../src/hydraulics/fan-data.ts';
import type { FanCurve } from '../../src/hydraulics/types.ts';
import { off, reference } from '../support/reference.ts';

interface Value {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly value: number;
  readonly tolerance_hint: string;
  readonly source: string;
  readonly source_kind: string;
}

const published = reference<{ values: Value[] }>('published.json').values;

/** Any curve through a shut-off pressure and a free delivery. */
const through = (shutOff: number, flow: number, density = 1.2): FanCurve => ({
  points: [
    [0, shutOff],
    [flow, 0],
  ],
  basis: 'total',
  collarArea: 1,
  density,
});

function scaled(curve: FanCurve, ratio: number): FanCurve {
  const made = scaledBy(curve, ratio);
  if (!made) throw new Error('no curve');
  return made.curve;
}

const shutOff = (curve: FanCurve, density = 1.2): number =>
  fanTotalPressure(curve, 0, airOf(density, 1.8e-5));

/**
 * Ours for each fan-law row about flow or pressure. Power is not part of the model, and I-002 does not
 * give the speeds that it changes between.
 */
function oursFor({ id, quantity, inputs }: Value): number | undefined {
  const from = inputs as { P1_Pa: number; Q1_m3_s: number; cfm1: number; N1: number; N2: number };
  if (id === 'I-004') return freeDelivery(scaled(through(1, from.cfm1), from.N2 / from.N1));
  if (id === 'I-008') return shutOff(scaled(through(126, 1), from.N2 / from.N1));
  if (quantity.startsWith('speed change 750 to 850'))
    return from.Q1_m3_s
      ? freeDelivery(scaled(through(1, from.Q1_m3_s), 850 / 750))
      : shutOff(scaled(through(from.P1_Pa, 1), 850 / 750));
  if (quantity.startsWith('density change')) return shutOff(through(from.P1_Pa, 1), 1.16);
  return undefined;
}

describe('fan laws', () => {
  const rows = published.filter((value) => value.id.startsWith('I-') && oursFor(value) !== undefined);
  test('nine published values are compared', () => {
    expect(rows).toHaveLength(9);
  });
  for (const row of rows) {
    test(`${row.id} ${row.quantity}: ${row.value} ${row.source} (${row.source_kind})`, () => {
      expect(off(oursFor(row) as number, row.value)).toBeLessThan(0.002);
    });
  }
});
