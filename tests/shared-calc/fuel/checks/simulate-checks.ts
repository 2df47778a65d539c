import { checkResiduals } from '../../../../shared-calc/fuel/checks/check-residuals.ts';
import type { RefillCheckRecord } from '../../../../shared-calc/fuel/checks/check-record.ts';
import { judgeChecks } from '../../../../shared-calc/fuel/checks/judge-checks.ts';
import { STATION_PUMP } from '../../../../shared-calc/fuel/checks/pump.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { seededNormals } from '../../../../shared-calc/numeric/seeded-normals.ts';
import { drawsOfFit } from './draws-of-fit.ts';
import { gaugeKinds, simulateTank } from '../fit/simulate-tanks.ts';

// Invented gauges, calibrated by an invented fill test and then flown: how often a good gauge is called wrong, and how
// soon one that has drifted is found.

export interface CheckStudy {
  seriesCount: number;
  /** Share of series in which some check was called outside or drifting at the moment it was logged. */
  alarmRatio: number;
  /** Of those with an alarm: mean number of the check, counted from 1, at which it came. */
  meanFirst: number;
  /** Mean square of the whitened residuals: 1 where the stated uncertainties are right. */
  meanSquare: number;
}

const STATE_SD_L = 0.4;

/**
 * @param driftAfter  the needle changes from this check on, counted from 0; Infinity for a good gauge
 * @param driftRatio  by how much it then reads short at full sweep: a reading x shows as x (1 - drift)
 */
export function studyChecks(
  seriesCount: number,
  firstSeed: number,
  checkCount: number,
  driftAfter: number,
  driftRatio: number,
): CheckStudy {
  let alarms = 0;
  let firsts = 0;
  let squares = 0;
  let total = 0;
  for (let series = 0; series < seriesCount; series++) {
    const kind = gaugeKinds[series % gaugeKinds.length] ?? 'linear';
    const resolutionRatio = series % 2 === 0 ? 1 / 8 : 1 / 16;
    const tank = simulateTank(kind, firstSeed + series, { resolutionRatio, pourCount: 16 });
    const fit = fitGauge(tank.data, 100);
    if (!fit.enough) continue;
    const draws = seededNormals(firstSeed + 7_000_000 + series);
    const pumpError = STATION_PUMP.scaleSdRatio * draws.normal();
    const read = (position: number) =>
      Math.round((position + 0.005 * draws.normal()) / resolutionRatio) * resolutionRatio;
    const checks: RefillCheckRecord[] = [];
    while (checks.length < checkCount) {
      const { firstPosition, lastPosition } = fit.rows;
      const highest = lastPosition - (lastPosition - firstPosition) * 0.2 * draws.uniform();
      const lowest = firstPosition + (lastPosition - firstPosition) * 0.5 * draws.uniform();
      const keeps = checks.length < driftAfter ? 1 : 1 - driftRatio;
      const beforeRatio = read(highest * keeps - 0.004);
      const afterRatio = read(lowest * keeps + 0.004);
      if (afterRatio >= beforeRatio || beforeRatio > lastPosition || afterRatio < firstPosition) continue;
      const burnedL = tank.truthL(highest) - tank.truthL(lowest);
      const filledL = burnedL + STATE_SD_L * (draws.normal() - draws.normal());
      const refillL = filledL * (1 + pumpError) + STATION_PUMP.refillSdL * draws.normal();
      checks.push(check(checks.length, beforeRatio, afterRatio, Math.max(0.1, refillL)));
    }
    const set = checkResiduals(drawsOfFit(fit, []), checks, [], [], 'level flight');
    let first = 0;
    for (let count = 1; count <= checkCount && first === 0; count++) {
      const { verdict } = judgeChecks(
        set.residualsL.slice(0, count),
        set.covarianceL2.slice(0, count).map((row) => row.slice(0, count)),
        Array.from({ length: count }, (_, day) => day),
      );
      if (verdict.kind === 'outside' || verdict.kind === 'drifting') first = count;
    }
    if (first > 0) {
      alarms += 1;
      firsts += first;
    }
    const whole = judgeChecks(
      set.residualsL,
      set.covarianceL2,
      set.residualsL.map((_, day) => day),
    );
    squares += whole.sumOfSquares;
    total += checkCount;
  }
  return {
    seriesCount,
    alarmRatio: alarms / seriesCount,
    meanFirst: firsts / Math.max(1, alarms),
    meanSquare: squares / total,
  };
}

function check(index: number, before: number, after: number, refillL: number): RefillCheckRecord {
  return {
    kind: 'refill',
    id: `check-${String(index)}`,
    tankId: 'tank',
    checkedOn: `2026-01-${String(index + 1).padStart(2, '0')}`,
    attitude: 'level flight',
    before: { at: 'scale', positionRatio: before },
    after: { at: 'scale', positionRatio: after },
    flightS: 3600,
    refillL,
    stateSdL: STATE_SD_L,
    containerId: null,
    note: '',
    withdrawn: false,
  };
}
