import { afterEach, describe, expect, it } from 'vitest';
import { counted } from '../../../src/words/en/plural.ts';
import { language, speak, spoken, words } from '../../../src/words/index.ts';
import { pluralsOf } from '../../../src/words/plural.ts';

afterEach(() => speak('en'));

describe('the language in use', () => {
  it('is English before another is chosen', () => {
    expect(language).toBe('en');
    expect(words.shell.skip.heading).toBe('Skip to');
  });

  it('is the first wish that there are texts in', () => {
    expect(spoken(['xx', 'en-XA', 'en'])).toBe('en-XA');
  });

  it('serves a region with the language itself', () => {
    expect(spoken(['en-GB'])).toBe('en');
  });

  it('is English where no wish can be met', () => {
    expect(spoken(['xx-YY', ''])).toBe('en');
  });

  it('changes every text', async () => {
    await speak('en-XA');
    expect(language).toBe('en-XA');
    expect(words.shell.skip.heading).toBe('⟦Šķîîþ ţöö⟧');
  });

  it('stays English for a language without texts', async () => {
    await speak('xx');
    expect(language).toBe('en');
    expect(words.shell.skip.heading).toBe('Skip to');
  });
});

describe('a count and its noun', () => {
  const turns = { one: 'turn', other: 'turns' };
  it.each([
    [0, '0 turns'],
    [1, '1 turn'],
    [2, '2 turns'],
  ])('%i is said as "%s" in English', (count, said) => expect(counted(count, turns)).toBe(said));

  it('takes as many forms as a language has', () => {
    const polish = pluralsOf('pl');
    const forms = { one: 'zakręt', few: 'zakręty', many: 'zakrętów', other: 'zakrętu' };
    expect([1, 3, 5, 22].map((n) => polish(n, forms))).toEqual(['zakręt', 'zakręty', 'zakrętów', 'zakręty']);
  });

  it('falls back on the form that every language has', () => {
    expect(pluralsOf('pl')(5, { other: 'mm' })).toBe('mm');
  });
});
