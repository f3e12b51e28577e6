import { describe, expect, test } from 'vitest';
import { type Figure, figures } from './published/figure.ts';
import { checks, leftOut, verdicts } from './published/verdicts.ts';

const all = verdicts();
const inputs = (figure: Figure) =>
  Object.entries(figure.inputs)
    .map(([name, value]) => `${name} ${value}`)
    .join(', ');
const name = (figure: Figure) =>
  `${figure.id}: ${figure.quantity}${inputs(figure) && ` (${inputs(figure)})`} is ${figure.value} ${figure.unit} [${figure.source}, ${figure.source_kind}]`;

describe('published figures', () => {
  for (const verdict of all.filter(({ reason }) => reason === undefined))
    test(name(verdict.figure), () => {
      const { ours, figure, tolerance } = verdict;
      expect(
        verdict.agrees,
        `ours ${ours}, printed ${figure.value}, within ${JSON.stringify(tolerance)}`,
      ).toBe(true);
    });
});

describe('figures that are known to disagree still do, so that the list stays true', () => {
  for (const verdict of all.filter(({ reason }) => reason !== undefined))
    test(`${name(verdict.figure)}: ${verdict.reason}`, () => {
      expect(verdict.agrees).toBe(false);
    });
});

describe('the list of checks', () => {
  test('holds at least 200 figures and every letter from A to I', () => {
    expect(all.filter((verdict) => verdict.agrees).length).toBeGreaterThanOrEqual(200);
    expect([...new Set(all.map(({ figure }) => figure.id.charAt(0)))].join('')).toBe('ABCDEFGHI');
  });

  test('holds at least 20 figures each on friction (A), on bends and on changes of size', () => {
    const agreed = all.filter((verdict) => verdict.agrees).map(({ figure }) => figure);
    const on = (subject: RegExp) => agreed.filter(({ quantity }) => subject.test(quantity)).length;
    expect(agreed.filter(({ id }) => id.startsWith('A')).length).toBeGreaterThanOrEqual(20);
    expect(on(/elbow|bend/i)).toBeGreaterThanOrEqual(20);
    expect(on(/contraction|expansion|transition|reducer/i)).toBeGreaterThanOrEqual(20);
  });

  test('gives a reason for every figure that is not computed', () => {
    const missing = leftOut();
    for (const { id } of figures) expect(checks.has(id) || missing.has(id), id).toBe(true);
  });

  test('has no check for a figure that the file does not hold', () => {
    const known = new Set(figures.map(({ id }) => id));
    for (const id of checks.keys()) expect(known.has(id), id).toBe(true);
  });
});
