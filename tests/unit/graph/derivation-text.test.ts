import { describe, expect, it } from 'vitest';
import type { Derivation } from '../../../src/graph/derive/derivation.ts';
import { derive, figuresOf } from '../../../src/graph/derive/derive.ts';
import { formulaRuns } from '../../../src/graph/derive/formula.ts';
import {
  catalogueRow,
  derivationText,
  notesOf,
  shownValue,
  significant,
} from '../../../src/graph/derive/text.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob } from '../app/kitchen.ts';

describe('a value is shown for people and in SI', () => {
  it('has four significant digits, without an exponent where it can be read without', () => {
    expect([0.24312, 142_345, 1.8205e-5, -3.3333, 0].map((value) => significant(value))).toEqual([
      '0.2431',
      '142345',
      '1.820 × 10⁻⁵',
      '−3.333',
      '0',
    ]);
  });

  it('is a dash where there is no number', () => {
    expect(significant(Number.NaN)).toBe('–');
  });

  it('says the same thing only once', () => {
    const pressure = { value: 62, unit: 'Pa', kind: 'pressure' } as const;
    expect(shownValue(pressure, 'metric')).toEqual({ people: '62 Pa', si: null });
    expect(shownValue(pressure, 'imperial')).toEqual({ people: '0.25 in w.g.', si: '62 Pa' });
  });
});

it('a diameter is told in inches or millimetres, a run of duct in feet or metres', () => {
  const run = { unit: 'm', kind: 'run' } as const;
  expect(shownValue({ ...run, value: 0.2032 }, 'imperial')).toEqual({ people: '8 in', si: '0.2032 m' });
  expect(shownValue({ ...run, value: 0.2032 }, 'metric').people).toBe('203.2 mm');
  expect(shownValue({ ...run, value: 6.1 }, 'imperial').people).toBe('20.0 ft');
});

it('a level of sound is told in whole decibels, for it is no surer than that', () => {
  expect(shownValue({ value: 70.66, unit: 'dBA' }, 'metric')).toEqual({ people: '71 dBA', si: null });
});

describe('a formula is set as it is spoken of', () => {
  const text = (set: string, formula: string, symbols: string[] = []) =>
    formulaRuns(formula, symbols)
      .filter((run) => run.set === set)
      .map((run) => run.text);

  it('slants symbols and leaves words upright', () => {
    expect(text('symbol', 'L = s + a: the arc of a bend', ['L', 's'])).toEqual(['L', 's']);
    expect(text('symbol', 'turbulent (Re ≥ 4000): 1/√f', ['Re'])).toEqual(['Re', 'f']);
  });

  it('lowers indices and raises powers', () => {
    expect(text('sub', 'Δp_f = m · f · (L / D) · p_v')).toEqual(['f', 'v']);
    expect(text('sup', '1.458e-6 T^1.5')).toEqual(['−6', '1.5']);
    expect(text('sub', '−2 log10(x)')).toEqual(['10']);
  });

  it('takes figures for indices, and brackets or letters for powers', () => {
    expect(text('sub', 'L_1 + Q_hoods,limit')).toEqual(['1', 'hoods,limit']);
    expect(text('sup', 'Σ 10^(L_i / 10) = K p^n')).toEqual(['Li / 10', 'n']);
  });

  it('loses no character', () => {
    const formula = "the row's C, 1/√f = −2 log10(ε/(3.7 D) + 2.51/(Re √f)) at p_t(Q)";
    const joined = formulaRuns(formula)
      .map((run) => run.text)
      .join('');
    expect(joined).toBe(formula.replace('_', ''));
  });
});

describe('every figure of the example', () => {
  const job = exampleJob();
  const solution = solveScheme(job, job.schemes[0]?.id ?? '');
  const all = figuresOf(solution, 0).map((ref) => derive(job, solution, ref) as Derivation);

  it('can be copied as text with its value and each of its sources', () => {
    for (const derivation of all) {
      const text = derivationText(derivation, 'imperial');
      expect(text).toContain(derivation.title);
      expect(text).toContain(shownValue(derivation, 'imperial').people);
      for (const source of derivation.sources) expect(text).toContain(source.source);
    }
  });

  it('names the catalogue row of every source that is one', () => {
    const rows = all
      .flatMap((derivation) => derivation.sources)
      .filter((s) => !s.row.startsWith('formulas/'));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.filter((source) => catalogueRow(source) === undefined)).toEqual([]);
  });

  it('says each note once', () => {
    for (const derivation of all) {
      const notes = notesOf(derivation);
      expect(new Set(notes).size).toBe(notes.length);
    }
  });
});
