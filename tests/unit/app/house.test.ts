import { describe, expect, it } from 'vitest';
import {
  ach50From,
  appliances,
  flowAt50,
  unknownAppliances,
  withAppliance,
} from '../../../src/app/kitchen/house.ts';
import { housePascals, readPercent, readPlain, within } from '../../../src/app/kitchen/reading.ts';
import { decibels, sonesText } from '../../../src/app/strip/words.ts';

describe('a plain number', () => {
  const what = { what: 'Air changes at 50 Pa', low: 0.05, high: 60, unit: /\s*ach$/i };

  it('is read with a point or a comma, with or without its unit', () => {
    for (const text of ['4.5', '4,5', ' 4.5 ACH '])
      expect(readPlain(text, what)).toEqual({ ok: true, value: 4.5 });
  });

  it('is refused outside its range, with the range', () => {
    expect(readPlain('100', what)).toEqual({
      ok: false,
      message: 'Air changes at 50 Pa is a number from 0.05 to 60.',
    });
    expect(readPlain('tight', what).ok).toBe(false);
  });

  it('is refused in percent where it may have been meant as a share', () => {
    expect(readPercent('50', 'Humidity')).toEqual({ ok: true, value: 0.5 });
    expect(readPercent('0.5', 'Humidity').ok).toBe(false);
    expect(readPercent('0.5 %', 'Humidity')).toEqual({ ok: true, value: 0.005 });
  });

  it('is held to a range that is told in the words of its units', () => {
    const read = within({ ok: true, value: 9 }, 1, 3, 'A ceiling', (si) => `${si} m`);
    expect(read).toEqual({ ok: false, message: 'A ceiling is between 1 m and 3 m.' });
  });
});

describe('the tightness of a house', () => {
  it('is the same by air changes and by flow', () => {
    expect(ach50From(flowAt50(4.3, 410), 410)).toBeCloseTo(4.3, 12);
  });
});

describe('burning appliances', () => {
  it('are those of the catalogue that can spill, the touchiest first', () => {
    const limits = appliances.map((row) => row.value as number);
    expect(limits.length).toBeGreaterThan(4);
    expect(limits).toEqual([...limits].sort((a, b) => a - b));
  });

  it('are put in and taken out, however they were written', () => {
    const [first] = appliances;
    if (!first) throw new Error('the catalogue has appliances');
    const written = ['Natural-draft water heater', 'pizza oven'];
    expect(withAppliance(written, first, false)).toEqual(['pizza oven']);
    expect(withAppliance(['pizza oven'], first, true)).toEqual(['pizza oven', first.name]);
    expect(unknownAppliances(written)).toEqual(['pizza oven']);
  });
});

describe('the figures of the strip', () => {
  it('say how far a level may be off, and nothing where nothing is heard', () => {
    expect(decibels(61.7, 5)).toBe('62 dBA ±5');
    expect(decibels(Number.NEGATIVE_INFINITY, 5)).toBe('–');
    expect([sonesText(1), sonesText(6.54), sonesText(19.2)]).toEqual(['1.0 sone', '6.5 sones', '19 sones']);
  });

  it('tell house pressure in pascals with its sign, and no sign at nothing', () => {
    expect([housePascals(-4.21), housePascals(0.3), housePascals(-0.01)]).toEqual([
      '−4.2 Pa',
      '0.3 Pa',
      '0.0 Pa',
    ]);
  });
});
