import { describe, expect, it } from 'vitest';
import { pastedRows, readRows, rowsOf, typed, withPasted } from '../../../src/app/hood/curve-rows.ts';
import { readSound } from '../../../src/app/hood/sound.ts';

const points: [number, number][] = [
  [0, 285],
  [0.0713, 272.3],
  [0.283, 0],
];

describe('the table of a fan curve', () => {
  it('reads back exactly what nobody typed over, in any units', () => {
    for (const system of ['imperial', 'metric'] as const) {
      const read = readRows(rowsOf(points, system), system);
      expect(read.ok && read.points).toEqual(points);
    }
  });

  it('puts points in order of flow and leaves empty rows out', () => {
    const rows = [
      { flow: typed('600'), pressure: typed('0') },
      { flow: typed(''), pressure: typed(' ') },
      { flow: typed('0'), pressure: typed('1 in wg') },
    ];
    const read = readRows(rows, 'imperial');
    expect(read.ok && read.points.map(([flow]) => flow)).toEqual([0, expect.closeTo(0.283168, 6)]);
  });

  it.each([
    [
      'a pressure is missing',
      [
        ['0', '100'],
        ['300', ''],
      ],
      1,
      'pressure',
    ],
    [
      'a cell is no quantity',
      [
        ['0', 'lots'],
        ['300', '0'],
      ],
      0,
      'pressure',
    ],
    [
      'two points have one flow',
      [
        ['100', '50'],
        ['100', '0'],
      ],
      1,
      'flow',
    ],
  ] as const)('says where it is wrong when %s', (_, cells, row, column) => {
    const rows = cells.map(([flow, pressure]) => ({ flow: typed(flow), pressure: typed(pressure) }));
    expect(readRows(rows, 'metric')).toMatchObject({ ok: false, row, column });
  });

  it('refuses a single point, and a fan without pressure', () => {
    const row = (flow: string, pressure: string) => ({ flow: typed(flow), pressure: typed(pressure) });
    expect(readRows([row('0', '100')], 'metric').ok).toBe(false);
    expect(readRows([row('0', '0'), row('100', '0')], 'metric').ok).toBe(false);
  });
});

describe('what is pasted into the table', () => {
  it('is two columns, by tabs, semicolons or spaces, with or without a heading', () => {
    const plain = [
      ['0', '1.15'],
      ['300', '0.9'],
    ];
    for (const text of [
      '0\t1.15\n300\t0.9\n',
      '0;1.15\r\n300;0.9',
      '0 1.15\n300 0.9',
      'cfm\tin w.g.\n0\t1.15\n300\t0.9',
    ])
      expect(pastedRows(text)?.map(({ flow, pressure }) => [flow.text, pressure.text])).toEqual(plain);
  });

  it('keeps units that stand beside the figures', () => {
    expect(pastedRows('0 cfm\t1.15 in wg\n300 cfm\t0.9 in wg')?.[1]?.flow.text).toBe('300 cfm');
  });

  it('leaves a single cell to the field', () => {
    expect(pastedRows('300 cfm')).toBeNull();
  });

  it('keeps thousands that are set apart by a space in one cell where tabs or semicolons part them', () => {
    expect(pastedRows('1 200 m³/h\t0,25 kPa\n1 500 m³/h;0,2 kPa')?.map(({ flow }) => flow.text)).toEqual([
      '1 200 m³/h',
      '1 500 m³/h',
    ]);
  });

  it('goes over the rows from where it was pasted, and beyond them', () => {
    const rows = rowsOf(points, 'metric');
    const over = withPasted(rows, 2, [
      { flow: typed('900'), pressure: typed('20') },
      { flow: typed('1000'), pressure: typed('0') },
    ]);
    expect(over.map((row) => row.flow.text)).toEqual(['0', '257', '900', '1000']);
  });
});

describe('a rated sound', () => {
  it('is in dBA unless it says sones', () => {
    expect(readSound('62')).toEqual({ ok: true, value: 62 });
    expect(readSound('62 dBA')).toEqual({ ok: true, value: 62 });
    expect(readSound('62 dB(A)')).toEqual({ ok: true, value: 62 });
    const sones = readSound('4 sones');
    expect(sones.ok && sones.value).toBeCloseTo(33.2 * Math.log10(4) + 28, 9);
  });

  it('is refused where no fan is so quiet or so loud', () => {
    expect(readSound('6').ok).toBe(false);
    expect(readSound('quiet').ok).toBe(false);
  });
});
