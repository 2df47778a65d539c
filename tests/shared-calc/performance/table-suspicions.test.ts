import { describe, expect, test } from 'vitest';
import { performance as demo } from '../../../fixtures/demo/performance.ts';
import type { DistanceRow } from '../../../shared-calc/performance/records.ts';
import { climbSuspicions, distanceSuspicions } from '../../../shared-calc/performance/table-suspicions.ts';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import { suspicionSentence } from '../../../shared-calc/wording/table-suspicion.ts';

const rows = demo.takeOff?.rows ?? [];
const climbRows = demo.climb?.rows ?? [];
const changed = (index: number, parts: Partial<DistanceRow>) =>
  rows.map((row, i) => (i === index ? { ...row, ...parts } : row));
const units = UNIT_PRESETS.metric;
const spaced = (text: string) => text.replaceAll(/[\u00a0\u2060\u2009]+/g, ' ');

describe('a table as printed', () => {
  test('raises no suspicion when it gets worse with every axis and is of the usual size', () => {
    expect(distanceSuspicions(rows)).toEqual([]);
    expect(distanceSuspicions(demo.landing?.rows ?? [])).toEqual([]);
    expect(climbSuspicions(climbRows)).toEqual([]);
  });

  test('raises one where a distance falls although it is hotter', () => {
    const row = 10;
    const before = rows[row - 1];
    const at = rows[row];
    if (before === undefined || at === undefined) throw new Error('no row');
    // 4 000 ft at 30 °C, 5 m shorter than at 15 °C.
    const list = changed(row, { overObstacleM: (before.overObstacleM ?? 0) - 5 });
    const found = distanceSuspicions(list);
    expect(found.filter(({ kind }) => kind === 'order').map((one) => [one.row, one.column])).toContainEqual([
      row,
      'overObstacleM',
    ]);
    const own = found.find((one) => one.kind === 'order' && one.axis === 'temperatureC');
    if (own === undefined) throw new Error('not found');
    expect(spaced(suspicionSentence(own, list, units))).toMatch(
      /^Row 11: over 50 ft \d+ m, less than the \d+ m of row 10 although it is hotter\. Does the manual print it so\?$/,
    );
    // A person who says that it is printed so is not asked again.
    const answered = list.map((each, i) => (i === row ? { ...each, asPrinted: true } : each));
    expect(distanceSuspicions(answered).filter((one) => one.row === row)).toEqual([]);
  });

  test.each([
    ['feet typed as metres', 1 / 0.3048],
    ['metres typed as feet', 0.3048],
  ])('raises one, and once, at a cell with %s', (_, ratio) => {
    const row = 9;
    const list = changed(row, { groundRollM: (rows[row]?.groundRollM ?? 0) * ratio });
    const found = distanceSuspicions(list);
    expect(found.map(({ kind, row: at, column }) => [kind, at, column])).toEqual([
      ['feetOrMetres', row, 'groundRollM'],
    ]);
    const [first] = found;
    if (first !== undefined)
      expect(suspicionSentence(first, list, units)).toContain('feet and metres may be mixed up');
  });

  test('raises one for a whole column in the other unit, for degrees Fahrenheit, and for altitudes in feet', () => {
    const columns = (list: readonly DistanceRow[]) => distanceSuspicions(list).map(({ column }) => column);
    const scaled = (ratio: number) =>
      rows.map((row) => ({ ...row, overObstacleM: (row.overObstacleM ?? 0) * ratio }));
    // Kept figures beside: the roll is longer than the whole then, which performanceFaults refuses by itself.
    expect(columns(scaled(0.3048))).toEqual(['overObstacleM']);
    expect(columns(scaled(1 / 0.3048))).toContain('overObstacleM');
    expect(
      columns(rows.map((row) => ({ ...row, temperatureC: (row.temperatureC ?? 0) * 1.8 + 32 }))),
    ).toContain('temperatureC');
    expect(
      columns(rows.map((row) => ({ ...row, pressureAltitudeM: (row.pressureAltitudeM ?? 0) / 0.5 }))),
    ).toContain('pressureAltitudeM');
  });

  test('raises one for a climb in metres a second that was typed as feet a minute', () => {
    const list = climbRows.map((row) => ({ ...row, climbRateMs: (row.climbRateMs ?? 0) * 0.00508 }));
    expect(climbSuspicions(list).map(({ kind, column }) => [kind, column])).toEqual([
      ['unit', 'climbRateMs'],
    ]);
  });
});
