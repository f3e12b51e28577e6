import { expect, it } from 'vitest';
import type { Words } from '../../../src/words/index.ts';
import { pseudo } from '../../../src/words/pseudo.ts';

const english = {
  plain: 'Bend',
  flow: (flow: string) => `Carries ${flow}`,
  nested: { list: ['cap', 'hood'], count: (n: number) => `${n} legs` },
};
const made = pseudo(english as unknown as Words) as unknown as typeof english;

it('accents, lengthens and brackets a text', () => expect(made.plain).toBe('⟦Ɓééñð⟧'));

it('leaves the values in a text as they came', () =>
  expect(made.flow('300 cfm')).toBe('⟦Çààŕŕîîééš 300 cfm⟧'));

it('brackets a text within a text once more', () =>
  expect(made.flow(made.plain)).toBe('⟦Çààŕŕîîééš ⟦Ɓééñð⟧⟧'));

it('reaches texts in lists and in parts of an area', () => {
  expect(made.nested.list).toEqual(['⟦çààþ⟧', '⟦ĥööööð⟧']);
  expect(made.nested.count(3)).toBe('⟦3 ļééĝš⟧');
});
