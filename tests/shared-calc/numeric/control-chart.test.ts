import { expect, test } from 'vitest';
import { cusum, individualsLimits } from '../../../shared-calc/numeric/control-chart.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';

test('limits for single values are those of the worked example of the NIST/SEMATECH e-Handbook, 6.3.2.2', () => {
  // Ten batches, flow rate; the handbook prints the mean, the mean moving range and both limits to these digits.
  const flowRates = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const limits = individualsLimits(flowRates);
  expect(limits.mean).toBeCloseTo(50.81, 10);
  expect(limits.meanMovingRange).toBeCloseTo(1.8778, 4);
  // The handbook goes on from its rounded range: a unit of the last printed digit.
  expect(Math.abs(limits.upper - 55.8041)).toBeLessThan(1e-4);
  expect(Math.abs(limits.lower - 45.8159)).toBeLessThan(1e-4);
});

test('cumulative sums are those of the worked example of the NIST/SEMATECH e-Handbook, 6.3.2.3', () => {
  // The table is quoted from memory (target 325, k 0.3175, h 4.1959); each entry follows by hand from the formula
  // printed above it. Printed to two decimals, hence half of the last one.
  const values = [
    324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
    328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
  ];
  const high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04];
  const low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const sums = cusum(
    values.map((value) => value - 325),
    0.3175,
    4.1959,
  );
  sums.forEach((sum, index) => {
    expect(Math.abs(sum.high - (high[index] ?? NaN))).toBeLessThan(0.0051);
    expect(Math.abs(sum.low - (low[index] ?? NaN))).toBeLessThan(0.0051);
  });
  // The handbook marks the fourteenth group as the first out of control.
  expect(sums.findIndex(({ signal }) => signal !== null)).toBe(13);
});

test('with k 0.5 and h 5 the mean run to a signal is that of the published tables', () => {
  // D. C. Montgomery, Introduction to Statistical Quality Control, average run lengths of the two-sided tabular sums
  // (from memory): 465 without a shift, 38.0, 10.4 and 4.01 at 0.5, 1 and 2 standard deviations. The spread of a run
  // is about its mean at no shift and less at a shift: four standard errors of 1,500 runs.
  const draws = seededNormals(465);
  for (const [shift, published, runs] of [
    [0, 465, 1500],
    [0.5, 38, 1500],
    [1, 10.4, 1500],
    [2, 4.01, 1500],
  ] as const) {
    let sum = 0;
    let squares = 0;
    for (let run = 0; run < runs; run++) {
      const length = runLength(shift, draws.normal);
      sum += length;
      squares += length * length;
    }
    const mean = sum / runs;
    const standardError = Math.sqrt((squares / runs - mean * mean) / runs);
    expect(Math.abs(mean - published)).toBeLessThan(4 * standardError + 0.005 * published);
  }
});

function runLength(shift: number, normal: () => number): number {
  // In stretches: the sums depend on all values before.
  for (let length = 64; ; length *= 4) {
    const values = stretch(length, shift, normal);
    const at = cusum(values, 0.5, 5).findIndex(({ signal }) => signal !== null);
    if (at >= 0) return at + 1;
    if (length > 20_000) throw new Error('no signal in twenty thousand values');
  }
}

let kept: number[] = [];
/** Goes on with what was drawn for the shorter stretch. */
function stretch(length: number, shift: number, normal: () => number): number[] {
  if (length === 64) kept = [];
  while (kept.length < length) kept.push(shift + normal());
  return kept;
}
