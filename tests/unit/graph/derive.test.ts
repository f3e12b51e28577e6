import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/files/read.ts';
import type { Derivation } from '../../../src/graph/derive/derivation.ts';
import { derive, figuresOf } from '../../../src/graph/derive/derive.ts';
import { solveScheme } from '../../../src/graph/solve.ts';

const read = readJob(readFileSync('fixtures/example.gentlebend.json', 'utf8'));
if (!read.ok) throw new Error('the example loads');
const { job } = read;
const roof = job.schemes[1]?.id ?? '';
const solution = solveScheme(job, roof);
const speed = solution.speeds.length - 1;
const all = figuresOf(solution, speed).map((ref) => ({ ref, found: derive(job, solution, ref) }));

const input = (d: Derivation, symbol: string) => {
  const found = d.inputs.find((candidate) => candidate.symbol === symbol);
  if (!found) throw new Error(`${d.title} has no ${symbol}`);
  return found.value;
};

/** Levels of all causes, or of all sources of one, added on energy. */
const levelsAdded = (d: Derivation) => {
  const levels = d.inputs.map(({ value }) => value);
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
};

/** The formulas written out once more, from the inputs that a derivation shows and nothing else. */
const again: Record<string, (d: Derivation) => number | undefined> = {
  velocity: (d) => input(d, 'Q') / input(d, 'A'),
  'velocity pressure': (d) => (input(d, 'ρ') * input(d, 'V') ** 2) / 2,
  'Reynolds number': (d) => (input(d, 'ρ') * input(d, 'V') * input(d, 'D')) / input(d, 'μ'),
  'friction length': (d) => input(d, 's') + input(d, 't') + input(d, 'a'),
  'friction loss': (d) => input(d, 'm') * input(d, 'f') * (input(d, 'L') / input(d, 'D')) * input(d, 'p_v'),
  'loss per metre': (d) => (input(d, 'm') * input(d, 'f') * input(d, 'p_v')) / input(d, 'D'),
  'fitting loss': (d) => (input(d, 'C') * input(d, 'ρ') * input(d, 'V') ** 2) / 2,
  'equivalent length': (d) => input(d, 'Δp') / input(d, 'R'),
  'share of pressure': (d) => input(d, 'Δp') / input(d, 'p_t'),
  'share of rated': (d) => input(d, 'Q') / input(d, 'Q_r'),
  'make-up air': (d) =>
    input(d, 'Q_hoods,limit') + input(d, 'Q_other') - input(d, 'K') * input(d, 'p_limit') ** input(d, 'n'),
  'house leakage': (d) => input(d, 'K') * (-input(d, 'p_room')) ** input(d, 'n'),
  'sound at the cook': (d) => levelsAdded(d),
  'sound outside': (d) => levelsAdded(d),
  'source at the cook': (d) =>
    d.ref.at === 'fan'
      ? input(d, 'L_rated') +
        10 * Math.log10(input(d, 'Q') / input(d, 'Q_r')) +
        20 * Math.log10(input(d, 'p') / input(d, 'p_r'))
      : undefined,
  'dew point': (d) => {
    const gamma = Math.log(input(d, 'φ')) + (17.62 * input(d, 't')) / (243.12 + input(d, 't'));
    return (243.12 * gamma) / (17.62 - gamma);
  },
  'static pressure': (d) => input(d, 'p_t') - (input(d, 'ρ') * (input(d, 'Q') / input(d, 'A_c')) ** 2) / 2,
};

describe('a derivation', () => {
  it('exists for every figure of a solved speed', () => {
    expect(all.filter(({ found }) => !found).map(({ ref }) => ref)).toEqual([]);
    expect(all.length).toBeGreaterThan(80);
  });

  it('gives its value again when its formula is worked with its inputs', () => {
    let worked = 0;
    for (const { ref, found } of all) {
      const value = found && again[ref.figure]?.(found);
      if (!found || value === undefined) continue;
      worked += 1;
      const scale = Math.max(Math.abs(found.value), 1e-9);
      expect(Math.abs(value - found.value) / scale, found.title).toBeLessThan(1e-9);
    }
    expect(worked).toBeGreaterThan(50);
  });

  it('leads from every input with a reference to a derivation of the same value', () => {
    for (const { found } of all)
      for (const { ref, value, name } of found?.inputs ?? []) {
        if (ref) expect(derive(job, solution, ref)?.value, name).toBeCloseTo(value, 12);
      }
  });

  it('of a coefficient names the catalogue row and its source', () => {
    for (const { ref, found } of all) {
      if (ref.figure !== 'coefficient') continue;
      expect(found?.sources[0]?.row, found?.title).toMatch(/\S/);
      expect(found?.sources[0]?.source, found?.title).toMatch(/\S{3}/);
    }
  });

  it('balances fan and room against friction and fittings', () => {
    const flow = derive(job, solution, { figure: 'flow', speed });
    if (!flow) throw new Error('solved');
    expect(input(flow, 'Σ Δp_f') + input(flow, 'Σ Δp')).toBeCloseTo(
      input(flow, 'p_t') + input(flow, 'p_room'),
      6,
    );
  });

  it('is not made up where a speed has no numbers', () => {
    expect(derive(job, solution, { figure: 'flow', speed: 99 })).toBeUndefined();
  });
});
