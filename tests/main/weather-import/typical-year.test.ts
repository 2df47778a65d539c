import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fileWith, sample, scanAll, utc } from './samples.ts';

const denver = readFileSync(sample('KDEN_typical_excerpt.epw'), 'latin1').trimEnd().split('\n');

test('an EPW is read at the ends of its hours, in UTC, and is never an observed record', async () => {
  const { rows, summary } = await scanAll(sample('KDEN_typical_excerpt.epw'));
  expect(summary).toMatchObject({
    kind: 'epw',
    nature: 'typical year',
    observationCount: denver.length - 8,
    placeInFile: { latitudeDeg: 39.83, longitudeDeg: -104.65, elevationM: 1650 },
  });
  // First row: 1995,1,1,1 ... -18.0,-19.7,85,83700 ... 0,0.0; zone -7.
  const first = rows.find((row) => row.epochS === utc('1995-01-01T08:00'));
  expect(first?.temperatureC).toBeCloseTo(-18, 9);
  expect(first?.dewPointC).toBeCloseTo(-19.7, 9);
  expect(first?.stationPressureHpa).toBeCloseTo(837, 9);
  expect(first?.windFromDeg).toBe(0);
  // Last row: 1994,12,31,24 is 00:00 of 1 January 1995, 07:00 UTC.
  const last = rows.find((row) => row.epochS === utc('1995-01-01T07:00'));
  expect(last?.temperatureC).toBeCloseTo(-19.4, 9);
});

test('a TMY3 with three columns more is read by its headings', async () => {
  const { rows, summary } = await scanAll(sample('KGSO_TMY3_excerpt.csv'));
  expect(summary).toMatchObject({ kind: 'tmy3', nature: 'typical year', placeInFile: { elevationM: 273 } });
  // 01/01/1988,01:00: 10.0, 6.1, 993 mbar, 200 degrees, 6.2 m/s; zone -5.
  const [first] = rows;
  expect(first?.epochS).toBe(utc('1988-01-01T06:00'));
  expect(first?.temperatureC).toBeCloseTo(10, 9);
  expect(first?.dewPointC).toBeCloseTo(6.1, 9);
  expect(first?.stationPressureHpa).toBeCloseTo(993, 9);
  expect(first?.windFromDeg).toBe(200);
  expect(first?.windSpeedMs).toBeCloseTo(6.2, 9);
});

test('missing, impossible and cut rows are counted; a first line without zone or place is refused', async () => {
  const row = denver[8] ?? '';
  const content = [
    ...denver.slice(0, 8),
    row.replace('-18.0,-19.7', '99.9,-19.7'),
    row.replace('1995,1,1,1,', '1995,2,29,1,'),
    row.replace('1995,1,1,1,', '1995,1,1,25,'),
    row.replace('1995,1,1,1,', '1995,1,1,0,'),
    row.slice(0, 80),
    row.replace('-18.0', '-1x.0'),
  ].join('\n');
  const { rows, summary } = await scanAll(fileWith(content));
  expect(rows).toHaveLength(1);
  expect(rows[0]?.temperatureC).toBeUndefined();
  expect(Object.fromEntries(summary.skipped.map((x) => [x.reason, x.examples.map((e) => e.line)]))).toEqual({
    'no such date or hour: row left out': [10, 11, 12],
    'row cut short: left out': [13],
    'temperature is not a number: row left out': [14],
  });
  await expect(scanAll(fileWith('LOCATION,A,B,C,D,1,40,-100,,100\n'))).rejects.toThrow(/no time zone/);
  await expect(scanAll(fileWith('LOCATION,A,B,C,D,1,,,-7,100\n'))).rejects.toThrow(/no place/);
});
