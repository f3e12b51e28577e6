import { describe, expect, it, test } from 'vitest';
import { findHelp, holds } from '../../../src/app/help/search.ts';
import { words } from '../../../src/words/index.ts';

const { sections } = words.help;

describe('a search of the help', () => {
  it('finds every word in any order, whatever the case and the accents', () => {
    expect(holds('Küche und Haus', 'HAUS kuche')).toBe(true);
    expect(holds('Küche und Haus', 'haus garten')).toBe(false);
  });

  it('cuts a section to what fits', () => {
    const found = findHelp(sections, 'carbon monoxide');
    expect(found.map(({ id }) => id)).toContain('cautions');
    const [cautions] = found.filter(({ id }) => id === 'cautions');
    expect(cautions?.blocks).toHaveLength(1);
  });

  it('shows a section whole whose title fits', () => {
    const found = findHelp(sections, 'getting started');
    expect(found).toContainEqual(sections.find(({ id }) => id === 'start'));
  });

  it('gives everything for nothing, and nothing for what is nowhere', () => {
    expect(findHelp(sections, '  ')).toBe(sections);
    expect(findHelp(sections, 'zzzz')).toEqual([]);
  });
});

test('the sections have names of their own', () => {
  expect(new Set(sections.map(({ id }) => id)).size).toBe(sections.length);
});

test('every word of the glossary has one meaning, in a sentence, and stands once', () => {
  const entries = Object.values(words.glossary.entries);
  expect(new Set(entries.map(({ term }) => term)).size).toBe(entries.length);
  for (const { term, text } of entries) expect([term, /^[A-Z].*\.$/s.test(text)]).toEqual([term, true]);
});
