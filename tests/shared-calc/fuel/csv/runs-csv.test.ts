import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runsFromCsv } from '../../../../shared-calc/fuel/csv/read-runs.ts';
import { runsToCsv } from '../../../../shared-calc/fuel/csv/write-runs.ts';
import type { GaugeScale } from '../../../../shared-calc/fuel/gauge-scale.ts';
import type { FillRunRecord, FillTestRecord } from '../../../../shared-calc/fuel/records.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';

const containers = [
  { id: 'can', name: 'Can, red' },
  { id: 'jug', name: 'The "good" jug' },
];
const eighths: GaugeScale = { kind: 'fractions', denominator: 8 };

function readBack(text: string, scale: GaugeScale = eighths) {
  let count = 0;
  return runsFromCsv({
    text,
    scale,
    containers,
    newId: () => `id-${String((count += 1))}`,
    nowEpochS: 1_000,
  });
}
/** Ids are new after an import; all else has to come back as it was. */
const withoutIds = (runs: readonly FillRunRecord[]) =>
  runs.map((run) => ({ ...run, id: '', pours: run.pours.map((pour) => ({ ...pour, id: '' })) }));

function twoRuns(): FillTestRecord {
  const test = exampleFillTest();
  const [filling] = test.runs;
  if (filling === undefined) throw new Error('the example has a run');
  filling.containerId = 'can';
  filling.endsAt = 'brim';
  filling.startSdL = 0.25;
  const third = filling.pours[2];
  if (third !== undefined) {
    third.stickMm = 43.5;
    third.asideReason = 'read while filling, "quickly"\nand in the rain';
    third.written = { volumeL: 3.785411784, reading: { at: 'scale', positionRatio: 1 / 3 } };
  }
  test.runs.push({
    id: 'drain',
    direction: 'draining',
    start: { from: 'known', usableL: 39.5 },
    startSdL: null,
    containerId: 'jug',
    endsAt: null,
    pours: [
      {
        id: 'a',
        volumeL: 7.3,
        reading: null,
        asideReason: null,
        stickMm: null,
        atEpochS: 1_778_320_000.25,
        written: null,
      },
      {
        id: 'b',
        volumeL: 1e-3,
        reading: { at: 'scale', positionRatio: 0.7071067811865476 },
        asideReason: null,
        stickMm: null,
        atEpochS: 0,
        written: null,
      },
    ],
  });
  return test;
}

test.each<GaugeScale>([
  eighths,
  { kind: 'percent', step: 5 },
  { kind: 'volume', unit: 'US gal', atEmpty: 0, atFull: 12, step: 1 },
  { kind: 'numbers', atEmpty: 240, atFull: 33, step: 5 },
])('runs come back from their file as they were written, on a gauge of %o', (scale) => {
  const test = { ...twoRuns(), scale };
  const read = readBack(runsToCsv(test, containers), scale);
  expect(read).toMatchObject({ ok: true, pourCount: 10 });
  if (!read.ok) return;
  const [before, after] = [withoutIds(test.runs), withoutIds(read.runs)];
  // A position passes through what the gauge prints: equal to the last digit or one unit of it.
  const positions = (runs: typeof before) =>
    runs.flatMap(({ pours }) =>
      pours.flatMap(({ reading, written }) =>
        [reading, written?.reading].map((each) =>
          each?.at === 'scale' ? each.positionRatio : (each?.at ?? null),
        ),
      ),
    );
  const rest = (runs: typeof before) =>
    JSON.parse(
      JSON.stringify(runs, (key, value: unknown) => (key === 'positionRatio' ? 0 : value)),
    ) as unknown;
  expect(rest(after)).toEqual(rest(before));
  positions(before).forEach((position, index) => {
    const other = positions(after)[index];
    if (typeof position === 'number') expect(other).toBeCloseTo(position, 12);
    else expect(other).toBe(position);
  });
});

test('any volumes, readings and reasons survive the round trip on a gauge of eighths', () => {
  const pour = fc.record({
    volumeL: fc.double({ min: 0, max: 1000, noNaN: true }).map((each) => Number(each.toFixed(9))),
    division: fc.option(fc.integer({ min: 0, max: 8 }), { nil: null }),
    reason: fc.option(fc.string({ minLength: 1, maxLength: 30 }), { nil: null }),
  });
  fc.assert(
    fc.property(fc.array(pour, { minLength: 1, maxLength: 30 }), (pours) => {
      const test = exampleFillTest();
      const [run] = test.runs;
      if (run === undefined) throw new Error('the example has a run');
      run.pours = pours.map(({ volumeL, division, reason }, index) => ({
        id: String(index),
        volumeL,
        reading:
          division === null
            ? null
            : division === 0
              ? { at: 'emptyStop' }
              : division === 8
                ? { at: 'fullStop' }
                : { at: 'scale', positionRatio: division / 8 },
        // A reason is trimmed when it is kept; line ends become plain ones.
        asideReason: reason?.replace(/\r\n?/g, '\n').trim() || null,
        stickMm: null,
        atEpochS: index,
        written: null,
      }));
      const read = readBack(runsToCsv(test, []));
      expect(read.ok && withoutIds(read.runs)).toEqual(withoutIds(test.runs));
    }),
    { numRuns: 100, seed: 5 },
  );
});

test('a page of a notebook needs two columns only, in the units of the can', () => {
  const read = readBack('volume_US_gal;reading_fraction\n1;E\n1,5;1/8\n\n2;\n1;F\n');
  if (!read.ok) throw new Error('every figure is in order');
  const [run] = read.runs;
  expect(run).toMatchObject({ direction: 'filling', start: { from: 'engineFeed' }, containerId: null });
  // 1 US gal is 3.785411784 L exactly (NIST Handbook 44).
  [1, 1.5, 2, 1].forEach((gallons, index) => {
    expect(run?.pours[index]?.volumeL).toBeCloseTo(gallons * 3.785411784, 12);
  });
  expect(run?.pours.map(({ reading }) => reading?.at ?? null)).toEqual([
    'emptyStop',
    'scale',
    null,
    'fullStop',
  ]);
});

test.each([
  ['a figure that is none', 'volume_L,reading_fraction\n5,1/8\nNaN,1/4\n', 3, 'volume_L', 'NaN'],
  ['an infinite figure', 'volume_L,reading_fraction\nInfinity,1/4\n', 2, 'volume_L', 'Infinity'],
  ['an absurd volume', 'volume_L,reading_fraction\n5000,1/4\n', 2, 'volume_L', '5000'],
  ['a negative volume', 'volume_L,reading_fraction\n-5,1/4\n', 2, 'volume_L', '-5'],
  ['a volume that is missing', 'volume_L,reading_fraction\n,1/4\n', 2, 'volume_L', ''],
  ['a reading outside the scale', 'volume_L,reading_fraction\n5,9/8\n', 2, 'reading_fraction', '9/8'],
  ['an unknown container', 'volume_L,reading_fraction,container\n5,1/8,Bucket\n', 2, 'container', 'Bucket'],
  [
    'an unknown direction',
    'volume_L,reading_fraction,direction\n5,1/8,sideways\n',
    2,
    'direction',
    'sideways',
  ],
  ['a time of its own making', 'volume_L,reading_fraction,time_utc\n5,1/8,noon\n', 2, 'time_utc', 'noon'],
  ['a column without a unit', 'volume,reading_fraction\n5,1/8\n', 1, 'header', 'volume'],
  ['readings of another gauge', 'volume_L,reading_percent\n5,12\n', 1, 'header', 'reading_percent'],
  ['no column for the volume', 'reading_fraction\n1/8\n', 1, 'header', ''],
  ['a header alone', 'volume_L,reading_fraction\n', 2, 'volume', ''],
  ['an empty file', '', 1, 'header', ''],
])('%s is refused with its line, field and value', (_, text, line, field, value) => {
  const read = readBack(text);
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(read.refusals[0]).toMatchObject({ line, field, value });
  expect(read.refusals[0]?.expected).not.toBe('');
});

test('every refused figure is told at once, and lines inside quotes are counted', () => {
  const read = readBack('volume_L,reading_fraction,set_aside_because\n5,1/8,"two\nlines"\nx,1/4,\n5,z,\n');
  expect(read.ok ? [] : read.refusals.map(({ line, value }) => [line, value])).toEqual([
    [4, 'x'],
    [5, 'z'],
  ]);
});

test('a decimal comma without quotes, which would move every figure on, is refused by its line', () => {
  expect(readBack('volume_L,reading_fraction\n5,1/8\n10,5,1/4\n', eighths)).toEqual({
    ok: false,
    refusals: [
      {
        line: 3,
        field: 'row',
        value: '10,5,1/4',
        expected: '2 cells as in the header; a decimal comma stands in quotes',
      },
    ],
  });
  expect(readBack('volume_L,reading_fraction\n"10,5",1/4,\n', eighths)).toMatchObject({
    ok: true,
    pourCount: 1,
  });
  expect(readBack('volume_L;reading_fraction\n10,5;1/4\n', eighths)).toMatchObject({
    ok: true,
    pourCount: 1,
  });
});

test('two columns of one meaning are refused, in another unit too', () => {
  for (const second of ['volume_L', 'volume_US_gal'])
    expect(readBack(`volume_L,${second},reading_fraction\n5,1,1/8\n`, eighths)).toMatchObject({
      ok: false,
      refusals: [{ line: 1, field: 'header', value: second, expected: 'each column once' }],
    });
});
