import { expect, test } from 'vitest';
import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import {
  comparisonSentence,
  effectSentence,
  smoothnessStep,
  smoothnessWords,
  totalSentence,
} from '../../../shared-calc/wording/fuel-curves.ts';
import { BANDED } from '../fuel/banded-example.ts';

const units = { volume: 'L' } as const;
const quarters = { kind: 'fractions', denominator: 4 } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');
const lowered: BandedCurve = {
  ...BANDED,
  knots: BANDED.knots.map((knot) => ({
    ...knot,
    readLowL: knot.readLowL - (knot.positionRatio === 0.5 ? 0.5 : 0),
  })),
};

test('an edit says what it did at the reading in hand and over all marks', () => {
  // By hand from the example: 16 L to plan on at 1/2, half a litre less after the edit, nothing elsewhere.
  const parts = {
    before: BANDED,
    after: lowered,
    scale: quarters,
    reading: { at: 'scale', positionRatio: 0.5 },
    precision: 'nearestDivision',
    units,
  } as const;
  expect(plain(effectSentence(parts))).toBe(
    'By the last edit 15.5 L to plan on at 1/2 instead of 16.0 L; over all marks -0.5 to 0.0 L.',
  );
  expect(plain(effectSentence({ ...parts, after: BANDED }))).toBe(
    'By the last edit still 16.0 L to plan on at 1/2; no mark changes noticeably.',
  );
});

test('two curves that differ say where, by how much and how sure', () => {
  const differences = [
    { positionRatio: 0.25, bestL: -0.4, lowL: -1.2, highL: 0.4, isBeyondDoubt: false },
    { positionRatio: 0.5, bestL: -1.8, lowL: -2.6, highL: -1, isBeyondDoubt: true },
  ];
  const names = { older: 'the curve of 17 May 2026', newer: 'This test’s curve' };
  expect(plain(comparisonSentence({ differences, differ: true }, names, quarters, units))).toMatch(
    /^This test’s curve and the curve of 17 May 2026 differ beyond their doubt at 1\/2: by -1.8 L at 1\/2 \(nine times in ten -2.6 L to -1.0 L\)\./,
  );
  expect(plain(comparisonSentence({ differences, differ: false }, names, quarters, units))).toContain(
    'do not differ beyond their doubt; the most is -1.8 L at 1/2.',
  );
  expect(comparisonSentence({ differences: [], differ: false }, names, quarters, units)).toContain(
    'no reading in common',
  );
});

test('a total says what to plan on first, and how it was added', () => {
  const total = { planningL: 31.46, bestL: 35, mostL: 38.91, isJoint: true };
  expect(plain(totalSentence(total, 2, units))).toBe(
    'Both tanks together: plan on 31.4 L usable; 35.0 L is the best estimate, up to 39.0 L may be there.',
  );
  expect(plain(totalSentence({ ...total, bestL: null, isJoint: false }, 3, units))).toMatch(
    /^All 3 tanks together: plan on 31.4 L usable; up to 39.0 L may be there. The tanks’ own figures are added/,
  );
});

test('stiffness is told in steps, with what the data ask for', () => {
  expect(smoothnessWords([0, 0, 0, 0.2, 0.7, 0.1, 0, 0])).toBe(
    'The data ask mostly for 5, and allow 4 to 6.',
  );
  expect(smoothnessWords([0, 0, 0, 0, 1, 0, 0, 0])).toBe('The data ask mostly for 5.');
  // The ends of the grid that the fit tries: 0.05 and 7.
  expect([0.05, 7].map(smoothnessStep)).toEqual([1, 8]);
});
