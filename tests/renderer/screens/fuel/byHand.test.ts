import { expect, test } from 'vitest';
import { asWritten, corrected, withRun } from '../../../../renderer/screens/fuel/edits.ts';
import { placedPours } from '../../../../renderer/screens/fuel/placedPours.ts';
import { pourKind } from '../../../../renderer/screens/fuel/pourKind.ts';
import { rowsOf } from '../../../../renderer/screens/fuel/rowsOf.ts';
import { turnedRound } from '../../../../renderer/screens/fuel/turnedRound.ts';
import { readingText } from '../../../../shared-calc/fuel/gauge-scale.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';

const tank = { capacityL: 45, unusableL: 1 };
const runId = 'may-test-filling';
const pourOf = (test: ReturnType<typeof exampleFillTest>, index: number) => test.runs[0]?.pours[index];

test('a corrected row keeps what was written down, through a second correction too, and goes back to it', () => {
  const once = withRun(exampleFillTest(), runId, (run) => corrected(run, 'may-test-pour-4', { volumeL: 6 }));
  const twice = withRun(once, runId, (run) =>
    corrected(run, 'may-test-pour-4', { reading: { at: 'scale', positionRatio: 0.6 } }),
  );
  expect(pourOf(twice, 3)).toMatchObject({
    volumeL: 6,
    reading: { at: 'scale', positionRatio: 0.6 },
    written: { volumeL: 5, reading: { at: 'scale', positionRatio: 0.5 } },
  });
  expect(
    pourOf(
      withRun(twice, runId, (run) => asWritten(run, 3)),
      3,
    ),
  ).toEqual(pourOf(exampleFillTest(), 3));
  // By hand: 15 L before it, 6 L instead of 5 L, and the rows after it move along.
  const placed = placedPours([once], tank).map(({ usableL }) => usableL);
  expect(placed).toEqual([5, 10, 15, 21, 26, 31, 36, 41]);
});

test('a gauge that runs backwards keeps every figure that it showed', () => {
  const backwards = exampleFillTest();
  for (const [index, pour] of (backwards.runs[0]?.pours ?? []).entries())
    pour.reading = index === 0 ? { at: 'fullStop' } : { at: 'scale', positionRatio: 1 - index / 8 };
  const rows = rowsOf(backwards, tank, null, { volume: 'L' });
  expect(rows.get('may-test-pour-2')).toMatchObject({ isBackwards: true });
  expect(rows.get('may-test-pour-2')?.sentences.join(' ')).toContain('runs backwards');
  // One sentence for the run, none for each row.
  const told = [...rows.values()].flatMap(({ sentences }) => sentences);
  expect(told.filter((sentence) => sentence.includes('fell'))).toHaveLength(1);

  const turned = turnedRound(backwards);
  expect(turned.scale).toEqual({ kind: 'numbers', atEmpty: 1, atFull: 0, step: 0.125 });
  expect(pourOf(turned, 0)?.reading).toEqual({ at: 'emptyStop' });
  const shown = (test: typeof backwards) =>
    test.runs[0]?.pours
      .slice(1)
      .map(({ reading }) => (reading === null ? '' : readingText(reading, test.scale)));
  expect(shown(backwards)?.[1]).toBe('3/4');
  expect(shown(turned)?.[1]).toBe('0.75');
  expect([...rowsOf(turned, tank, null, { volume: 'L' }).values()].every((row) => !row.isBackwards)).toBe(
    true,
  );
});

test('a weighed pour is typed as a mass and becomes litres; a can that is not weighed refuses a mass', () => {
  const can = { nominalL: 5, weighed: { densityKgPerL: 0.74, temperatureC: 15 } };
  const read = pourKind('L', can, 15).read('3.7 kg');
  // By hand: 3.7 / 0.74 = 5 L at the density's own temperature.
  expect('refused' in read ? NaN : read.value).toBeCloseTo(5, 12);
  expect(read).toMatchObject({ becomes: 'becomes 5.0\u00a0L' });
  expect(pourKind('L', { ...can, weighed: null }, 15).read('3.7 kg')).toHaveProperty('refused');
  expect(pourKind('L', can, 15).read('3.7 quarts')).toHaveProperty('refused');
});

test('a figure that would be a full can in another unit is doubted, a small pour is not', () => {
  const can = { nominalL: 5.68, weighed: null };
  // 1.5 US gal is 5.678 L: a full can of 5.68 L.
  expect(pourKind('L', can, null).read('1.5')).toMatchObject({ isDoubt: true });
  expect(pourKind('L', can, null).read('2.2')).toEqual({ value: 2.2 });
  expect(pourKind('L', { nominalL: null, weighed: null }, null).read('1.5')).toEqual({ value: 1.5 });
});
