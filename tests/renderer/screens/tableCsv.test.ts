import { expect, test } from 'vitest';
import { tableCsv } from '../../../renderer/screens/tableCsv.ts';

// RFC 4180: lines end in CRLF, cells with commas or quotes are quoted, quotes doubled.
test('a table is written after RFC 4180, with plain spaces and signs', () => {
  expect(
    tableCsv([
      ['hour, local', 'said "so"', 'ft'],
      ['06:00', '\u22123\u00a0kt', 6510.123456789],
      ['1\u2060\u2009\u2060000', null, -5],
    ]),
  ).toBe('"hour, local","said ""so""",ft\r\n06:00,-3 kt,6510.12346\r\n1 000,,-5\r\n');
});

test('a text that a spreadsheet would compute is kept a text', () => {
  expect(tableCsv([['=1+1', '@x', '-y', '-3']])).toBe("'=1+1,'@x,'-y,-3\r\n");
});
