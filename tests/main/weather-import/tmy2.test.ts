import { expect, test } from 'vitest';
import { fileWith, scanAll, utc } from './samples.ts';
import { tmy2File, tmy2Header, tmy2Line, type Tmy2Hour } from './tmy2-lines.ts';

const hour: Tmy2Hour = {
  stamp: '82061501',
  temperatureC10: -35,
  dewPointC10: -112,
  pressureHpa: 838,
  windFromDeg: 270,
  windSpeedMs10: 57,
};
const scan = (...lines: string[]) => scanAll(fileWith([tmy2Header, ...lines].join('\n')));

test('a line has the length that the manual gives', () => {
  expect(tmy2Line(hour)).toHaveLength(142);
});

test('an hour is read from its columns, in UTC, with the place of the header', async () => {
  const { rows, summary } = await scan(tmy2Line(hour));
  expect(summary).toMatchObject({
    kind: 'tmy2',
    nature: 'typical year',
    stationsInFile: [{ identifier: '94018', rowCount: 1 }],
    placeInFile: { name: 'BOULDER', elevationM: 1634 },
  });
  // 40 degrees 1 minute north, 105 degrees 15 minutes west.
  expect(summary.placeInFile?.latitudeDeg).toBeCloseTo(40.016_667, 5);
  expect(summary.placeInFile?.longitudeDeg).toBeCloseTo(-105.25, 9);
  expect(summary.remarks.join(' ')).toMatch(/never how many days in ten/);
  const [row] = rows;
  // 01:00 in the zone of -7 hours.
  expect(row?.epochS).toBe(utc('1982-06-15T08:00'));
  expect(row?.temperatureC).toBeCloseTo(-3.5, 9);
  expect(row?.dewPointC).toBeCloseTo(-11.2, 9);
  expect(row?.stationPressureHpa).toBeCloseTo(838, 9);
  expect(row?.windFromDeg).toBe(270);
  expect(row?.windSpeedMs).toBeCloseTo(5.7, 9);
});

test('hour 24 is 00:00 of the next day', async () => {
  const { rows } = await scan(tmy2Line({ ...hour, stamp: '82063024' }));
  expect(rows[0]?.epochS).toBe(utc('1982-07-01T07:00'));
});

test('missing figures, hours that are none and cut lines are counted by their lines', async () => {
  const { rows, summary } = await scan(
    tmy2Line({ ...hour, temperatureC10: 9999, windFromDeg: 999 }),
    tmy2Line({ ...hour, stamp: '82022901' }),
    tmy2Line({ ...hour, stamp: '82061525' }),
    tmy2Line({ ...hour, stamp: '95061501' }),
    tmy2Line(hour).slice(0, 120),
    tmy2Line(hour).replace(' -35', ' -3x'),
  );
  expect(rows).toHaveLength(1);
  expect(rows[0]?.temperatureC).toBeUndefined();
  expect(Object.fromEntries(summary.skipped.map((x) => [x.reason, x.examples.map((e) => e.line)]))).toEqual({
    'no such date or hour: row left out': [3, 4, 5],
    'row cut short: left out': [6],
    'temperature is not a number: row left out': [7],
  });
});

test('a header without zone or place is refused', async () => {
  await expect(scanAll(fileWith(`${tmy2Header.replace(' -7', ' 27')}\n${tmy2Line(hour)}\n`))).rejects.toThrow(
    /no time zone/,
  );
  await expect(
    scanAll(fileWith(`${tmy2Header.replace('W 105', 'W 905')}\n${tmy2Line(hour)}\n`)),
  ).rejects.toThrow(/no place/);
});

test('a file of days is read whole', async () => {
  expect((await scanAll(fileWith(tmy2File(3)))).summary).toMatchObject({ observationCount: 72, skipped: [] });
});
