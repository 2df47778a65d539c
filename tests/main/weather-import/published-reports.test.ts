import { expect, test } from 'vitest';
import { casesOf, textOf } from '../../reference/cases.ts';
import { fileWith, scanAll } from './samples.ts';

// The published reports (FMH-1, AIM, WMO-No. 306; tests/reference/published-checks.json) as bare reports through the importer.
const cases = casesOf('METAR').filter(({ inputs }) => 'report' in inputs);

/** Half of what is kept: hundredths. */
const half = 0.0051;
const inHgHpa = 33.863_89;
const ktMs = 1852 / 3600;

test('each published report comes out of an import as its case says', async () => {
  let compared = 0;
  for (const each of cases) {
    const report = textOf(each, 'report');
    const number = (name: string) => {
      const value = each.expected[name]?.value;
      return typeof value === 'number' ? value : null;
    };
    const found = await scanAll(fileWith(`${report}\n`), undefined, {
      reportMonth: { year: 2012, month: 1 },
    }).catch(() => null);
    const row = found?.rows[0];
    for (const [name, got, scale, within] of [
      ['temperature', row?.temperatureC, 1, half],
      ['dew_point', row?.dewPointC, 1, half],
      ['altimeter', row?.altimeterSettingHpa, inHgHpa, half],
      ['qnh', row?.altimeterSettingHpa, 1, half],
      ['slp', row?.seaLevelPressureHpa, 1, half],
      ['wind_speed', row?.windSpeedMs, ktMs, half],
      ['wind_gust', row?.gustMs, ktMs, half],
    ] as const) {
      const wanted = number(name);
      if (wanted === null) continue;
      // The case's own tolerance, in its unit, beside what is lost by keeping hundredths.
      const allowed = each.tolerance[name];
      const ofCase = allowed !== undefined && 'abs' in allowed ? allowed.abs * scale : 0;
      expect(got, `${each.id} ${name}: ${report}`).toBeDefined();
      expect(Math.abs((got ?? NaN) - wanted * scale), `${each.id} ${name}: ${report}`).toBeLessThan(
        within + ofCase,
      );
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(40);
});
