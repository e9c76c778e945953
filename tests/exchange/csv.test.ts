import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvText } from '../../src/exchange/csv.ts';

test('RFC 4180, section 2: CRLF after every record, quotes doubled, commas and line ends within quotes', () => {
  expect(
    csvText(
      ['a', 'b'],
      [
        ['x, "y"', 'two\nlines'],
        ['plain', 1.5],
      ],
    ),
  ).toBe('a,b\r\n"x, ""y""","two\nlines"\r\nplain,1.5\r\n');
});

test('an empty cell stays empty, and a record of one empty cell is still a record', () => {
  expect(csvText(['a', 'b'], [[undefined, '']])).toBe('a,b\r\n,\r\n');
  expect(parse(csvText(['a'], [[undefined]]))).toEqual([['a'], ['']]);
});

test('a cell that a spreadsheet would reckon is made inert, a negative figure is not', () => {
  for (const formula of ['=1+1', '+44', '@x', '-2+3', '\t=1', '＝1'])
    expect(parse(csvText(['a'], [[formula]]))[1]).toEqual([`'${formula}`]);
  expect(parse(csvText(['a'], [['-2.50'], [-3], ['- of two']]))).toEqual([['a'], ['-2.50'], ['-3'], ["'- of two"]]);
});

test('whatever the cells hold, another reader reads the same cells', () => {
  const text = fc.string({ unit: 'binary' }).filter((one) => !/^[=+\-@\t\r\n＋－＝＠\ufeff]/.test(one));
  fc.assert(
    fc.property(fc.array(fc.tuple(text, text)), (rows) => {
      expect(parse(csvText(['a', 'b'], rows), { record_delimiter: '\r\n' })).toEqual([['a', 'b'], ...rows]);
    }),
  );
});
