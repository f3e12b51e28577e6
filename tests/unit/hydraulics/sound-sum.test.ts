import { expect, test } from 'vitest';
import { OCTAVES } from '../../../src/hydraulics/decibel.ts';
import { combine, flowNoiseSpectrum } from '../../../src/hydraulics/sound.ts';

test('flow noise falls from octave to octave, and less steeply in faster air', () => {
  const slow = flowNoiseSpectrum(50, 4);
  const fast = flowNoiseSpectrum(50, 12);
  expect(slow).toHaveLength(OCTAVES.length);
  for (let i = 1; i < slow.length; i += 1) expect(slow[i] ?? 0).toBeLessThan(slow[i - 1] ?? 0);
  const drop = (spectrum: readonly number[]) => (spectrum[0] ?? 0) - (spectrum.at(-1) ?? 0);
  expect(drop(fast)).toBeLessThan(drop(slow));
});

test('two equal causes are 3 dB louder than one, and each is told by itself', () => {
  const spectrum = flowNoiseSpectrum(50, 6);
  const one = combine([{ cause: 'bend', spectrum }]).level;
  const both = combine([
    { cause: 'bend', spectrum },
    { cause: 'cap', spectrum },
  ]);
  expect(both.level - one).toBeCloseTo(10 * Math.log10(2), 9);
  expect([...both.byCause]).toEqual([
    ['bend', expect.closeTo(one, 9)],
    ['cap', expect.closeTo(one, 9)],
  ]);
});

test('sources of one cause are told as one', () => {
  const spectrum = flowNoiseSpectrum(50, 6);
  const parts = [
    { cause: 'bend', spectrum },
    { cause: 'bend', spectrum },
  ] as const;
  expect([...combine(parts).byCause.keys()]).toEqual(['bend']);
});
