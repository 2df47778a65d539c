import { expect, test } from 'vitest';
import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import { totalFuel, type ReadTank } from '../../../shared-calc/fuel/total-fuel.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';

/** Half a division of the gauge below is 2.5 L either way: a standard deviation of 5 L through root 12. */
const READING_SD_L = 5 / Math.sqrt(12);

/** A straight gauge from 5 to 45 L whose whole curve is off by a normal error of `sdL`. */
function tank(seed: number, sdL: number, can: string | null, sharedSdL = 0): ReadTank {
  const draws = seededNormals(seed);
  const errors = Array.from({ length: 4000 }, () => draws.normal());
  const offsets = errors.map((error) => sharedSdL * error + sdL * draws.normal());
  const totalSdL = Math.hypot(sdL, sharedSdL);
  const at = (positionRatio: number) => {
    const bestL = 5 + 50 * (positionRatio - 0.1);
    const half = 1.645 * totalSdL;
    const readHalf = 1.645 * Math.hypot(totalSdL, READING_SD_L);
    const band = { bestL, lowL: bestL - half, highL: bestL + half };
    return { positionRatio, ...band, readLowL: bestL - readHalf, readHighL: bestL + readHalf };
  };
  const curve: BandedCurve = {
    method: 'logSlopeRefits',
    knots: [at(0.1), at(0.5), at(0.9)],
    resolutionRatio: 0.1,
    usableCapacityL: 50,
    readingCount: 9,
    asideCount: 0,
    fewRows: false,
  };
  const refits: KeptRefits = {
    positionsRatio: [0.1, 0.5, 0.9],
    volumesL: offsets.map((offset) => [5 + offset, 25 + offset, 45 + offset]),
    containerErrors: can === null ? {} : { [can]: errors },
  };
  return { curve, refits, reading: { at: 'scale', positionRatio: 0.5 } };
}

// The 5 % quantile of a normal is 1.645 standard deviations below its mean (any table of the normal distribution).
test('two independent tanks: their doubts add as squares', () => {
  const total = totalFuel([tank(1, 1, null), tank(2, 1, null)], 'needleOnMark');
  expect(total.isJoint).toBe(true);
  expect(total.bestL).toBe(50);
  // A 5 % quantile of 4000 draws is known to root(0.05 x 0.95 / 4000) / 0.103 = 3.3 % of the 1.41 L; three of these.
  expect(Math.abs(total.planningL - (50 - 1.645 * Math.SQRT2))).toBeLessThan(0.15);
  expect(Math.abs(total.mostL - (50 + 1.645 * Math.SQRT2))).toBeLessThan(0.15);
});

test('two tanks filled from one can: what the can was wrong by goes together', () => {
  // Shared 1 L each, own 0.5 L each: root(2^2 + 0.5^2 + 0.5^2) = 2.121 L.
  const total = totalFuel([tank(3, 0.5, 'can', 1), tank(4, 0.5, 'can', 1)], 'needleOnMark');
  expect(Math.abs(total.planningL - (50 - 1.645 * 2.1213))).toBeLessThan(0.2);
});

test('a reading to the nearest division adds its own error, independent in both tanks', () => {
  const total = totalFuel([tank(1, 1, null), tank(2, 1, null)], 'nearestDivision');
  const sdL = Math.sqrt(2 * (1 + READING_SD_L ** 2));
  // Sums of four errors are close to normal; eight slices a division stand for it to a hundredth.
  expect(Math.abs(total.planningL - (50 - 1.645 * sdL))).toBeLessThan(0.25);
});

test('at the stops nothing is promised below, and the brim may be there above', () => {
  const empty: ReadTank = { ...tank(1, 1, null), reading: { at: 'emptyStop' } };
  const full: ReadTank = { ...tank(2, 1, null), reading: { at: 'fullStop' } };
  const total = totalFuel([empty, full], 'needleOnMark');
  expect(total.bestL).toBeNull();
  // 45 L at the last reading that moved, less 1.645 L.
  expect(Math.abs(total.planningL - (45 - 1.645))).toBeLessThan(0.1);
  // 5 L at the first, plus 1.645 L, and 50 L to the brim.
  expect(Math.abs(total.mostL - 56.645)).toBeLessThan(0.1);
});

test('without kept curves the figures to plan on are added, which is less', () => {
  const old: ReadTank = { ...tank(2, 1, null), refits: null };
  const total = totalFuel([tank(1, 1, null), old], 'needleOnMark');
  expect(total.isJoint).toBe(false);
  expect(total.planningL).toBeCloseTo(50 - 2 * 1.645, 9);
});

test('three tanks have a total, none has none', () => {
  const three = [tank(1, 1, null), tank(2, 1, null), tank(5, 1, null)];
  const total = totalFuel(three, 'nearestDivision');
  const sdL = Math.sqrt(3 * (1 + READING_SD_L ** 2));
  expect(Math.abs(total.planningL - (75 - 1.645 * sdL))).toBeLessThan(0.35);
  expect(() => totalFuel([], 'needleOnMark')).toThrow('at least one tank');
});
