import { expect, test } from 'vitest';
import {
  byHandWords,
  csvRefusalSentence,
  runFlagSentence,
  unlikeWords,
} from '../../../shared-calc/wording/fuel-test.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';

const units = { volume: 'L' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

test('a brim that came early says by how much, and what would explain it', () => {
  const flag = {
    rowIndex: 8,
    kind: 'brimBelowCapacity',
    usableL: 54,
    missingL: 6,
    likely: 'pourForgotten',
  } as const;
  expect(plain(runFlagSentence(flag, units))).toBe(
    'Full to the brim with 54.0 L, 6.0 L less than the tank holds. Likely: a pour was forgotten.',
  );
  expect(runFlagSentence({ ...flag, likely: 'startOrContainers' }, units)).toContain(
    'not empty at the start',
  );
});

test('a leap and a gauge that runs backwards are kept and say what to look at', () => {
  expect(
    plain(runFlagSentence({ rowIndex: 2, kind: 'leapt', movedRatio: 0.4, usualRatio: 0.1 }, units)),
  ).toBe(
    'The needle went 40 % of the scale, 10 % would be usual here; kept. Likely: a pour before this row was forgotten, or typed too small.',
  );
  expect(runFlagSentence({ rowIndex: 1, kind: 'runsBackwards', direction: 'filling' }, units)).toContain(
    'fell though fuel went in; kept',
  );
});

test('a refused file names line, field and value, five of them at most', () => {
  const refusal = { line: 7, field: 'volume_L', value: 'NaN', expected: 'a number from 0 to 1000' };
  expect(csvRefusalSentence([refusal])).toBe(
    'Nothing was taken from the file. Line 7, volume_L: "NaN", expected a number from 0 to 1000.',
  );
  expect(csvRefusalSentence(Array.from({ length: 8 }, () => refusal))).toMatch(/; and 3 more\.$/);
});

test('what was done by hand is listed, and nothing is said of nothing', () => {
  expect(byHandWords({ correctedCount: 0, pinnedCount: 0, smoothness: null })).toBe('');
  expect(byHandWords({ correctedCount: 2, pinnedCount: 1, smoothness: 0.7 })).toBe(
    '2 rows corrected, 1 value pinned and stiffness chosen',
  );
});

test('tests that do not make one curve are told by what they differ in', () => {
  const one = exampleFillTest();
  expect(unlikeWords(one, exampleFillTest('other'))).toBe('');
  expect(unlikeWords(one, { ...one, attitude: 'ground' })).toBe('another attitude');
  expect(unlikeWords(one, { ...one, power: 'engine running' })).toBe('another supply');
  expect(unlikeWords(one, { ...one, fuelKind: 'E10' })).toBe('another fuel');
  expect(unlikeWords(one, { ...one, scale: { kind: 'percent', step: 5 } })).toBe('another scale');
});
