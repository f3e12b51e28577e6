import { afterEach, describe, expect, it } from 'vitest';
import { memoise } from '../../../src/graph/memo.ts';
import { formatNumber, plainChoice, plainStyle, setStyle, styleOf } from '../../../src/units/index.ts';

afterEach(() => setStyle(plainStyle));

describe('a remembered result', () => {
  it('is the same object for the same arguments', () => {
    const twice = memoise((of: object, by: number) => ({ of, by }));
    const job = {};
    expect(twice(job, 2)).toBe(twice(job, 2));
    expect(twice(job, 3)).not.toBe(twice(job, 2));
    expect(twice({}, 2)).not.toBe(twice(job, 2));
  });

  it('that holds text is worded anew in another style, and known again in the first', () => {
    let made = 0;
    const worded = memoise((of: { readonly value: number }) => {
      made += 1;
      return formatNumber(of.value, 1);
    });
    const figure = { value: 62.5 };
    expect(worded(figure)).toBe('62.5');
    setStyle(styleOf({ ...plainChoice, locale: 'de-DE' }));
    expect(worded(figure)).toBe('62,5');
    setStyle(plainStyle);
    expect(worded(figure)).toBe('62.5');
    expect(made).toBe(2);
  });
});
