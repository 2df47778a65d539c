import { pressureAltitudeFromSettingM } from '../../atmosphere/station-pressure.ts';
import { Z_95 } from '../../loading/spread.ts';
import { climbNumbers, climbReader } from '../../performance/climb-reader.ts';
import type { PerformanceBook } from '../../performance/departure-book.ts';
import { distanceNumbers, distanceReader, type RunwayCase } from '../../performance/distance-reader.ts';
import type { RunwayPhase } from '../../performance/published-factors.ts';
import { requireRange } from '../../problem.ts';
import type { AirRows } from './air-rows.ts';
import type { RowFigures } from './departure-limits.ts';

/** Who takes off where. */
export interface AeroplaneCase {
  readonly book: PerformanceBook;
  /** The upper figure of the mass: what it is 95 times in 100 no heavier than. 50 to 5,000 kg. */
  readonly massKg: number;
  /** -500 to 6,000 m */
  readonly elevationM: number;
}

/**
 * The distance that has to fit on a runway, for every row: the manual's table with all its steps and the safety factor,
 * and on top the spread of reading it, so that 95 times in 100 the table says no more. Infinity where the manual answers
 * nothing (hotter, higher, heavier, more tailwind): a limit not met. NaN where air or wind is missing.
 * @throws RangeProblem naming massKg or elevationM
 * @source distanceReader for the steps; the normal quantile 1.645 on the reading's standard uncertainty
 */
export function distanceRows(
  { book, massKg, elevationM }: AeroplaneCase,
  phase: RunwayPhase,
  runway: RunwayCase,
): RowFigures {
  requireRange('massKg', massKg, 50, 5000, 'kg');
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  const reader = distanceReader(book, phase, runway);
  const spread = 1 + Z_95 * reader.readingSdRatio;
  const out = distanceNumbers();
  return (air, wind) =>
    eachRow(
      air,
      (row, pressureAltitudeM) => {
        const { kind, requiredM } = reader.read(
          out,
          massKg,
          pressureAltitudeM,
          air.temperatureC[row] ?? NaN,
          air.dewPointC[row] ?? NaN,
          wind.headwindMs[row] ?? NaN,
        );
        return kind === 'missingAir' ? NaN : requiredM * spread;
      },
      elevationM,
    );
}

/**
 * The climb rate after take-off, for every row, less the spread of reading it; minus infinity where the manual answers
 * nothing. The wind is not asked: it does not change the rate.
 * @throws RangeProblem naming massKg or elevationM
 */
export function climbRows({ book, massKg, elevationM }: AeroplaneCase): RowFigures {
  requireRange('massKg', massKg, 50, 5000, 'kg');
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  const reader = climbReader(book);
  const spread = 1 - Z_95 * reader.readingSdRatio;
  const out = climbNumbers();
  return (air) =>
    eachRow(
      air,
      (row, pressureAltitudeM) => {
        const { kind, climbRateMs } = reader.read(
          out,
          massKg,
          pressureAltitudeM,
          air.temperatureC[row] ?? NaN,
          air.dewPointC[row] ?? NaN,
          0,
        );
        if (kind === 'missingAir') return NaN;
        // Sinking is not made better by a spread.
        return climbRateMs > 0 ? climbRateMs * spread : climbRateMs;
      },
      elevationM,
    );
}

function eachRow(
  air: AirRows,
  figure: (row: number, pressureAltitudeM: number) => number,
  elevationM: number,
): Float64Array {
  const out = new Float64Array(air.settingHpa.length);
  for (let row = 0; row < out.length; row++) {
    const settingHpa = air.settingHpa[row] ?? NaN;
    out[row] =
      settingHpa >= 850 && settingHpa <= 1100
        ? figure(row, pressureAltitudeFromSettingM(settingHpa, elevationM))
        : NaN;
  }
  return out;
}
