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
  const altitudesM = pressureAltitudes(elevationM);
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
      altitudesM,
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
  const altitudesM = pressureAltitudes(elevationM);
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
      altitudesM,
    );
}

/** Settings that a report can have; at one elevation the pressure altitude is very nearly a straight line of them. */
const LEAST_SETTING_HPA = 850;
const MOST_SETTING_HPA = 1100;

/** Pressure altitudes of an elevation's settings, each hPa; read between them to within 2 mm. */
function pressureAltitudes(elevationM: number): Float64Array {
  return Float64Array.from({ length: MOST_SETTING_HPA - LEAST_SETTING_HPA + 2 }, (_, i) =>
    pressureAltitudeFromSettingM(Math.min(MOST_SETTING_HPA, LEAST_SETTING_HPA + i), elevationM),
  );
}

function eachRow(
  air: AirRows,
  figure: (row: number, pressureAltitudeM: number) => number,
  altitudesM: Float64Array,
): Float64Array {
  const out = new Float64Array(air.settingHpa.length);
  for (let row = 0; row < out.length; row++) {
    const settingHpa = air.settingHpa[row] ?? NaN;
    if (!(settingHpa >= LEAST_SETTING_HPA && settingHpa <= MOST_SETTING_HPA)) {
      out[row] = NaN;
      continue;
    }
    const place = settingHpa - LEAST_SETTING_HPA;
    const below = Math.floor(place);
    const leftM = altitudesM[below] ?? NaN;
    out[row] = figure(row, leftM + (place - below) * ((altitudesM[below + 1] ?? NaN) - leftM));
  }
  return out;
}
