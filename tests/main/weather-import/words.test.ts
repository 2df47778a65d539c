import { expect, test } from 'vitest';
import { hundredths, notANumber, nothing, plainHundredths } from '../../../main/weather-import/digits.ts';
import { findGroups, noGroups } from '../../../main/weather-import/isd-groups.ts';
import { splitUnquoted } from '../../../main/weather-import/split-row.ts';
import {
  fiveDigits,
  fourDigits,
  sixDigits,
  threeDigits,
  twoDigits,
} from '../../../main/weather-import/words.ts';
import { seeded } from './mutate.ts';

// What is read several bytes at a time, against the platform's own ways with text: regular expressions, split, Number.

const random = seeded(4711);
const below = (limit: number) => Math.floor(random() * limit);
const textOf = (letters: string, length: number) =>
  Array.from({ length }, () => letters[below(letters.length)] ?? '').join('');
const viewOf = (text: string) => {
  const bytes = Buffer.from(`x${text}`, 'latin1');
  return new DataView(bytes.buffer, bytes.byteOffset + 1, bytes.length - 1);
};

test.each([
  [2, twoDigits],
  [3, threeDigits],
  [4, fourDigits],
  [5, fiveDigits],
  [6, sixDigits],
] as const)('%i digits are a number where all of them are digits', (count, read) => {
  for (let i = 0; i < 5000; i++) {
    const text = textOf(i % 2 === 0 ? '0123456789' : '0123456789/:+- Az\0\u00b0\u00ff', count);
    expect(read(viewOf(text), 0), text).toBe(/^\d+$/.test(text) ? Number(text) : -1);
  }
  for (let code = 0; code < 256; code++)
    for (let at = 0; at < count; at++) {
      const text = '7'.repeat(at) + String.fromCharCode(code) + '7'.repeat(count - at - 1);
      expect(read(viewOf(text), 0), text).toBe(/^\d+$/.test(text) ? Number(text) : -1);
    }
});

test('a cell is the same number in hundredths by the quick way', () => {
  for (let i = 0; i < 20_000; i++) {
    const text = textOf(i % 3 === 0 ? '0123456789.-+ Me' : '0123456789.', below(9));
    const bytes = Buffer.from(text, 'latin1');
    const quick = plainHundredths(bytes, 0, bytes.length);
    expect(quick, text).toBe(hundredths(bytes, 0, bytes.length));
    if (/^-?\d{1,7}(\.\d{1,2})?$/.test(text)) expect(quick, text).toBe(Math.round(Number(text) * 100));
    else if (text.trim() === '') expect(quick).toBe(nothing);
    else if (!/^ *[-+]?(\d+\.?\d*|\.\d+) *$/.test(text)) expect(quick, text).toBe(notANumber);
  }
});

test('a row without quotes is parted at its delimiters', () => {
  for (let i = 0; i < 20_000; i++) {
    const text = textOf(i % 5 === 0 ? 'ab,-,.9"' : 'ab,-+\u00ac\u0080.9', below(24));
    const cells = text.split(',');
    const most = 1 + below(8);
    const starts = new Int32Array(most);
    const ends = new Int32Array(most);
    const found = splitUnquoted(viewOf(`${text}\n,,`), 0, text.length, 44, starts, ends);
    if (found < 0) {
      expect(text).toContain('"');
      continue;
    }
    expect(found, text).toBe(Math.min(cells.length, most + 1));
    const parted = Array.from(starts.subarray(0, found), (start, at) => text.slice(start, ends[at]));
    expect(parted, text).toEqual(cells.slice(0, most));
  }
  expect(splitUnquoted(viewOf('a,b'), 0, 3, 44, new Int32Array(2), new Int32Array(2))).toBe(-1);
});

test('the groups of pressure and gust are the first with figures before remarks and edits', () => {
  const parts = [
    'MA1',
    'OC1',
    'REM',
    'EQD',
    '10151',
    '5',
    '08351',
    'M',
    'O',
    'Q',
    'RE',
    'EQ',
    'GA1',
    '99999',
    '0',
    'MA',
  ];
  for (let i = 0; i < 20_000; i++) {
    const text = Array.from(
      { length: below(14) },
      () => parts[below(i % 2 === 0 ? parts.length : 7)] ?? '',
    ).join('');
    const before = /^(.*?)(REM|EQD|$)/.exec(text)?.[1]?.length ?? 0;
    const pressure = /MA1(?=\d{5}.\d{5}.)/.exec(text)?.index ?? Infinity;
    const gust = /OC1(?=\d{4}.)/.exec(text)?.index ?? Infinity;
    const groups = noGroups();
    findGroups(viewOf(text), 0, text.length, groups);
    expect(groups.pressureAt, text).toBe(pressure < before ? pressure : -1);
    expect(groups.gustAt, text).toBe(gust < before ? gust : -1);
    if (groups.pressureAt >= 0)
      expect([groups.setting, groups.stationPressure]).toEqual([
        Number(text.slice(pressure + 3, pressure + 8)),
        Number(text.slice(pressure + 9, pressure + 14)),
      ]);
  }
});
