import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { flag } from '../../../main/store/observation-columns.ts';
import { fileWith, sample, scanAll, utc } from './samples.ts';

const kennedy = readFileSync(sample('JFK_2020_excerpt.csv'), 'utf8');
const [header = '', ...lines] = kennedy.trimEnd().split('\n');

describe('the sample of New York Kennedy against the reports beside its columns', () => {
  test('time, temperature, setting and wind are those of the whole report', async () => {
    const { rows, summary } = await scanAll(sample('JFK_2020_excerpt.csv'));
    expect(summary).toMatchObject({ kind: 'archive-csv', observationCount: lines.length, skipped: [] });
    let compared = 0;
    lines.forEach((line, i) => {
      const report = /KJFK .*$/.exec(line)?.[0] ?? '';
      const time = /(\d\d)(\d\d)(\d\d)Z/.exec(report);
      const setting = /\bA(\d{4})\b/.exec(report);
      const tenths = /\bT([01])(\d{3})([01])(\d{3})\b/.exec(report);
      const wind = /\b(\d{3}|VRB)(\d\d)(?:G(\d\d))?KT\b/.exec(report);
      const row = rows[i];
      expect(time, report).not.toBeNull();
      const date = new Date((row?.epochS ?? 0) * 1000);
      expect([date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes()]).toEqual(
        time?.slice(1, 4).map(Number),
      );
      // A setting has two decimals in the report and in the column: to half of the last digit that is kept.
      if (setting !== null)
        expect(
          Math.abs((row?.altimeterSettingHpa ?? NaN) - (Number(setting[1]) / 100) * 33.863_89),
        ).toBeLessThan(0.005 + 1e-9);
      if (tenths !== null) {
        const celsius = (sign: string | undefined, digits: string | undefined) =>
          ((sign === '1' ? -1 : 1) * Number(digits)) / 10;
        // The column is in whole degF: half of one is 0.28 degC, and half a hundredth for what is kept.
        expect(Math.abs((row?.temperatureC ?? NaN) - celsius(tenths[1], tenths[2]))).toBeLessThan(0.283);
        expect(Math.abs((row?.dewPointC ?? NaN) - celsius(tenths[3], tenths[4]))).toBeLessThan(0.283);
        compared++;
      }
      if (wind !== null) {
        const speedKt = Number(wind[2]);
        expect(row?.windFromDeg).toBe(wind[1] === 'VRB' ? -1 : Number(wind[1]));
        // 1 kt is 0.514444 m/s; hundredths are kept.
        expect(Math.abs((row?.windSpeedMs ?? NaN) - speedKt * 0.514444)).toBeLessThan(0.0051);
        if (wind[3] !== undefined)
          expect(Math.abs((row?.gustMs ?? NaN) - Number(wind[3]) * 0.514444)).toBeLessThan(0.0051);
      }
    });
    expect(compared).toBeGreaterThan(80);
  });
});

test('other columns, blanks around their names, degC and sea-level pressure only', async () => {
  const { rows, summary } = await scanAll(sample('ORD_2010_excerpt.txt'));
  expect(summary.observationCount).toBe(60);
  expect(summary.pressureFrom.altimeterSettingCount).toBe(0);
  expect(summary.remarks.join(' ')).toMatch(/reduced to sea level: the least certain/);
  // Read off the file: ORD,2010-10-23 00:51,13.30,-0.60,180.00,7.00,1017.20,M
  expect(rows[0]?.epochS).toBe(utc('2010-10-23T00:51'));
  expect(rows[0]?.temperatureC).toBeCloseTo(13.3, 9);
  expect(rows[0]?.dewPointC).toBeCloseTo(-0.6, 9);
  expect(rows[0]?.seaLevelPressureHpa).toBeCloseTo(1017.2, 9);
  expect(rows[0]?.altimeterSettingHpa).toBeUndefined();
});

const short = 'station,valid,tmpf,dwpf,drct,sknt,alti,mslp,gust,skyc1\n';
const row = (time: string, rest = '66.00,60.00,180.00,10.00,29.92,M,M,CLR', station = 'ABC') =>
  `${station},${time},${rest}\n`;

test('missing values may be M, blank or null', async () => {
  const { rows } = await scanAll(fileWith(short + row('2020-01-01 00:00', 'M,,null,10.00,29.92,None,M,CLR')));
  expect(rows).toHaveLength(1);
  expect(rows[0]?.temperatureC).toBeUndefined();
  expect(rows[0]?.dewPointC).toBeUndefined();
  // A speed without a direction counts as variable, which is the safe side for a runway.
  expect(rows[0]?.windFromDeg).toBe(-1);
});

test('rows that cannot be used are counted by reason with the first examples by line number', async () => {
  const content =
    short +
    row('2020-01-01 00:00') +
    row('2020-02-30 00:00') +
    row('2020-01-01 24:00') +
    row('2020-01-01 01:00', '66..0,60.00,180.00,10.00,29.92,M,M,CLR') +
    row('2020-01-01 02:00', '66.00,60') +
    row('2020-01-01 03:00', '66.00,60.00,180.00,10.00,29.92,M,M') +
    row('2020-01-01 04:00', 'M,M,M,M,M,M,M,CLR') +
    row('2020-01-01 05:00', '66.00,60.00,180.00,10.00,1013.25,M,M,CLR') +
    row('2020-01-01 06:00', '66.00,70.00,180.00,10.00,29.92,M,M,CLR') +
    short +
    row('2020-01-01 07:00', undefined, 'XYZ') +
    'garbage\n';
  const { rows, summary } = await scanAll(fileWith(content));
  const found = Object.fromEntries(
    summary.skipped.map((each) => [each.reason, each.examples.map((example) => example.line)]),
  );
  expect(found).toEqual({
    'no such date or time: row left out': [3, 4],
    'temperature (tmpf) is not a number: row left out': [5],
    'row cut short: left out': [6, 7, 13],
    'no value in it that is kept: row left out': [8],
    'pressure outside 850 to 1100 hPa: value left out': [9],
    'dew point above temperature: kept, marked, left out of figures': [10],
    'header again: line left out': [11],
    'row of another station: left out': [12],
  });
  expect(rows.map((each) => each.epochS)).toEqual(
    ['00', '05', '06'].map((hour) => utc(`2020-01-01T${hour}:00`)),
  );
  expect(rows[1]?.altimeterSettingHpa).toBeUndefined();
  expect(rows[1]?.flags).toBe(flag.pressureOutOfRange);
  expect(rows[2]?.flags).toBe(flag.dewPointAboveTemperature);
  expect(summary.usableCount).toBe(1);
  expect(summary.unusable).toEqual([
    { reason: 'no pressure', count: 1 },
    { reason: 'dew point above temperature', count: 1 },
  ]);
});

test('of several stations the first is read, or the one that is asked for', async () => {
  const content =
    short +
    row('2020-01-01 00:00') +
    row('2020-01-01 01:00', undefined, 'XYZ') +
    row('2020-01-01 02:00', undefined, 'XYZ');
  const first = await scanAll(fileWith(content));
  expect(first.summary.stationsInFile).toEqual([
    { identifier: 'ABC', rowCount: 1 },
    { identifier: 'XYZ', rowCount: 2 },
  ]);
  expect(first.rows).toHaveLength(1);
  expect((await scanAll(fileWith(content), 'XYZ')).rows.map((each) => each.epochS)).toEqual([
    utc('2020-01-01T01:00'),
    utc('2020-01-01T02:00'),
  ]);
});

test('quoted cells, a byte-order mark, comment lines, CRLF and tabs are read alike', async () => {
  const plain = await scanAll(fileWith(short + row('2020-01-01 00:00') + row('2020-01-01 01:00')));
  const text = short + row('2020-01-01 00:00') + row('2020-01-01 01:00');
  for (const content of [
    `\uFEFF${text}`,
    `#DEBUG: Format Typ -> onlycomma\n${text}`,
    text.replaceAll('\n', '\r\n'),
    text.replaceAll(',', '\t'),
    text.replaceAll('ABC', '"ABC"').replaceAll('66.00', '"66.00"'),
  ])
    expect((await scanAll(fileWith(content))).rows).toEqual(plain.rows);
});

test('a clock that runs backwards is put in order; of one minute the first read stays first', async () => {
  const content =
    short +
    row('2020-02-01 00:00') +
    row('2020-01-01 05:00', '50.00,40.00,180.00,10.00,29.92,M,M,CLR') +
    row('2020-01-01 04:00') +
    row('2020-01-01 05:00', '59.00,40.00,180.00,10.00,29.92,M,M,CLR');
  const { blocks } = await scanAll(fileWith(content));
  const january = blocks.find((block) => block.monthStartEpochS === utc('2020-01-01T00:00'));
  expect([...(january?.minuteOfMonth ?? [])]).toEqual([240, 300, 300]);
  // 50 degF is 10 degC and 59 degF is 15 degC.
  expect([...(january?.columns.temperatureC100 ?? [])]).toEqual([1889, 1000, 1500]);
});

test('a file ordered in local time is refused, because its reports disagree with its rows', async () => {
  const shifted = [
    header,
    ...lines.map((line) =>
      line.replace(/(\d{4}-\d\d-\d\d \d\d):(\d\d)/, (_, hour: string, minute: string) => {
        const local = new Date(Date.parse(`${hour.replace(' ', 'T')}:${minute}Z`) - 5 * 3_600_000);
        return local.toISOString().slice(0, 16).replace('T', ' ');
      }),
    ),
  ].join('\n');
  await expect(scanAll(fileWith(shifted))).rejects.toThrow(/ordered in local time/);
  const named = fileWith(short.replace('valid', 'valid(America/Denver)') + row('2020-01-01 00:00'));
  await expect(scanAll(named)).rejects.toThrow(/only UTC can be read/);
});

test('what is not a weather file of these kinds is named for what it is', async () => {
  for (const [content, sentence] of [
    ['', /empty/],
    ['<!DOCTYPE html><title>Not found</title>', /web page/],

    ['a,b,c\n1,2,3\n', /looks like a table: say which of its columns is what/],
    ['some words\nand more words\n', /Kinds that can be read/],
    [Buffer.from(`\uFEFF${short}`, 'utf16le'), /UTF-16/],
  ] as const)
    await expect(scanAll(fileWith(content))).rejects.toThrow(sentence);
});

test('pieces of a line that fall into two reads are put together', async () => {
  // More than one read of the disk (1 MiB), with lines of uneven length.
  const many = Array.from({ length: 30_000 }, (_, i) => {
    const time = new Date(Date.UTC(2010, 0, 1) + i * 3_600_000).toISOString().slice(0, 16).replace('T', ' ');
    return row(time, `${(i % 90).toFixed(i % 3)},10.00,180.00,10.00,29.92,M,M,CLR`);
  });
  const { rows, summary } = await scanAll(fileWith(short + many.join('')));
  expect(summary.observationCount).toBe(30_000);
  expect(summary.skipped.filter((each) => each.reason.startsWith('row'))).toEqual([]);
  rows.forEach((each, i) => {
    expect(each.epochS).toBe(Date.UTC(2010, 0, 1) / 1000 + i * 3600);
  });
});
