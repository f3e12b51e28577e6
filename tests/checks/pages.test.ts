import { expect, test } from 'vitest';
import { lengthCells, lengthsPage } from './published/lengths.ts';
import { checksPage } from './published/page.ts';

test('the page of checks is up to date (npm run docs writes it)', async () => {
  await expect(checksPage()).toMatchFileSnapshot('../../docs/checks.md');
});

test('the page of the residential duct table is up to date (npm run docs writes it)', async () => {
  await expect(lengthsPage()).toMatchFileSnapshot('../../docs/duct-lengths.md');
});

test('every length of the residential table is within what a bare straight duct could be', () => {
  for (const cell of lengthCells())
    if (typeof cell.table === 'number')
      expect(cell.open, `${cell.diameter} in ${cell.duct} ${cell.airflow} cfm`).toBeGreaterThan(cell.table);
});
