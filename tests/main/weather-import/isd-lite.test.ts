import { readFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { FileProblem } from '../../../main/weather-import/file-problem.ts';
import { fileWith, sample, scanAll, utc } from './samples.ts';

const text = gunzipSync(readFileSync(sample('725300-94846-2016.gz'))).toString('latin1');

test('rows say what their printed columns say, in UTC', async () => {
  const { rows, summary } = await scanAll(sample('725300-94846-2016.gz'));
  expect(summary).toMatchObject({ kind: 'isd-lite', nature: 'observed', lineCount: 1500, skipped: [] });
  expect(summary.firstEpochS).toBe(utc('2016-01-01T00:00'));
  expect(summary.lastEpochS).toBe(utc('2016-03-03T11:00'));
  // Read off the file's first line: 2016 01 01 00   -44   -83 10256   260    67     4 -9999 -9999
  expect(rows[0]?.epochS).toBe(utc('2016-01-01T00:00'));
  expect(rows[0]?.temperatureC).toBeCloseTo(-4.4, 9);
  expect(rows[0]?.dewPointC).toBeCloseTo(-8.3, 9);
  expect(rows[0]?.seaLevelPressureHpa).toBeCloseTo(1025.6, 9);
  expect(rows[0]?.windFromDeg).toBe(260);
  expect(rows[0]?.windSpeedMs).toBeCloseTo(6.7, 9);
});

test('every row equals a plain reading of the text by split and Number', async () => {
  const { rows } = await scanAll(sample('725300-94846-2016.gz'));
  const lines = text.trimEnd().split('\n');
  expect(rows).toHaveLength(lines.length);
  lines.forEach((line, i) => {
    const [year, month, day, hour, temperature, dewPoint, pressure] = line.trim().split(/\s+/).map(Number);
    const row = rows[i];
    expect(row?.epochS).toBe(Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour) / 1000);
    const expected = (raw: number | undefined) => (raw === -9999 ? undefined : (raw ?? NaN) / 10);
    for (const [got, raw] of [
      [row?.temperatureC, temperature],
      [row?.dewPointC, dewPoint],
      [row?.seaLevelPressureHpa, pressure],
    ] as const)
      if (expected(raw) === undefined) expect(got).toBeUndefined();
      else expect(got).toBeCloseTo(expected(raw) ?? NaN, 9);
  });
});

test('packed or not, with other line ends, without a last line end: the same rows', async () => {
  const { rows } = await scanAll(sample('725300-94846-2016.gz'));
  for (const content of [
    Buffer.from(text),
    Buffer.from(text.replaceAll('\n', '\r\n')),
    Buffer.from(text.trimEnd()),
    gzipSync(text),
  ])
    expect((await scanAll(fileWith(content))).rows).toEqual(rows);
});

test('spoilt rows are counted by reason with their line; the others stay', async () => {
  const lines = text.trimEnd().split('\n').slice(0, 12);
  const spoilt = [...lines];
  spoilt[2] = (lines[2] ?? '').slice(0, 30);
  spoilt[4] = (lines[4] ?? '').replace('2016 01 01', '2016 02 30');
  spoilt[6] = (lines[6] ?? '').slice(0, 15) + 'xx' + (lines[6] ?? '').slice(17);
  spoilt[8] = (lines[8] ?? '').slice(0, 13) + '  -999' + (lines[8] ?? '').slice(19);
  const { rows, summary } = await scanAll(fileWith(spoilt.join('\n')));
  expect(rows).toHaveLength(9);
  expect(
    summary.skipped.map(({ reason, count, examples }) => [reason, count, examples[0]?.line]).sort(),
  ).toEqual([
    ['a column that is not a number: row left out', 1, 7],
    ['no such date or hour: row left out', 1, 5],
    ['row cut short: left out', 1, 3],
    ['temperature or dew point outside -90 to 60 degC: value left out', 1, 9],
  ]);
  // The row with -99.9 degC keeps its other values.
  const kept = rows.find((row) => row.epochS === utc('2016-01-01T08:00'));
  expect(kept?.temperatureC).toBeUndefined();
  expect(kept?.seaLevelPressureHpa).toBeDefined();
});

test('a packed file that was cut short or spoilt is refused as a whole', async () => {
  const packed = readFileSync(sample('725300-94846-2016.gz'));
  await expect(scanAll(fileWith(packed.subarray(0, 9000)))).rejects.toThrow(/cut short/);
  const spoilt = Buffer.from(packed);
  spoilt.fill(0xaa, 4000, 4100);
  await expect(scanAll(fileWith(spoilt))).rejects.toThrow(FileProblem);
});
