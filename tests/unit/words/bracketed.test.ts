import { describe, expect, it } from 'vitest';
import { catalogueTexts, leftBehind, textsIn } from '../../support/bracketed.ts';

describe('what is left behind of a text in the pseudo-language', () => {
  it.each([
    '⟦Ɓééñð⟧',
    '⟦Çààŕŕîîééš 300 cfm⟧',
    '⟦Ɓééñð ⟦2⟧ öö⟧',
    '300 cfm',
    '−4.2 Pa',
    '⟦Åîî⟧: 8 in',
    'r/D 1.5',
  ])('is nothing in "%s"', (text) => expect(leftBehind(text, [])).toBe(''));

  it('is what stands outside the brackets', () => expect(leftBehind('⟦Ɓééñð⟧ left', [])).toBe('left'));

  it('is a text without any', () => expect(leftBehind('Bend', [])).toBe('Bend'));

  it('is not what a person has named, in capitals or without', () =>
    expect(leftBehind('out the north wall, ⟦ɓééñð⟧', ['Out the north wall'])).toBe(''));

  it('is a word that only holds a name', () => expect(leftBehind('turns', ['turn'])).toBe('turns'));

  it('is a word that only holds a unit', () => expect(leftBehind('minute', [])).toBe('minute'));
});

it('finds the texts of a document by their keys', () => {
  const job = { title: 'Flat', hoods: [{ id: 'h1', name: 'Island' }], notes: ['a', 'b'] };
  expect(textsIn(job, (key) => key !== 'id')).toEqual(['Flat', 'Island', 'a', 'b']);
});

it('knows what the catalogue says', () =>
  expect(catalogueTexts()).toContain('Galvanized steel, many joints'));
