import { expect, test } from 'vitest';
import { table } from '../../../src/command/table.ts';

const rows = [
  { name: 'low', flow: '95 cfm' },
  { name: 'high', flow: '1,210 cfm' },
];

test('columns line up, numbers to the right', () => {
  const columns = [
    { title: 'speed', cell: (row: (typeof rows)[number]) => row.name },
    { title: 'air', align: 'right' as const, cell: (row: (typeof rows)[number]) => row.flow },
  ];
  expect(table(rows, columns)).toBe(
    ['  speed        air', '  -----  ---------', '  low       95 cfm', '  high   1,210 cfm', ''].join('\n'),
  );
});

test('a combining mark takes no room', () => {
  const columns = [
    { title: 'a', cell: (row: string) => row },
    { title: 'b', cell: () => 'x' },
  ];
  expect(table(['ge\u0308', 'gee'], columns, '').split('\n')).toEqual([
    'a    b',
    '---  -',
    'ge\u0308   x',
    'gee  x',
    '',
  ]);
});

test('no rows give no table', () => {
  expect(table([], [{ title: 'a', cell: String }])).toBe('');
});
