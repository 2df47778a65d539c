import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { flag } from '../../../main/store/observation-columns.ts';
import { reportInside } from './report-inside.ts';
import { fileWith, sample, scanAll, utc } from './samples.ts';

const read = (name: string) => readFileSync(sample(name), 'latin1').trimEnd().split('\n');

test('both layouts say what the reports quoted in them say, at their UTC', async () => {
  for (const [name, kind, zone, coarseC] of [
    // degF in whole degrees: half of one is 0.28 degC. degC in tenths.
    ['LCDv1_KATL_2020_excerpt.csv', 'lcd-1', 'UTC-5', 0.283],
    ['LCDv2_KLNK_2023_excerpt.csv', 'lcd-2', 'UTC-6', 0.051],
  ] as const) {
    const { rows, summary } = await scanAll(sample(name));
    expect(summary.kind).toBe(kind);
    expect(summary.remarks.join(' ')).toContain(`${zone} by the reports quoted in it`);
    let compared = 0;
    for (const line of read(name)) {
      const said = reportInside(/(?:METAR|SPECI) K.*/.exec(line)?.[0] ?? '');
      const stamp = /\d{4}-\d\d-\d\dT\d\d:\d\d/.exec(line)?.[0];
      if (said.time === null || said.temperatureC === null || stamp === undefined) continue;
      const epochS = utc(stamp) + (zone === 'UTC-5' ? 5 : 6) * 3600;
      const date = new Date(epochS * 1000);
      expect([date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes()]).toEqual(said.time);
      const row = rows.find(
        (each) =>
          each.epochS === epochS && Math.abs((each.temperatureC ?? NaN) - (said.temperatureC ?? 0)) < coarseC,
      );
      // Of one minute there can be two rows, of two sources.
      expect(row, line).toBeDefined();
      expect(Math.abs((row?.temperatureC ?? NaN) - said.temperatureC), line).toBeLessThan(coarseC);
      expect(Math.abs((row?.dewPointC ?? NaN) - (said.dewPointC ?? NaN)), line).toBeLessThan(coarseC);
      if (said.settingInHg !== null && row?.altimeterSettingHpa !== undefined)
        expect(Math.abs(row.altimeterSettingHpa - said.settingInHg * 33.863_89), line).toBeLessThan(0.06);
      // Whole mph or tenths of m/s from whole knots.
      if (said.speedKt !== null && row?.windSpeedMs !== undefined)
        expect(Math.abs(row.windSpeedMs - said.speedKt * 0.514444), line).toBeLessThan(0.3);
      if (said.fromDeg === 'VRB') expect(row?.windFromDeg, line).toBe(-1);
      compared++;
    }
    expect(compared).toBeGreaterThan(90);
  }
});

test('local standard time is kept in summer, and taken from the place where no report is quoted', async () => {
  const { rows, summary } = await scanAll(sample('LCDv1_KLEB_2022_excerpt.csv'));
  expect(summary.remarks.join(' ')).toContain('UTC-5 by the place in it');
  expect(summary.placeInFile).toMatchObject({ elevationM: 168.9, latitudeDeg: 43.62707 });
  // 2022-07-01 00:53 as printed, without summer time.
  expect(rows.some((row) => row.epochS === utc('2022-07-01T05:53'))).toBe(true);
  // Counted by hand's way: the name has a comma, so setting, dew point, temperature, both pressures and wind stand here.
  const suspect = read('LCDv1_KLEB_2022_excerpt.csv').filter((line) =>
    [7, 8, 9, 16, 17, 20, 21, 22].some((at) => /^"[\d.-]+s"$/.test(line.split(',')[at] ?? '')),
  ).length;
  expect(suspect).toBeGreaterThan(20);
  expect(
    rows.filter((row) => (row.flags & (flag.suspectBySource | flag.suspectWindBySource)) !== 0),
  ).toHaveLength(suspect);
});

const header =
  'STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyDewPointTemperature,HourlyStationPressure,HourlyWindDirection,HourlyWindSpeed,REM';
const row = (values: string, rem = 'METAR KATL 010552Z', station = '72219013874') =>
  `${station},2020-01-01T00:52:00,FM-15,${values},${rem}`;

test('marks glued to values are read as the documentation says', async () => {
  const { rows, summary } = await scanAll(
    fileWith(
      [
        header,
        row('50s,41,29.50,VRB,5'),
        row('50,*,29.50,000,0'),
        row('50,M,29.50,360,7s'),
        row('5o,41,29.50,360,7'),
      ].join('\n'),
    ),
  );
  expect(rows).toHaveLength(3);
  // 50 degF is 10 degC, 41 degF 5 degC.
  expect(rows[0]).toMatchObject({ flags: flag.suspectBySource, windFromDeg: -1 });
  expect(rows[0]?.temperatureC).toBeCloseTo(10, 9);
  expect(rows[1]?.dewPointC).toBeUndefined();
  expect(rows[1]?.windFromDeg).toBe(0);
  expect(rows[2]).toMatchObject({ flags: flag.suspectWindBySource, windFromDeg: 360 });
  expect(summary.skipped.find(({ reason }) => reason.includes('not a number'))).toMatchObject({
    reason: 'temperature is not a number: row left out',
    examples: [{ line: 5, text: '5o' }],
  });
});

test('units that contradict the layout are refused, and a zone that nothing tells', async () => {
  await expect(scanAll(fileWith([header, row('10,5,999.1,360,7'), ''].join('\n')))).rejects.toThrow(
    /units cannot be told/,
  );
  const mute = fileWith([header, row('50,41,29.50,360,7', ''), ''].join('\n'));
  await expect(scanAll(mute)).rejects.toMatchObject({ need: 'zone-needed' });
  const told = await scanAll(mute, undefined, { standardOffsetMinutes: -300 });
  expect(told.rows[0]?.epochS).toBe(utc('2020-01-01T05:52'));
});

test('a quoted report of the next month still tells the zone', async () => {
  const late = row('50,41,29.50,360,7', 'METAR KATL 010452Z').replace('2020-01-01T00:52', '2020-01-31T23:52');
  const { rows } = await scanAll(fileWith([header, late, ''].join('\n')));
  expect(rows[0]?.epochS).toBe(utc('2020-02-01T04:52'));
});
