import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { flag } from '../../../main/store/observation-columns.ts';
import { reportInside } from './report-inside.ts';
import { fileWith, sample, scanAll, utc } from './samples.ts';

const cycle = readFileSync(sample('KDEN_2012_cycle_excerpt.txt'), 'latin1');
const dated = readFileSync(sample('KDEN_2013_dated_excerpt.txt'), 'latin1');

test('a cycle file and dated lines give each report at its stamp, tenths before whole degrees', async () => {
  for (const [name, text, pattern] of [
    ['KDEN_2012_cycle_excerpt.txt', cycle, /^(\d{4})\/(\d\d)\/(\d\d) (\d\d):(\d\d)\n(.*)$/gm],
    ['KDEN_2013_dated_excerpt.txt', dated, /^(\d{4})(\d\d)(\d\d)(\d\d)(\d\d) (.*)$/gm],
  ] as const) {
    const { rows, summary } = await scanAll(sample(name));
    expect(summary.kind).toBe('report-list');
    const reports = [...text.matchAll(pattern)];
    expect(rows).toHaveLength(reports.length);
    for (const [, year, month, day, hour, minute, report = ''] of reports) {
      const epochS = utc(`${String(year)}-${String(month)}-${String(day)}T${String(hour)}:${String(minute)}`);
      const said = reportInside(report);
      const row = rows.find(
        (each) =>
          each.epochS === epochS &&
          (said.temperatureC === null || Math.abs((each.temperatureC ?? NaN) - said.temperatureC) < 1e-6),
      );
      expect(row, report).toBeDefined();
      if (said.dewPointC !== null) expect(row?.dewPointC, report).toBeCloseTo(said.dewPointC, 9);
      if (said.temperatureC === null && row?.temperatureC !== undefined)
        expect((row.flags & flag.wholeDegrees) !== 0, report).toBe(true);
      if (said.settingInHg !== null && row?.altimeterSettingHpa !== undefined)
        expect(Math.abs(row.altimeterSettingHpa - said.settingInHg * 33.863_89)).toBeLessThan(0.0051);
      expect(((row?.flags ?? 0) & flag.special) !== 0, report).toBe(report.startsWith('SPECI'));
      if (said.fromDeg === 'VRB') expect(row?.windFromDeg, report).toBe(-1);
    }
  }
});

test('bare reports need year and month; the month steps when the day falls back, not at a late report', async () => {
  const bare = [
    'METAR KDEN 302353Z 01006KT 10SM CLR 10/05 A2995',
    'METAR KDEN 312353Z 01006KT 10SM CLR 11/05 A2995',
    'METAR KDEN 010053Z 01006KT 10SM CLR 12/05 A2995',
    'METAR KDEN 300053Z 01006KT 10SM CLR 13/05 A2995',
    'METAR KDEN 020053Z 01006KT 10SM CLR 14/05 A2995',
    'METAR KDEN 292353Z 01006KT 10SM CLR 15/05 A2995',
  ].join('\n');
  await expect(scanAll(fileWith(bare))).rejects.toMatchObject({ need: 'month-needed' });
  const { rows } = await scanAll(fileWith(bare), undefined, { reportMonth: { year: 2011, month: 12 } });
  expect(
    rows.toSorted((a, b) => (a.temperatureC ?? 0) - (b.temperatureC ?? 0)).map((row) => row.epochS),
  ).toEqual([
    utc('2011-12-30T23:53'),
    utc('2011-12-31T23:53'),
    utc('2012-01-01T00:53'),
    utc('2011-12-30T00:53'),
    utc('2012-01-02T00:53'),
    // Nearer to 2 January than that of January.
    utc('2011-12-29T23:53'),
  ]);
});

test('what is no report, has no time that exists or another than its stamp is counted by line', async () => {
  const content = [
    '201301010053 METAR KDEN 010053Z 01006KT 9SM M10/M12 A2995=',
    '201301010053 METAR KDEN 012453Z 01006KT 9SM M10/M12 A2995=',
    '201302300053 METAR KDEN 010053Z 01006KT 9SM M10/M12 A2995=',
    '201301010053 METAR KDEN 040053Z 01006KT 9SM M10/M12 A2995=',
    'some other words',
    '201301010153 METAR KBJC 010153Z 01006KT 9SM M10/M12 A2995=',
    '201301010253 METAR KDEN 010253Z NIL=',
    '201301010353 METAR KDEN 010353Z 01006KT 9SM SCT0 M10/M12 A2995=',
  ].join('\n');
  const { rows, summary } = await scanAll(fileWith(content));
  expect(rows.map((row) => row.epochS)).toEqual([utc('2013-01-01T00:53'), utc('2013-01-01T03:53')]);
  expect(Object.fromEntries(summary.skipped.map((x) => [x.reason, x.examples.map((e) => e.line)]))).toEqual({
    'no such day or time: report left out': [2],
    'no such date or time: report left out': [3],
    'stamp and time of the report disagree: report left out': [4],
    'no report begins in it: line left out': [5],
    'row of another station: left out': [6],
    'report that says there is none (NIL): left out': [7],
    'group that is malformed: left out of its report': [8],
  });
});
