import { describe, expect, it } from 'vitest';
import { placesFrom } from '../../../src/app/lab/lesson-places.ts';
import { changeText } from '../../../src/app/lab/text.ts';

const CFM = 0.00047194745;

describe('where a lesson was left', () => {
  it('is the step that was come to, and whether its end was reached', () => {
    const kept = { 'tight-turns': { at: 3, taken: false }, 'small-cap': { at: 0, taken: true } };
    expect(placesFrom(kept)).toEqual(kept);
  });

  it('is its beginning where a lesson has no such step', () => {
    expect(placesFrom({ 'tight-turns': { at: 17, taken: true } })).toEqual({
      'tight-turns': { at: 0, taken: true },
    });
  });

  it.each([null, 'tight-turns', 7, { 'tight-turns': null }, { 'no such lesson': { at: 1, taken: true } }])(
    'is nowhere in what is not a record of lessons: %j',
    (kept) => expect(placesFrom(kept)).toEqual({}),
  );
});

describe('the change beside two figures', () => {
  it('is the difference of the figures as they are shown', () => {
    expect(changeText('flow', 534.4 * CFM, 488.6 * CFM, 'imperial')).toBe('−45 cfm');
  });

  it('has the sign of a gain', () => {
    expect(changeText('pressure', 100, 150, 'metric')).toBe('+50 Pa');
  });

  it('takes thousands apart from decimals', () => {
    expect(changeText('flow', 999 * CFM, 1499 * CFM, 'imperial')).toBe('+500 cfm');
  });
});
