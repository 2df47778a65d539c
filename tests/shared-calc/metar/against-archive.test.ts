import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readReport } from '../../../shared-calc/metar/report.ts';
import { fromSi } from '../../../shared-calc/units/convert.ts';

// The archive of the Iowa Environmental Mesonet prints each report beside the columns that its own reader took from it:
// another hand's answer to every row. The same comparison over a whole year (9,732 reports) differs in two rows, both slips
// of the key: a blank inside the wind group, and a body and remarks ten degrees apart.
const [head = '', ...lines] = readFileSync(
  new URL('../../samples/weather/JFK_2020_excerpt.csv', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n');
const names = head.split(',');
const rows = lines.map((line) => {
  const values = line.split(',');
  return Object.fromEntries(names.map((name, i) => [name, values[i] ?? '']));
});

const printed = (row: Record<string, string>, name: string) => (row[name] === 'M' ? null : Number(row[name]));

function expectClose(ours: number | null, theirs: number | null, tolerance: number, report: string): void {
  expect(ours === null, report).toBe(theirs === null);
  if (ours !== null && theirs !== null)
    expect(Math.abs(ours - theirs), report).toBeLessThanOrEqual(tolerance);
}

test('every group of every report in the excerpt is as the archive has it', () => {
  expect(rows.length).toBeGreaterThan(80);
  for (const row of rows) {
    const text = row['metar'] ?? '';
    const report = readReport(text);
    const inKt = (speed: { speedMs: number } | null | undefined) =>
      speed == null ? null : fromSi(speed.speedMs, 'kt');
    // The archive rounds to whole degrees Fahrenheit, some rows from whole degrees Celsius.
    const inF = (temperatureC: number | null) =>
      temperatureC === null ? null : fromSi(temperatureC, 'degF');
    expectClose(inF(report.temperatureC), printed(row, 'tmpf'), 0.95, text);
    expectClose(inF(report.dewPointC), printed(row, 'dwpf'), 0.95, text);
    expectClose(inKt(report.wind?.speed), printed(row, 'sknt'), 1e-6, text);
    expectClose(inKt(report.wind?.gust), printed(row, 'gust'), 1e-6, text);
    // Calm is 0 in the archive and no direction here.
    const calm = report.wind?.speed?.speedMs === 0;
    expectClose(calm ? 0 : (report.wind?.fromDeg ?? null), printed(row, 'drct'), 0, text);
    expectClose(report.altimeter?.printed ?? null, printed(row, 'alti'), 1e-9, text);
    expectClose(report.seaLevelPressureHpa, printed(row, 'mslp'), 1e-6, text);
    const miles = report.visibility === null ? null : fromSi(report.visibility.metres, 'SM');
    expectClose(miles, printed(row, 'vsby'), 0.005, text);
  }
});
