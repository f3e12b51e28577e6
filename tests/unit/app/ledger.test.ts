import { describe, expect, it } from 'vitest';
import { pressureLedger } from '../../../src/app/ledger.ts';
import { createBoard } from '../../../src/app/store.ts';
import { exampleJob } from './kitchen.ts';

function ledgers() {
  const board = createBoard(exampleJob());
  return board.getState().job.schemes.flatMap(({ id }) => {
    const { route, speeds } = board.solutionOf(id);
    return speeds.flatMap(({ outcome }) =>
      outcome.solved ? [{ outcome, entries: pressureLedger(outcome, route) }] : [],
    );
  });
}

describe('the ledger of pressure', () => {
  it('accounts for the whole pressure of the fan on a single run', () => {
    const all = ledgers();
    expect(all.length).toBeGreaterThan(0);
    for (const { outcome, entries } of all) {
      const spent = entries.reduce((sum, entry) => sum + entry.loss, 0);
      expect(Math.abs(spent / outcome.totalPressure - 1)).toBeLessThan(1e-6);
    }
  });

  it('names the largest loss first', () => {
    for (const { entries } of ledgers())
      entries.forEach((entry, i) => {
        expect(entry.loss).toBeLessThanOrEqual(entries[i - 1]?.loss ?? Number.POSITIVE_INFINITY);
      });
  });

  it('points every entry at one place on the sheets, but for the house', () => {
    for (const { entries } of ledgers())
      for (const { id, place } of entries)
        expect(place.nodes.length + place.segments.length).toBe(id === 'house' ? 0 : 1);
  });
});
