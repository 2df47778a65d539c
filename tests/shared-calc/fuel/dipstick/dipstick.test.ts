import { describe, expect, test } from 'vitest';
import { calibrateStick } from '../../../../shared-calc/fuel/dipstick/calibrate-stick.ts';
import { stickDataOf, stickReading } from '../../../../shared-calc/fuel/dipstick/stick-data.ts';
import { stickMarks } from '../../../../shared-calc/fuel/dipstick/stick-marks.ts';
import { compareTwoMeans } from '../../../../shared-calc/fuel/dipstick/two-means.ts';
import { bandedCurveOf } from '../../../../shared-calc/fuel/fit/banded-curve.ts';
import { calibrate, fillDataOf } from '../../../../shared-calc/fuel/fit/calibrate.ts';
import type { FillData } from '../../../../shared-calc/fuel/fit/fill-data.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { refitsToKeep } from '../../../../shared-calc/fuel/fit/refits-to-keep.ts';
import { covariance, refitVolumesAtL } from '../../../../shared-calc/fuel/kept-refits.ts';
import type { BandedCurve } from '../../../../shared-calc/fuel/gauge-curve.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';
import { simulateTank, type SimulatedTank } from '../fit/simulate-tanks.ts';

const tank = { capacityL: 45, unusableL: 1 };
const stick = { id: 'stick', tankId: 'rear', kind: 'dipstick', lengthMm: 400, readToMm: 5 } as const;

/** The example's eight pours of five litres, each with a stick that rises 45 mm a pour from 20 mm on. */
function withStick() {
  const measured = exampleFillTest();
  for (const run of measured.runs)
    run.pours.forEach((pour, index) => {
      pour.stickMm = 20 + 45 * (index + 1);
    });
  return measured;
}

describe('a second scale beside the gauge', () => {
  test('is a share of the heights that were read; what is below and above them are its stops', () => {
    const span = { lowMm: 20, highMm: 340 };
    expect(stickReading(100, span)).toEqual({ at: 'scale', positionRatio: 0.25 });
    expect(stickReading(0, span)).toEqual({ at: 'emptyStop' });
    expect(stickReading(15, span)).toEqual({ at: 'emptyStop' });
    expect(stickReading(350, span)).toEqual({ at: 'fullStop' });
  });

  test('has the same pours in the same places as the gauge, and none of its lag', () => {
    const measured = withStick();
    // Not read once, and once beside a gauge reading that was set aside.
    const pours = measured.runs[0]?.pours ?? [];
    const [, second, third] = pours;
    if (second === undefined || third === undefined) throw new Error('eight pours');
    second.stickMm = null;
    third.asideReason = 'misread';
    const gauge = fillDataOf([measured], [], tank);
    const stuck = stickDataOf([measured], [], tank, stick);
    if (stuck === null) throw new Error('seven heights were read');
    const { data, span } = stuck;
    expect(span).toEqual({ lowMm: 62.5, highMm: 382.5 });
    expect(data.runs[0]?.rows.map(({ volumeL }) => volumeL)).toEqual(
      gauge.runs[0]?.rows.map(({ volumeL }) => volumeL),
    );
    expect(data.runs[0]?.rows.map(({ setAside }) => setAside).slice(0, 4)).toEqual([
      false,
      true,
      false,
      false,
    ]);
    expect(gauge.runs[0]?.rows.map(({ setAside }) => setAside).slice(0, 4)).toEqual([
      false,
      false,
      true,
      false,
    ]);
    // 5 mm of 320, 2 mm of wet edge.
    expect(data.gauge).toEqual({
      resolutionRatio: 5 / 320,
      stickingSdRatio: 2 / 320,
      lagRatio: 0,
      lagSdRatio: 0,
    });
  });

  test('is fitted as the gauge is: what was poured lies within its band', () => {
    const found = calibrateStick([withStick()], [], tank, stick);
    if (found.kind !== 'curve') throw new Error('eight heights make a curve');
    // Third pour: 15 L at 155 mm.
    const volumes = refitVolumesAtL(found.refits, (155 - 62.5) / 320).toSorted((a, b) => a - b);
    expect(volumes[20]).toBeLessThan(15);
    expect(volumes[380]).toBeGreaterThan(15);
  });

  test('longer than its tank is high, and standing in unusable fuel, is not pulled towards either end', () => {
    // Dipped with 3 mm of doubt from 18 mm (nothing usable) on, 7 mm a litre; the stick is 400 mm, the brim at 326.
    const measured = exampleFillTest();
    for (const run of measured.runs)
      run.pours.forEach((pour, index) => {
        pour.stickMm = Math.round((18 + 7 * 5 * (index + 1)) / 5) * 5;
      });
    const found = calibrateStick([measured], [], tank, stick);
    if (found.kind !== 'curve') throw new Error('eight heights make a curve');
    const { lowMm, highMm } = found.span;
    for (const litres of [6, 20, 39]) {
      const volumes = refitVolumesAtL(found.refits, (18 + 7 * litres - lowMm) / (highMm - lowMm));
      // The pours' own error is 2 % of what was poured, and the start's 0.3 L.
      expect(Math.abs(volumes.reduce((sum, each) => sum + each, 0) / volumes.length - litres)).toBeLessThan(
        0.5,
      );
    }
  });

  test('with too few heights draws no curve, and says how many there are', () => {
    expect(calibrateStick([exampleFillTest()], [], tank, stick)).toMatchObject({
      kind: 'tooFewReadings',
      neededCount: 3,
    });
  });
});

describe('gauge and stick together', () => {
  test('share the errors of what was poured: their difference is surer than their doubts apart would have it', () => {
    const measured = withStick();
    const gauge = calibrate([measured], [], tank);
    const dip = calibrateStick([measured], [], tank, stick);
    if (gauge.kind !== 'curve' || dip.kind !== 'curve') throw new Error('both have curves');
    const g = refitVolumesAtL(gauge.refits, 5 / 8);
    const s = refitVolumesAtL(dip.refits, (245 - 62.5) / 320);
    const correlation = covariance(g, s) / Math.sqrt(covariance(g, g) * covariance(s, s));
    expect(correlation).toBeGreaterThan(0.3);
    // Paired wrongly they are independent: 400 pairs, standard error 0.05.
    const turned = [...s.slice(1), ...s.slice(0, 1)];
    expect(Math.abs(covariance(g, turned) / Math.sqrt(covariance(g, g) * covariance(s, s)))).toBeLessThan(
      0.2,
    );
  });

  test('seldom disagree where both are right, and do where one is wrong', { timeout: 60_000 }, () => {
    let compared = 0;
    let wronged = 0;
    let alarms = 0;
    let found = 0;
    for (let seed = 0; seed < 40; seed++) {
      const simulated = simulateTank('s-shaped', 51_000_000 + seed, {
        resolutionRatio: 1 / 16,
        pourCount: 14,
      });
      const { data, truthL } = simulated;
      const gauge = fitGauge(data, 200);
      const dip = fitGauge(beside(simulated), 200, 77);
      if (!gauge.enough || !dip.enough) continue;
      const kept = {
        gauge: refitsToKeep(gauge, bandedCurveOf(gauge, data.capacityL, 0), []),
        dip: refitsToKeep(dip, bandedCurveOf(dip, data.capacityL, 0), []),
      };
      const positionRatio = Math.round(0.55 * 16) / 16;
      const compare = (volumeL: number) =>
        compareTwoMeans(
          { refits: kept.gauge, positionRatio, resolutionRatio: 1 / 16 },
          {
            refits: kept.dip,
            positionRatio: Math.round((volumeL / data.capacityL) * 100) / 100,
            resolutionRatio: 0.01,
          },
        ).agree;
      const trueL = truthL(positionRatio);
      compared += 1;
      if (!compare(trueL)) alarms += 1;
      const lessL = trueL - 0.2 * data.capacityL;
      if (lessL / data.capacityL < (kept.dip.positionsRatio[0] ?? 0) + 0.01) continue;
      wronged += 1;
      if (!compare(lessL)) found += 1;
    }
    expect(compared).toBeGreaterThan(30);
    // One in twenty by the limits; 40 of them tell it to about 3.5 points.
    expect(alarms / compared).toBeLessThan(0.15);
    expect(wronged).toBeGreaterThan(20);
    // A fifth of the tank is some ten times the doubt of the difference.
    expect(found / wronged).toBeGreaterThan(0.95);
  });
});

/** The same pours read by a stick that is straight in litres, to a hundredth of its length. */
function beside({ data, trueVolumesL }: SimulatedTank): FillData {
  return {
    ...data,
    gauge: { resolutionRatio: 0.01, stickingSdRatio: 0.005, lagRatio: 0, lagSdRatio: 0 },
    runs: data.runs.map((run, runIndex) => ({
      ...run,
      rows: run.rows.map((row, rowIndex) => {
        const trueL = trueVolumesL[runIndex]?.[rowIndex] ?? NaN;
        const at = Math.round((trueL / data.capacityL) * 100) / 100;
        return {
          ...row,
          reading:
            at <= 0
              ? { at: 'emptyStop' as const }
              : at >= 1
                ? { at: 'fullStop' as const }
                : { at: 'scale' as const, positionRatio: at },
        };
      }),
    })),
  };
}

test('marks of a printed scale stand at the lowest millimetre at which so much may be planned on', () => {
  const curve: BandedCurve = {
    method: 'logSlopeRefits',
    knots: [
      { positionRatio: 0.1, lowL: 2, bestL: 3, highL: 4, readLowL: 1.5, readHighL: 4.5 },
      { positionRatio: 0.9, lowL: 42, bestL: 43, highL: 44, readLowL: 41.5, readHighL: 44.5 },
    ],
    resolutionRatio: 0.0125,
    usableCapacityL: 45,
    readingCount: 8,
    asideCount: 0,
    fewRows: false,
  };
  // By hand: 1.5 L at 40 mm and 0.125 L a millimetre more: 5 L at 68 mm, 10 at 108, and so on by 40; 40 L at 348.
  const marks = stickMarks(curve, { lowMm: 0, highMm: 400 }, 5);
  expect(marks.map(({ heightMm, planL }) => [heightMm, planL])).toEqual([
    [68, 5],
    [108, 10],
    [148, 15],
    [188, 20],
    [228, 25],
    [268, 30],
    [308, 35],
    [348, 40],
  ]);
});
