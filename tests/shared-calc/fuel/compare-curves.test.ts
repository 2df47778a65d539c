import { expect, test } from 'vitest';
import { compareCurves, type CurveWithRefits } from '../../../shared-calc/fuel/compare-curves.ts';
import { bandedCurveOf } from '../../../shared-calc/fuel/fit/banded-curve.ts';
import { DEFAULT_BEHAVIOUR, type MeasuredRow } from '../../../shared-calc/fuel/fit/fill-data.ts';
import { fitGauge } from '../../../shared-calc/fuel/fit/gauge-fit.ts';
import { refitsToKeep } from '../../../shared-calc/fuel/fit/refits-to-keep.ts';
import { pairedRefits, refitVolumesAtL, type KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';
import { simulateTank, type SimulatedTank } from './fit/simulate-tanks.ts';

// Invented tanks with known truth: a second fill test of the same gauge, or of one that has drifted since.
const resolutionRatio = 1 / 16;
const scaleSdRatio = 0.01;
const pourSdRatio = 0.01;
const startSdL = 0.3;

/** A fill test by a can whose true error of its scale is `scaleError` standard deviations. */
function measured(
  tank: SimulatedTank,
  seed: number,
  scaleError: number,
  positionOf: (volumeL: number) => number = tank.truePosition,
): CurveWithRefits {
  const draws = seededNormals(seed);
  const { capacityL } = tank.data;
  const pourL = capacityL / 15;
  let trueL = startSdL * draws.normal();
  const rows = Array.from({ length: 14 }, (): MeasuredRow => {
    trueL += pourL * (1 + scaleSdRatio * scaleError + pourSdRatio * draws.normal());
    const needle = positionOf(trueL) - 0.004 + 0.004 * draws.normal();
    const rounded = Math.round(needle / resolutionRatio) * resolutionRatio;
    const reading =
      rounded <= 0
        ? ({ at: 'emptyStop' } as const)
        : rounded >= 1 - 1e-9
          ? ({ at: 'fullStop' } as const)
          : ({ at: 'scale', positionRatio: rounded } as const);
    return { volumeL: pourL, container: 0, reading, setAside: false };
  });
  const fit = fitGauge({
    capacityL,
    gauge: { resolutionRatio, ...DEFAULT_BEHAVIOUR },
    containers: [{ scaleSdRatio, pourSdRatio }],
    runs: [{ direction: 'filling', startUsableL: 0, startSdL, rows }],
  });
  if (!fit.enough) throw new Error('the simulated test is long enough');
  const curve = bandedCurveOf(fit, capacityL, 0);
  return { curve, refits: refitsToKeep(fit, curve, ['can']) };
}

const marks = Array.from({ length: 15 }, (_, index) => (index + 1) * resolutionRatio);
const tanks = Array.from({ length: 30 }, (_, index) =>
  simulateTank(index % 2 === 0 ? 's-shaped' : 'linear', 7_000 + index, { resolutionRatio, pourCount: 8 }),
);

/** The first test of each gauge, with the error of the can that both tests were measured with. */
const firstTests = tanks.map((tank, index) => {
  const can = seededNormals(900 + index).normal();
  return [measured(tank, 100 + index, can), can] as const;
});
function missing(): never {
  throw new Error('every tank has a first test');
}

test('two tests of an unchanged gauge are seldom said to differ', () => {
  const alarms = tanks.filter((tank, index) => {
    const [older, can] = firstTests[index] ?? missing();
    return compareCurves(older, measured(tank, 300 + index, can), marks).differ;
  });
  // One in twenty is meant: of 30 more than 4 by chance in 1.6 % of such studies (binomial).
  expect(alarms.length).toBeLessThanOrEqual(4);
});

test('a gauge that drifted by a tenth of its sweep at the top is found out, and where', () => {
  const found = tanks.map((tank, index) => {
    const drifted = (volumeL: number) => {
      const needle = tank.truePosition(volumeL);
      return needle + 0.2 * Math.max(0, needle - 0.5);
    };
    const [older, can] = firstTests[index] ?? missing();
    return compareCurves(older, measured(tank, 300 + index, can, drifted), marks);
  });
  const said = found.filter(({ differ }) => differ);
  // A needle that stands higher than before means less fuel at each mark above the middle.
  expect(said.length).toBeGreaterThan(tanks.length / 2);
  const beyond = said.flatMap(({ differences }) => differences.filter(({ isBeyondDoubt }) => isBeyondDoubt));
  expect(beyond.filter(({ positionRatio }) => positionRatio > 0.5).length / beyond.length).toBeGreaterThan(
    0.9,
  );
  expect(beyond.every(({ bestL, positionRatio }) => positionRatio <= 0.5 || bestL < 0)).toBe(true);
});

test('where two curves share no reading there is nothing to compare', () => {
  const [tank] = tanks;
  if (tank === undefined) throw new Error('there are forty');
  const one = measured(tank, 1, 0);
  expect(compareCurves(one, one, [])).toEqual({ differences: [], differ: false });
});

/** Curves whose volume is one shared error plus one of their own, for which sums and differences are known. */
function made(seed: number, sharedSdL: number, ownSdL: number, count = 400): KeptRefits {
  const draws = seededNormals(seed);
  const errors = Array.from({ length: count }, () => draws.normal());
  return {
    positionsRatio: [0, 1],
    volumesL: errors.map((error) => {
      const volumeL = 20 + sharedSdL * error + ownSdL * draws.normal();
      return [volumeL, volumeL];
    }),
    containerErrors: { can: errors },
  };
}
const sd = (values: readonly number[]) => {
  const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
  return Math.sqrt(values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (values.length - 1));
};

test('the error of a can that both were measured with cancels in a difference and adds up in a sum', () => {
  // By hand: shared 1 L each, own 0.5 L each. Difference: root(2) x 0.5 = 0.707; sum: root(2^2 + 2 x 0.5^2) = 2.121.
  const [a, b] = [made(1, 1, 0.5), made(2, 1, 0.5)];
  const pairs = pairedRefits(a, b);
  const [atA, atB] = [refitVolumesAtL(a, 0.5), refitVolumesAtL(b, 0.5)];
  const both = pairs.map((index, at) => [atA[at] ?? 0, atB[index] ?? 0] as const);
  // A standard deviation from 400 draws is known to 3.5 %; ranks mixed in twenties add a little to the difference.
  expect(sd(both.map(([x, y]) => x - y)) / 0.7071).toBeGreaterThan(0.9);
  expect(sd(both.map(([x, y]) => x - y)) / 0.7071).toBeLessThan(1.15);
  expect(Math.abs(sd(both.map(([x, y]) => x + y)) / 2.1213 - 1)).toBeLessThan(0.12);
});

test('curves from one seed without a can in common are independent, though the n-th of both are alike', () => {
  const a = made(3, 0, 1);
  const b: KeptRefits = { ...a, containerErrors: {} };
  const pairs = pairedRefits(a, b);
  const [atA, atB] = [refitVolumesAtL(a, 0.5), refitVolumesAtL(b, 0.5)];
  // By hand: root(2) where independent; 0 had they been matched as they lie.
  const spread = sd(pairs.map((index, at) => (atA[at] ?? 0) - (atB[index] ?? 0)));
  expect(Math.abs(spread / Math.SQRT2 - 1)).toBeLessThan(0.12);
  expect(new Set(pairs).size).toBe(400);
});
