import { describe, expect, test } from 'vitest';
import { checksAsRuns } from '../../../../shared-calc/fuel/checks/checks-as-runs.ts';
import { flowFromRefills } from '../../../../shared-calc/fuel/checks/flow-from-refills.ts';
import { refillMeasure, STATION_PUMP } from '../../../../shared-calc/fuel/checks/pump.ts';
import { judgeZero } from '../../../../shared-calc/fuel/checks/zero-check.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { bandOnMark } from '../../../../shared-calc/fuel/fit/band.ts';
import { seededNormals } from '../../../../shared-calc/numeric/seeded-normals.ts';
import { simulateTank } from '../fit/simulate-tanks.ts';
import { exampleCheck } from './example-checks.ts';

describe('fuel flow', () => {
  test('from one flight is its refill over its time, without a band', () => {
    // By hand: 27 L in an hour and a half.
    expect(flowFromRefills([{ refillL: 27, flightS: 5400, refillSdL: 0.7 }], 0.004)).toMatchObject({
      flightCount: 1,
      meanLPerH: 18,
      lowLPerH: null,
      highLPerH: null,
      limits: null,
    });
    expect(flowFromRefills([], 0.004)).toBeNull();
  });

  test('of flights that all burned alike is known as well as the refills and the pump allow', () => {
    const alike = Array.from({ length: 5 }, () => ({ refillL: 18, flightS: 3600, refillSdL: 0.5 }));
    const found = flowFromRefills(alike, 0.01);
    // Student's t for 4 degrees of freedom at 0.95: 2.1318 (printed tables); 0.5 over root 5, and 1 % of 18.
    expect(found?.highLPerH).toBeCloseTo(18 + 2.1318 * Math.hypot(0.5 / Math.sqrt(5), 0.18), 3);
    expect(found?.nextFlightHighLPerH).toBeCloseTo(found?.highLPerH ?? NaN, 10);
  });

  test('its band holds the true mean about nine times in ten, over invented flights that differ', () => {
    const draws = seededNormals(170);
    let held = 0;
    const series = 600;
    for (let index = 0; index < series; index++) {
      const pump = 1 + 0.004 * draws.normal();
      const flights = Array.from({ length: 6 }, () => {
        const flightS = 2400 + 6000 * draws.uniform();
        const burnedL = ((18 + draws.normal()) * flightS) / 3600;
        return { refillL: (burnedL + 0.5 * draws.normal()) * pump, flightS, refillSdL: 0.5 };
      });
      const found = flowFromRefills(flights, 0.004);
      if (found !== null && (found.lowLPerH ?? 99) <= 18 && (found.highLPerH ?? 0) >= 18) held += 1;
    }
    // Standard error 1.2 points.
    expect(held / series).toBeGreaterThan(0.86);
    expect(held / series).toBeLessThan(0.95);
  });
});

describe("the gauge's zero", () => {
  test('is judged in level flight only, and by what the scale can tell', () => {
    expect(judgeZero({ at: 'emptyStop' }, 'level flight', 1 / 8).kind).toBe('readsZero');
    expect(judgeZero({ at: 'scale', positionRatio: 1 / 16 }, 'level flight', 1 / 8).kind).toBe(
      'withinDivision',
    );
    expect(judgeZero({ at: 'scale', positionRatio: 1 / 8 }, 'level flight', 1 / 8)).toEqual({
      kind: 'readsAbove',
      positionRatio: 1 / 8,
    });
    expect(judgeZero({ at: 'emptyStop' }, 'ground', 1 / 8).kind).toBe('notLevel');
  });
});

test('a refill by a can is as many pours as it takes, at a fuel station one by the pump', () => {
  expect(refillMeasure(null, 25)).toEqual(STATION_PUMP);
  const can = {
    id: 'c',
    name: 'Can',
    nominalL: 5,
    how: 'marked',
    scaleSdRatio: 0.01,
    pourSdL: 0.1,
    weighed: null,
  } as const;
  // Nine pours: three times the error of one.
  expect(refillMeasure(can, 45).refillSdL).toBeCloseTo(0.3, 12);
});

describe('checks taken in as data', () => {
  test('are draining runs of which only the difference counts', () => {
    const [run] = checksAsRuns([exampleCheck()], [], 50, () => 2);
    expect(run).toMatchObject({ direction: 'draining', startSdL: 50 });
    expect(run?.rows.map(({ volumeL, container }) => [volumeL, container])).toEqual([
      [0, null],
      [25, 2],
    ]);
    // The state twice 0.5 L, the pump 0.05 L, the lag 0.5 % of the tank.
    expect(run?.rows[1]?.pourSdL).toBeCloseTo(Math.hypot(0.5 * Math.SQRT2, 0.05, 0.25), 6);
    expect(() => checksAsRuns([exampleCheck({ before: { at: 'fullStop' } })], [], 50, () => 0)).toThrow(
      'at a stop',
    );
  });

  test('narrow the difference that they measured, and do not move it away from the truth', () => {
    const tank = simulateTank('s-shaped', 4242, { resolutionRatio: 1 / 100, pourCount: 6 });
    const burnedL = tank.truthL(0.8) - tank.truthL(0.3);
    const checks = Array.from({ length: 6 }, (_, index) =>
      exampleCheck({
        id: String(index),
        before: { at: 'scale', positionRatio: 0.8 },
        after: { at: 'scale', positionRatio: 0.3 },
        refillL: burnedL,
        stateSdL: 0.2,
      }),
    );
    const { capacityL, containers } = tank.data;
    const spreadL = (data: typeof tank.data) => {
      const fit = fitGauge(data, 200);
      if (!fit.enough) throw new Error('six pours make a curve');
      const high = bandOnMark(fit, 0.8);
      const low = bandOnMark(fit, 0.3);
      return { bestL: high.bestL - low.bestL, widthL: high.highL - high.lowL + (low.highL - low.lowL) };
    };
    const alone = spreadL(tank.data);
    const withChecks = spreadL({
      ...tank.data,
      containers: [...containers, { scaleSdRatio: 0.004, pourSdRatio: 0 }],
      runs: [...tank.data.runs, ...checksAsRuns(checks, [], capacityL, () => containers.length)],
    });
    expect(withChecks.widthL).toBeLessThan(alone.widthL);
    // Six refills, each good to about 0.3 L and the lag: within a litre of what was burned.
    expect(Math.abs(withChecks.bestL - burnedL)).toBeLessThan(1);
    expect(Math.abs(withChecks.bestL - burnedL)).toBeLessThanOrEqual(Math.abs(alone.bestL - burnedL) + 0.2);
  });
});
