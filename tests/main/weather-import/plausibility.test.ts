import { expect, test } from 'vitest';
import { flag } from '../../../main/store/observation-columns.ts';
import { fileWith, scanAll, utc } from './samples.ts';

const header = 'station,valid,tmpc,dwpc,alti';
/** One report an hour from 1 June 2020 00:00 UTC; settings move a little unless given. */
const hourly = (rows: readonly [temperatureC: number, dewPointC: number, settingInHg?: string][]) =>
  fileWith(
    [
      header,
      ...rows.map(([temperature, dewPoint, setting], i) => {
        const time = new Date(utc('2020-06-01T00:00') * 1000 + i * 3_600_000);
        const at = time.toISOString().slice(0, 16).replace('T', ' ');
        return `ABC,${at},${temperature.toFixed(1)},${dewPoint.toFixed(1)},${setting ?? (29.9 + (i % 3) / 100).toFixed(2)}`;
      }),
    ].join('\n'),
  );
const flagged = async (path: string, bit: number) =>
  (await scanAll(path)).rows.flatMap((row, i) => ((row.flags & bit) === 0 ? [] : [i]));

// The limits are common practice, no source: 8 degC and 6 hPa against both neighbours, a day without movement.
test('a value that stands alone by 8 degC is flagged and kept; a front, which does not come back, is not', async () => {
  const spike = hourly([
    [20, 10],
    [20.5, 10],
    [29, 10],
    [20.7, 10],
    [21, 10],
  ]);
  expect(await flagged(spike, flag.spike)).toEqual([2]);
  const { rows, summary } = await scanAll(spike);
  expect(rows[2]?.temperatureC).toBeCloseTo(29, 9);
  expect(summary.skipped).toEqual([
    {
      reason: 'a value that stands alone against the reports around it (spike): kept, marked',
      count: 1,
      examples: [{ line: 4, text: 'temperature: 20.5, then 29.0, then 20.7' }],
    },
  ]);
  expect(
    await flagged(
      hourly([
        [30, 10],
        [30, 10],
        [19, 10],
        [19, 10],
        [18, 10],
      ]),
      flag.spike,
    ),
  ).toEqual([]);
  expect(
    await flagged(
      hourly([
        [20, 10],
        [20.5, 10],
        [28.4, 10],
        [20.7, 10],
      ]),
      flag.spike,
    ),
  ).toEqual([]);
  // 0.2 inHg is 6.8 hPa.
  expect(
    await flagged(
      hourly([
        [20, 10, '29.92'],
        [20, 10, '30.12'],
        [20, 10, '29.93'],
        [21, 10, '29.92'],
      ]),
      flag.spike,
    ),
  ).toEqual([1]);
});

test('a spike needs near neighbours: after a gap of hours nothing is known', async () => {
  const text = [
    header,
    'ABC,2020-06-01 00:00,20,10,29.92',
    'ABC,2020-06-01 03:00,30,10,29.93',
    'ABC,2020-06-01 06:00,20,10,29.92',
  ];
  expect(await flagged(fileWith(text.join('\n')), flag.spike)).toEqual([]);
});

test('temperature and dew point that do not move for a day are stuck; for 23 hours they may be fog', async () => {
  const still = (hours: number) =>
    hourly([...Array.from({ length: hours + 1 }, () => [5, 4] as [number, number]), [6, 4], [7, 4]]);
  expect(await flagged(still(24), flag.stuck)).toEqual(Array.from({ length: 25 }, (_, i) => i));
  expect(await flagged(still(23), flag.stuck)).toEqual([]);
});

test('a setting that does not move for a day is stuck while the temperature moves', async () => {
  const path = hourly(Array.from({ length: 30 }, (_, i) => [10 + (i % 7), 4, i < 26 ? '29.92' : '29.95']));
  expect(await flagged(path, flag.stuck)).toEqual(Array.from({ length: 26 }, (_, i) => i));
});
