import { afterEach, describe, expect, it, vi } from 'vitest';
import { inWords } from '../../../src/words/catalogue.ts';

const rows = [
  { id: 'smooth', name: 'Smooth bend', notes: ['pressed'], c: 0.2 },
  { id: 'mitred', name: 'Mitred bend', notes: ['cut'], c: 1.2 },
];

afterEach(() => {
  vi.doUnmock('../../../src/words/en/catalogue.ts');
  vi.resetModules();
});

describe('a row of the catalogue in another language', () => {
  it('has the texts of its translation and the numbers of its own', () => {
    const texts = { bends: { smooth: { name: 'Glatter Bogen', notes: ['gepresst'] } } };
    expect(inWords('bends', rows, texts)[0]).toEqual({
      id: 'smooth',
      name: 'Glatter Bogen',
      notes: ['gepresst'],
      c: 0.2,
    });
  });

  it('stays English where it is not translated', () => {
    expect(inWords('bends', rows, { bends: { smooth: { name: 'Glatter Bogen' } } })[1]).toBe(rows[1]);
    expect(inWords('caps', rows, { bends: {} })).toBe(rows);
  });

  it('is what the program finds by its id', async () => {
    vi.resetModules();
    vi.doMock('../../../src/words/en/catalogue.ts', () => ({
      texts: {
        materials: { galvanized: { name: 'Verzinktes Stahlblech' } },
        rules: { 'duct-material': { name: 'Werkstoff' } },
        faults: { leak: { name: 'Loch im Rohr' } },
      },
    }));
    const { findMaterial, materials } = await import('../../../src/hydraulics/catalogue.ts');
    const { rules } = await import('../../../src/graph/rules.ts');
    const { causeRow } = await import('../../../src/advice/faults/types.ts');
    expect(findMaterial('galvanized')?.name).toBe('Verzinktes Stahlblech');
    expect(materials.map(({ name }) => name)).toContain('Verzinktes Stahlblech');
    expect(rules.find(({ id }) => id === 'duct-material')?.name).toBe('Werkstoff');
    expect(causeRow('leak').name).toBe('Loch im Rohr');
  });
});
