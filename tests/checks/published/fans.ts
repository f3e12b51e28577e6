import { speedCurve } from '../../../src/graph/speeds.ts';
import { airOf } from '../../../src/hydraulics/air.ts';
import { fanTotalPressure } from '../../../src/hydraulics/fan.ts';
import type { FanCurve } from '../../../src/hydraulics/types.ts';
import { type Check, type Figure, input, register } from './figure.ts';

/** One point of a fan's curve carried to another speed by the document's own fan laws. */
function scaled(ratio: number, flow: number, pressure: number): readonly [number, number] {
  const points: [number, number][] = [
    [0, pressure + 1],
    [flow, pressure],
    [2 * flow, 0],
  ];
  const speeds = [
    { name: 'as rated', pressureBasis: 'total' as const, density: 1.2, curve: points },
    {
      name: 'scaled',
      pressureBasis: 'total' as const,
      density: 1.2,
      scaledFrom: { speed: 'as rated', ratio },
    },
  ];
  const found = speedCurve({ id: 'h', name: 'fan', collar: { shape: 'round', diameter: 0.2 }, speeds }, 1);
  if (!found.known) throw new Error(found.reason);
  return found.curve.points[1] ?? [Number.NaN, Number.NaN];
}

const mine = 850 / 750;
const flowAt = (ratio: (x: Figure) => number, flow: string): Check => ({
  by: 'fan speed scaled by the fan laws',
  ours: (x) => scaled(ratio(x), input(x, flow), 100)[0],
});
const pressureAt = (ratio: (x: Figure) => number, pressure: (x: Figure) => number): Check => ({
  by: 'fan speed scaled by the fan laws',
  ours: (x) => scaled(ratio(x), 1, pressure(x))[1],
});
const thinner: Check = {
  by: 'fan pressure in thinner air',
  ours: (x) => {
    const curve: FanCurve = {
      points: [
        [0, input(x, 'P1_Pa') + 100],
        [1, input(x, 'P1_Pa')],
        [2, 0],
      ],
      basis: 'total',
      collarArea: 0.1,
      density: 1.2,
    };
    return fanTotalPressure(curve, 1, airOf(1.16, 1.8e-5));
  },
};

export const fanChecks = register([
  ['I-004', 'I-004', flowAt((x) => input(x, 'N2') / input(x, 'N1'), 'cfm1')],
  [
    'I-008',
    'I-008',
    pressureAt(
      (x) => input(x, 'N2') / input(x, 'N1'),
      () => 126,
    ),
  ],
  ['I-012', 'I-014', flowAt(() => mine, 'Q1_m3_s')],
  [
    'I-016',
    'I-020',
    pressureAt(
      () => mine,
      (x) => input(x, 'P1_Pa'),
    ),
  ],
  ['I-022', 'I-024', thinner],
]);
