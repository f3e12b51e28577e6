import { expect, test } from 'vitest';
import { OCTAVES } from '../../../src/hydraulics/decibel.ts';
import { combine, flowNoiseShape, heardEnergy } from '../../../src/hydraulics/sound.ts';

test('flow noise falls from octave to octave, and less steeply in faster air', () => {
  const slow = flowNoiseShape(4);
  const fast = flowNoiseShape(12);
  expect(slow).toHaveLength(OCTAVES.length);
  for (let i = 1; i < slow.length; i += 1) expect(slow[i] ?? 0).toBeLessThan(slow[i - 1] ?? 0);
  const drop = (shape: readonly number[]) => (shape[0] ?? 0) - (shape.at(-1) ?? 0);
  expect(drop(fast)).toBeLessThan(drop(slow));
});

test('the shape of flow noise is the same whatever was asked before', () => {
  const first = [...flowNoiseShape(6)];
  flowNoiseShape(9);
  expect(flowNoiseShape(6)).toEqual(first);
});

const energy = heardEnergy({ overall: 50, shape: flowNoiseShape(6) }, 'outside', null);

test('two equal causes are 3 dB louder than one, and each is told by itself', () => {
  const one = combine([{ cause: 'bend' }], [energy]).level;
  const both = combine([{ cause: 'bend' }, { cause: 'cap' }], [energy, energy]);
  expect(both.level - one).toBeCloseTo(10 * Math.log10(2), 9);
  expect([...both.byCause]).toEqual([
    ['bend', expect.closeTo(one, 9)],
    ['cap', expect.closeTo(one, 9)],
  ]);
});

test('sources of one cause are told as one', () => {
  const { byCause } = combine([{ cause: 'bend' }, { cause: 'bend' }], [energy, energy]);
  expect([...byCause.keys()]).toEqual(['bend']);
});
