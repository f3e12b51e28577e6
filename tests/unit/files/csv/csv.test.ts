import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cell, csvText } from '../../../../src/files/csv/csv.ts';

/** What a spreadsheet reads, by a reader of its own. */
function read(text: string, delimiter = ','): string[][] {
  return parse(text, { bom: true, delimiter, record_delimiter: '\r\n' });
}

const table = (...rows: Cell[][]) => ({ heads: ['a', 'b'], rows });

describe('a table for spreadsheets', () => {
  it('begins with the mark of UTF-8 and ends every line with CR LF', () => {
    expect(csvText(table(['é', 1]))).toBe('\uFEFFa,b\r\né,1\r\n');
  });

  it('reads back as it was: commas, quotes, line breaks and spaces', () => {
    const texts = ['8" round, galvanized', 'two\r\nlines', ' edge ', 'a;b', '', '“’'];
    expect(read(csvText(table(...texts.map((text) => [text, 0]))))).toEqual([
      ['a', 'b'],
      ...texts.map((text) => [text, '0']),
    ]);
  });

  it('reads back as it was, whatever the text, but for what could be a formula', () => {
    const text = fc.string({ unit: 'grapheme' }).filter((one) => !/^[=+\-@\t\r\n＝＋－＠\uFEFF]/.test(one));
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text), { minLength: 1 }), (rows) => {
        for (const style of ['point', 'comma'] as const)
          expect(read(csvText(table(...rows), style), style === 'comma' ? ';' : ',').slice(1)).toEqual(rows);
      }),
      { numRuns: 200 },
    );
  });

  it.each(['=1+1', '+cmd', '-2+3', '@SUM(A1)', '\tx', '\r=1', '＝1+1', '=HYPERLINK("x","y")'])(
    'makes text of %j, that no spreadsheet takes it for a formula',
    (text) => {
      expect(read(csvText(table([text, 0])))[1]?.[0]).toBe(`'${text}`);
    },
  );

  it('leaves a number below zero the number that it is', () => {
    expect(csvText(table([-12.5, -0.001]))).toBe('\uFEFFa,b\r\n-12.5,-0.001\r\n');
  });

  it('writes a decimal comma and semicolons where that is how numbers are read', () => {
    expect(csvText(table([-12.5, 'a, b; c']), 'comma')).toBe('\uFEFFa;b\r\n-12,5;"a, b; c"\r\n');
  });

  it('writes no exponent, and leaves a cell empty for nothing and for what is no number', () => {
    expect(csvText(table([1.25e-7, null], [Number.NaN, Number.POSITIVE_INFINITY]))).toBe(
      '\uFEFFa,b\r\n0.000000125,\r\n,\r\n',
    );
  });

  it('gives back every number that it was given', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(number, (value) => {
        const short = Number(value.toPrecision(6));
        const [, row] = read(csvText(table([short, 0])));
        expect(Math.abs(Number(row?.[0]) - short)).toBeLessThan(1e-18 + Math.abs(short) * 1e-12);
      }),
    );
  });
});
