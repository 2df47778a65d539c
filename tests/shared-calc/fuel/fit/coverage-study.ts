import { bandCurve, bandOfReading } from '../../../../shared-calc/fuel/fit/band.ts';
import { fitGauge } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import { seededNormals } from '../../../../shared-calc/numeric/seeded-normals.ts';
import {
  gaugeKinds,
  simulateDeadTopQuarter,
  simulateTank,
  type GaugeKind,
  type SimulatedTank,
  type TestOptions,
} from './simulate-tanks.ts';

/** How often the band held the truth, over some group of simulated tanks; shares are means over tanks. */
export interface CoverageRow {
  group: string;
  tankCount: number;
  /** Truth between the 5 and the 95 % curve. */
  heldRatio: number;
  /** Planning curve above the truth. */
  aboveRatio: number;
  /** Mean width of the band as a share of the usable capacity. */
  widthRatio: number;
  /** Planning figure for a reading to the nearest division above the truth. */
  readAboveRatio: number;
}

export interface CoverageStudy {
  rows: CoverageRow[];
  /** Share held in each tenth of the sweep. */
  tenths: number[];
  /** Tanks with fewer than three different readings: no curve, so nothing to hold. */
  withoutCurveCount: number;
}

const RESOLUTIONS = [1 / 8, 1 / 16, 1 / 100];
const POSITIONS = 50;
const READINGS = 40;

/** Simulate tanks of every kind and resolution with 5 to 25 pours, fit each, and compare with its truth. */
export function studyCoverage(
  tankCount: number,
  firstSeed: number,
  refitCount: number,
  kinds: readonly GaugeKind[] = gaugeKinds,
): CoverageStudy {
  return study(tankCount, firstSeed, refitCount, kinds.length, (index, options) =>
    simulateTank(kinds[index % kinds.length] ?? 'linear', firstSeed + index, options),
  );
}

/** The same over many fill tests of one gauge whose needle is at its full stop for the last quarter of the tank. */
export function studyDeadTopQuarter(testCount: number, firstSeed: number, refitCount: number): CoverageStudy {
  return study(testCount, firstSeed, refitCount, 1, (index, options) =>
    simulateDeadTopQuarter(firstSeed + index, options),
  );
}

function study(
  tankCount: number,
  firstSeed: number,
  refitCount: number,
  kindCount: number,
  simulate: (index: number, options: TestOptions) => SimulatedTank,
): CoverageStudy {
  const sums = new Map<string, number[]>();
  const tenths = Array.from({ length: 10 }, () => ({ held: 0, all: 0 }));
  let withoutCurveCount = 0;
  for (let index = 0; index < tankCount; index++) {
    const resolutionRatio = RESOLUTIONS[Math.floor(index / kindCount) % RESOLUTIONS.length] ?? 1 / 8;
    const draws = seededNormals(firstSeed + 5_000_000 + index);
    const pourCount = 5 + Math.floor(draws.uniform() * 21);
    const tank = simulate(index, { resolutionRatio, pourCount });
    const fit = fitGauge(tank.data, refitCount);
    if (!fit.enough) {
      withoutCurveCount += 1;
      continue;
    }
    let held = 0;
    let above = 0;
    let width = 0;
    for (const band of bandCurve(fit, POSITIONS)) {
      const truthL = tank.truthL(band.positionRatio);
      const inside = truthL >= band.lowL && truthL <= band.highL ? 1 : 0;
      held += inside;
      above += band.lowL > truthL ? 1 : 0;
      width += (band.highL - band.lowL) / tank.data.capacityL;
      const tenth = tenths[Math.min(9, Math.floor(band.positionRatio * 10))];
      if (tenth !== undefined) {
        tenth.held += inside;
        tenth.all += 1;
      }
    }
    // A needle somewhere on the scale, noted to the nearest division.
    const { firstPosition, lastPosition } = fit.rows;
    let readAbove = 0;
    let read = 0;
    for (let reading = 0; reading < READINGS; reading++) {
      const position = firstPosition + (lastPosition - firstPosition) * draws.uniform();
      const noted = Math.round((position + 0.005 * draws.normal()) / resolutionRatio) * resolutionRatio;
      if (noted < firstPosition - 1e-9 || noted > lastPosition + 1e-9) continue;
      read += 1;
      if (bandOfReading(fit, noted).lowL > tank.truthL(position)) readAbove += 1;
    }
    const each = [
      1,
      held / POSITIONS,
      above / POSITIONS,
      width / POSITIONS,
      read === 0 ? 0 : readAbove / read,
    ];
    for (const group of ['all', tank.kind, `read to ${resolutionRatio.toFixed(3)}`, pourGroup(pourCount)]) {
      const sum = sums.get(group) ?? [0, 0, 0, 0, 0];
      sums.set(
        group,
        sum.map((value, column) => value + (each[column] ?? 0)),
      );
    }
  }
  const rows = [...sums].map(([group, [count = 1, held = 0, above = 0, width = 0, readAbove = 0]]) => ({
    group,
    tankCount: count,
    heldRatio: held / count,
    aboveRatio: above / count,
    widthRatio: width / count,
    readAboveRatio: readAbove / count,
  }));
  return { rows, tenths: tenths.map((tenth) => tenth.held / tenth.all), withoutCurveCount };
}

function pourGroup(pourCount: number): string {
  if (pourCount <= 8) return '5 to 8 pours';
  if (pourCount <= 14) return '9 to 14 pours';
  return pourCount <= 20 ? '15 to 20 pours' : '21 to 25 pours';
}

/** The row over all tanks. */
export function overall(study: CoverageStudy): CoverageRow {
  const row = study.rows.find(({ group }) => group === 'all');
  if (row === undefined) throw new Error('no tank had a curve');
  return row;
}
