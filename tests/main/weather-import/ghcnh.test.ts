import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { verdictOf } from '../../../main/weather-import/ghcnh.ts';
import { fileWith, sample, scanAll, utc } from './samples.ts';

test('read by hand: Houston of the newer layout', async () => {
  const { rows, summary } = await scanAll(sample('GHCNh_USW00012960_2026_head.psv'));
  expect(summary.placeInFile).toMatchObject({
    latitudeDeg: 29.9844,
    longitudeDeg: -95.3608,
    elevationM: 27.4,
  });
  expect(rows).toHaveLength(1);
  // 2026-01-01T00:00: 12.2, 0.0, 1018.0, 1022.5, 170, 2.1
  const [row] = rows;
  expect(row?.epochS).toBe(utc('2026-01-01T00:00'));
  expect(row?.temperatureC).toBeCloseTo(12.2, 9);
  expect(row?.dewPointC).toBeCloseTo(0, 9);
  expect(row?.stationPressureHpa).toBeCloseTo(1018, 9);
  expect(row?.seaLevelPressureHpa).toBeCloseTo(1022.5, 9);
  expect(row?.windFromDeg).toBe(170);
  expect(row?.windSpeedMs).toBeCloseTo(2.1, 9);
});

test('read by hand: Oklahoma City and Valdez of the older layout, a variable direction and a gust', async () => {
  const city = await scanAll(sample('GHCNh_USW00013967_por_excerpt.psv'));
  expect(city.summary).toMatchObject({ lineCount: 6, observationCount: 4 });
  expect(city.summary.skipped).toContainEqual({
    reason: 'row cut short: left out',
    count: 1,
    examples: [{ line: 6, text: 'TOOSHORT' }],
  });
  // SPECI KOKC 120850Z 33025G35KT: 12.9 and 18.0 m/s in the columns, setting 1015.2.
  const special = city.rows.find((row) => row.epochS === utc('2023-01-12T08:50'));
  expect(special?.windSpeedMs).toBeCloseTo(12.9, 9);
  expect(special?.gustMs).toBeCloseTo(18, 9);
  expect(special?.altimeterSettingHpa).toBeCloseTo(1015.2, 9);
  expect(special?.flags).toBe(1);
  const valdez = await scanAll(sample('GHCNh_USW00026442_por_excerpt.psv'));
  // VRB02KT
  expect(valdez.rows[0]).toMatchObject({ windFromDeg: -1, epochS: utc('2005-06-10T17:50') });
});

test('the layout by year, known from its document only, has DATE for the clock', async () => {
  const lines = readFileSync(sample('GHCNh_USW00026442_por_excerpt.psv'), 'utf8').trimEnd().split('\n');
  const byYear = lines.map((line, i) => {
    const cells = line.split('|');
    const date = i === 0 ? 'DATE' : '2005-06-10T17:50:00';
    return [i === 0 ? 'STATION' : cells[0], cells[1], date, ...cells.slice(7)].join('|');
  });
  expect(byYear[0]?.split('|')).toHaveLength(234);
  const whole = await scanAll(sample('GHCNh_USW00026442_por_excerpt.psv'));
  expect((await scanAll(fileWith(byYear.join('\n')))).rows).toEqual(whole.rows);
});

test('one digit means different things by its source, letters are failed checks', () => {
  // Documentation, section VI, as the samples' README of the source gives it.
  for (const [code, source, verdict] of [
    ['5', '343', 'good'],
    ['5', '223', 'erroneous'],
    ['2', '343', 'suspect'],
    ['2', '347', 'suspect'],
    ['7', '344', 'erroneous'],
    ['7', '223', 'unknown'],
    ['3', '348', 'erroneous'],
    ['S', '343', 'suspect'],
    ['f', '223', 'suspect'],
    ['1,h', '343', 'suspect'],
    ['9-Missing', '343', 'good'],
    ['', '343', 'good'],
  ] as const)
    expect(verdictOf(code, source), `${code} of ${source}`).toBe(verdict);
});
