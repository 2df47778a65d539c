import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { flowFromRefills } from '../../../../shared-calc/fuel/checks/flow-from-refills.ts';
import { judgeChecks } from '../../../../shared-calc/fuel/checks/judge-checks.ts';
import { studyChecks } from './simulate-checks.ts';

interface ByNumpy {
  checks: {
    days: number[];
    residualsL: number[];
    covarianceL2: number[][];
    whitened: number[];
    standardised: number[];
    sumOfSquares: number;
    scatterProb: number;
    cusum: [number, number][];
    driftLPerYear: number;
    driftSd: number;
  };
  flow: {
    refillL: number[];
    flightS: number[];
    refillSdL: number[];
    scaleSdRatio: number;
    mean: number;
    low: number;
    high: number;
    nextFlightHigh: number;
  };
}

const byNumpy = JSON.parse(readFileSync(new URL('by-numpy.json', import.meta.url), 'utf8')) as ByNumpy;
/** Both sides compute in double precision; a covariance of this size loses some four digits. */
const digits = 9;

describe('on the same invented data as numpy and scipy (by-numpy.py)', () => {
  const { checks, flow } = byNumpy;
  const found = judgeChecks(checks.residualsL, checks.covarianceL2, checks.days);

  test('residuals are whitened and standardised alike, and their cumulative sums too', () => {
    found.checks.forEach((check, index) => {
      expect(check.whitened).toBeCloseTo(checks.whitened[index] ?? NaN, digits);
      expect(check.standardised).toBeCloseTo(checks.standardised[index] ?? NaN, digits);
      expect(check.cusumHigh).toBeCloseTo(checks.cusum[index]?.[0] ?? NaN, digits);
      expect(check.cusumLow).toBeCloseTo(checks.cusum[index]?.[1] ?? NaN, digits);
    });
  });

  test('the sum of squares with the common error, its tail and the drift are those of the textbook forms', () => {
    expect(found.sumOfSquares).toBeCloseTo(checks.sumOfSquares, digits);
    expect(found.scatterProb).toBeCloseTo(checks.scatterProb, digits);
    expect(found.driftLPerYear?.slope).toBeCloseTo(checks.driftLPerYear, digits);
    expect(found.driftLPerYear?.sd).toBeCloseTo(checks.driftSd, digits);
  });

  test('the fuel flow from refills and times has the same mean and band', () => {
    const refills = flow.refillL.map((refillL, index) => ({
      refillL,
      flightS: flow.flightS[index] ?? NaN,
      refillSdL: flow.refillSdL[index] ?? NaN,
    }));
    const learned = flowFromRefills(refills, flow.scaleSdRatio);
    expect(learned?.meanLPerH).toBeCloseTo(flow.mean, digits);
    expect(learned?.lowLPerH).toBeCloseTo(flow.low, digits);
    expect(learned?.highLPerH).toBeCloseTo(flow.high, digits);
    expect(learned?.nextFlightHighLPerH).toBeCloseTo(flow.nextFlightHigh, digits);
  });
});

describe('the verdict', () => {
  const independent = (values: number[]) =>
    judgeChecks(
      values,
      values.map((_, i) => values.map((__, j) => (i === j ? 1 : 0))),
      values.map((_, day) => day),
    ).verdict;

  test('agrees while all lie within their uncertainties, and there is none without checks', () => {
    expect(independent([])).toEqual({ kind: 'none' });
    expect(independent([0.5, -1, 2.9, -0.4])).toEqual({ kind: 'agrees' });
  });

  test('is outside from a last check beyond three standard deviations on, with its side', () => {
    expect(independent([0, 0, -3.1])).toEqual({ kind: 'outside', sign: -1, fromIndex: 2 });
  });

  test('is a drift, not one check outside, where earlier ones lead up to it', () => {
    // By hand: 2, 4, then 3.5 - 0.5 more is 7.
    expect(independent([0, 2.5, 2.5, 3.5])).toEqual({ kind: 'drifting', sign: 1, fromIndex: 1 });
    // One check alone may bring the sum over its limit.
    expect(independent([0, 0, 6])).toEqual({ kind: 'outside', sign: 1, fromIndex: 2 });
  });

  test('says that one earlier check lay outside where those after it do not', () => {
    expect(independent([3.2, 0, -1])).toEqual({ kind: 'oneOutside', sign: 1, fromIndex: 0 });
  });

  test('finds a slow change by the cumulative sum, from the check on at which it left zero', () => {
    // By hand: with an allowance of 0.5 the sum is 1.5, 3, 4.5, 6 after the two good ones.
    expect(independent([-0.4, 0.2, 2, 2, 2, 2])).toEqual({ kind: 'drifting', sign: 1, fromIndex: 2 });
  });

  test('finds scatter that no check shows alone', () => {
    // Sum of squares 39.2 at 8 degrees of freedom: exceeded less than once in a hundred thousand.
    expect(independent([2.2, -2.2, 2.2, -2.2, 2.2, -2.2, 2.3, -2.2])).toEqual({ kind: 'scattered' });
  });

  test('an error in common to all does not pose as drift', () => {
    // Every check is 4 L high, and the curve itself is good to 4 L: the first says so, the others agree with it.
    const covariance = (n: number) =>
      Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, j) => 16 + (i === j ? 0.25 : 0)));
    const alike = judgeChecks([4, 4, 4, 4, 4, 4], covariance(6), [0, 1, 2, 3, 4, 5]);
    expect(alike.verdict).toEqual({ kind: 'agrees' });
    // Alone each is within one standard deviation; by the whitened ones the later hardly differ from the first.
    expect(Math.max(...alike.checks.slice(1).map(({ whitened }) => Math.abs(whitened)))).toBeLessThan(0.2);
  });
});

// A second or two each on a quiet machine.
describe('over invented gauges, each calibrated once and then checked', { timeout: 60_000 }, () => {
  test('a good gauge is seldom called wrong in sixteen checks', () => {
    const study = studyChecks(100, 43_000_000, 16, Infinity, 0);
    // If all were normal: 1 - 0.9973^16 = 4.2 % from the limits, and some 3 % from the sums (16 of a mean run of 465).
    // A share of 7 % among 100 has a standard error of 2.6 points.
    expect(study.alarmRatio).toBeLessThan(0.15);
    // Mean square of the whitened residuals: 1 where the stated uncertainties are right, 1,600 of them. They are
    // a little wide: half a division's error is rectangular, and lag is drawn wider than it is here.
    expect(study.meanSquare).toBeGreaterThan(0.7);
    expect(study.meanSquare).toBeLessThan(1.15);
  });

  test('a gauge that reads a fifth short from the seventh check on is found in most series', () => {
    const study = studyChecks(60, 44_000_000, 20, 6, 0.2);
    expect(study.alarmRatio).toBeGreaterThan(0.7);
    expect(study.meanFirst).toBeGreaterThan(6.5);
    expect(study.meanFirst).toBeLessThan(14);
  });
});
