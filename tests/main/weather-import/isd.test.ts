import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { flag } from '../../../main/store/observation-columns.ts';
import { reportInside } from './report-inside.ts';
import { fileWith, sample, scanAll, utc, type Plain } from './samples.ts';

const denver = gunzipSync(readFileSync(sample('725650-03017-2010_excerpt.gz'))).toString('latin1');
const atlanta = readFileSync(sample('KATL_2025_excerpt.csv'), 'latin1');

/** Each row that quotes a whole report is compared with it. */
function againstReports(
  rows: readonly Plain[],
  reports: readonly { epochS: number; text: string }[],
): number {
  let compared = 0;
  for (const { epochS, text } of reports) {
    const said = reportInside(text);
    const row = rows.find(
      (each) =>
        each.epochS === epochS &&
        (said.temperatureC === null || Math.abs((each.temperatureC ?? NaN) - said.temperatureC) < 1e-6),
    );
    expect(row, text).toBeDefined();
    if (said.dewPointC !== null) expect(row?.dewPointC, text).toBeCloseTo(said.dewPointC, 9);
    // Kept to a tenth of a hPa in the file: half of it, and what 33.8639 adds.
    if (said.settingInHg !== null && row?.altimeterSettingHpa !== undefined)
      expect(Math.abs(row.altimeterSettingHpa - said.settingInHg * 33.863_89), text).toBeLessThan(0.06);
    if (said.speedKt !== null && row?.windSpeedMs !== undefined)
      // Tenths of m/s, rounded or cut.
      expect(Math.abs(row.windSpeedMs - said.speedKt * 0.514444), text).toBeLessThan(0.1);
    if (said.gustKt !== null && row?.gustMs !== undefined)
      expect(Math.abs(row.gustMs - said.gustKt * 0.514444), text).toBeLessThan(0.1);
    if (said.fromDeg === 'VRB') expect(row?.windFromDeg, text).toBe(-1);
    if (said.speedKt === 0) expect(row?.windFromDeg, text).toBe(0);
    compared++;
  }
  return compared;
}

describe('fixed-width records', () => {
  test('say what the reports quoted behind them say', async () => {
    const { rows, summary } = await scanAll(sample('725650-03017-2010_excerpt.gz'));
    const lines = denver.trimEnd().split('\n');
    const left = lines.filter((line) => /^SO[DM] {2}$/.test(line.slice(41, 46))).length;
    expect(summary).toMatchObject({
      kind: 'isd-fixed',
      observationCount: lines.length - left,
      placeInFile: { elevationM: 1655 },
      stationsInFile: [{ identifier: '72565003017', rowCount: lines.length }],
    });
    expect(
      summary.skipped
        .filter(({ reason }) => reason.startsWith('summary'))
        .reduce((sum, x) => sum + x.count, 0),
    ).toBe(left);
    const quoted = lines
      .filter((line) => /FM-1[56]/.test(line.slice(41, 46)) && line.includes('REMMET'))
      .map((line) => ({
        epochS:
          Date.UTC(
            Number(line.slice(15, 19)),
            Number(line.slice(19, 21)) - 1,
            Number(line.slice(21, 23)),
            Number(line.slice(23, 25)),
            Number(line.slice(25, 27)),
          ) / 1000,
        text: line.slice(line.indexOf('REMMET')),
      }));
    expect(againstReports(rows, quoted)).toBeGreaterThan(250);
    expect(rows.some((row) => (row.flags & flag.special) !== 0)).toBe(true);
  });

  test('read by hand: the first report of 1 January 2010 and its pressures', async () => {
    const { rows } = await scanAll(sample('725650-03017-2010_excerpt.gz'));
    // 0185725650030172010010100004 ... V0201601N00211...-00221-01331102521...MA1999999083771
    const first = rows.find((row) => row.epochS === utc('2010-01-01T00:00'));
    expect(first?.temperatureC).toBeCloseTo(-2.2, 9);
    expect(first?.dewPointC).toBeCloseTo(-13.3, 9);
    expect(first?.seaLevelPressureHpa).toBeCloseTo(1025.2, 9);
    expect(first?.stationPressureHpa).toBeCloseTo(837.7, 9);
    expect(first?.altimeterSettingHpa).toBeUndefined();
    expect(first?.windFromDeg).toBe(160);
    expect(first?.windSpeedMs).toBeCloseTo(2.1, 9);
  });

  test('of 1994 put most rows a degree too far south, and have no station pressure', async () => {
    const { rows, summary } = await scanAll(sample('725650-03017-1994_excerpt.gz'));
    expect(summary.placeInFile).toMatchObject({ latitudeDeg: 38.867, elevationM: 1656 });
    expect(rows.every((row) => row.stationPressureHpa === undefined)).toBe(true);
    expect(rows.every((row) => row.altimeterSettingHpa !== undefined)).toBe(true);
  });

  const line = denver.split('\n').find((each) => each.slice(15, 27) === '201001020353') ?? '';
  const put = (at: number, text: string) => line.slice(0, at) + text + line.slice(at + text.length);

  test('tell calm from variable and missing by the type code', async () => {
    for (const [group, fromDeg, speedMs] of [
      ['9999V00155', -1, 1.5],
      ['9999C00005', 0, 0],
      ['999999999', undefined, undefined],
      ['3601N00315', 360, 3.1],
    ] as const) {
      const { rows } = await scanAll(fileWith(`${put(60, group.padEnd(10, '9'))}\n`));
      expect(rows[0]?.windFromDeg, group).toBe(fromDeg);
      if (speedMs === undefined) expect(rows[0]?.windSpeedMs).toBeUndefined();
      else expect(rows[0]?.windSpeedMs, group).toBeCloseTo(speedMs, 9);
    }
  });

  test('erroneous values are missing and counted, suspect ones kept and marked, the others stay', async () => {
    for (const [code, kept, flags] of [
      ['5', true, 0],
      ['P', true, 0],
      ['2', true, flag.suspectBySource],
      ['6', true, flag.suspectBySource],
      ['3', false, 0],
      ['7', false, 0],
      ['x', false, 0],
    ] as const) {
      const { rows, summary } = await scanAll(fileWith(`${put(92, code)}\n`));
      expect(rows[0]?.temperatureC !== undefined, code).toBe(kept);
      expect(rows[0]?.flags, code).toBe(flags);
      expect(rows[0]?.dewPointC).toBeCloseTo(-8.9, 9);
      expect(summary.skipped.map((each) => each.count)).toEqual(kept && flags === 0 ? [] : [1]);
    }
  });

  test('groups are looked for before the remarks only', async () => {
    const bare = `${line.slice(0, 105)}ADDREMMA1102345083585OC102005`;
    const { rows } = await scanAll(
      fileWith(`${String(bare.length - 105).padStart(4, '0')}${bare.slice(4)}\n`),
    );
    expect(rows[0]?.altimeterSettingHpa).toBeUndefined();
    expect(rows[0]?.gustMs).toBeUndefined();
    expect(rows[0]?.temperatureC).toBeCloseTo(-3.9, 9);
  });

  test('a place of 0, 0 is no place and the elevation beside it none', async () => {
    const { summary } = await scanAll(fileWith(`${put(28, '+00000+000000')}\n`));
    expect(summary.placeInFile).toBeNull();
  });

  test('spoilt records are counted by reason with their line', async () => {
    const content = [
      line,
      line.slice(0, 150),
      `${line}xx`,
      put(15, '20100230'),
      put(23, '2400'),
      put(87, '+00x9'),
      put(4, '999999'),
    ].join('\n');
    const { rows, summary } = await scanAll(fileWith(content));
    expect(rows).toHaveLength(1);
    expect(Object.fromEntries(summary.skipped.map((x) => [x.reason, x.examples.map((e) => e.line)]))).toEqual(
      {
        'row cut short: left out': [2],
        'row longer than it says itself: left out': [3],
        'no such date or time: row left out': [4, 5],
        'a column that is not a number: row left out': [6],
        'row of another station: left out': [7],
      },
    );
  });
});

describe('the same as CSV with packed groups', () => {
  test('says what the reports quoted behind it say', async () => {
    const { rows, summary } = await scanAll(sample('KATL_2025_excerpt.csv'));
    expect(summary).toMatchObject({
      kind: 'isd-csv',
      placeInFile: { latitudeDeg: 33.62972, longitudeDeg: -84.44224, elevationM: 308.2 },
    });
    const quoted = atlanta
      .split('\n')
      .filter((each) => /"FM-1[56]"/.test(each) && each.includes('"MET') && !/"[+-]\d{4},7"/.test(each))
      .map((each) => ({
        epochS: utc(/\d{4}-\d\d-\d\dT\d\d:\d\d/.exec(each)?.[0] ?? ''),
        text: each.slice(each.indexOf('"MET')),
      }));
    expect(againstReports(rows, quoted)).toBeGreaterThan(100);
  });

  test('leaves out values of quality 7 and rows that are no observations, counted', async () => {
    const { summary } = await scanAll(sample('KATL_2025_excerpt.csv'));
    const count = (pattern: RegExp) => atlanta.match(new RegExp(pattern, 'g'))?.length ?? 0;
    const counted = Object.fromEntries(summary.skipped.map((each) => [each.reason, each.count]));
    expect(counted['SHEF, not an observation of the hour: left out']).toBe(count(/"SHEF "/));
    expect(counted['summary of the day, not an observation: left out']).toBe(count(/"SOD {2}"/));
    expect(counted['temperature marked erroneous by its source: value left out']).toBe(1);
  });
});
