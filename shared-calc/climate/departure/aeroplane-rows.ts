import { pressureAltitudeFromSettingM } from '../../atmosphere/station-pressure.ts';
import { Z_95 } from '../../numeric/z-95.ts';
import { climbNumbers, climbReader, type ClimbNumbers } from '../../performance/climb-reader.ts';
import type { PerformanceBook } from '../../performance/departure-book.ts';
import { distanceNumbers, distanceReader, type RunwayCase } from '../../performance/distance-reader.ts';
import type { RunwayPhase } from '../../performance/published-factors.ts';
import { InputProblem, requireRange } from '../../problem.ts';
import type { AirRows } from './air-rows.ts';
import type { RowFigures } from './departure-limits.ts';
import { EITHER_END, type RunwayWind } from './runway-wind.ts';

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
 * @param ends the runway from each end that may be used, in step with the headings of the wind; where the wind does not
 *   say which, the end that needs more counts
 * @throws RangeProblem naming massKg or elevationM, InputProblem for no end
 * @source distanceReader for the steps; the normal quantile 1.645 on the reading's standard uncertainty
 */
export function distanceRows(
  { book, massKg, elevationM }: AeroplaneCase,
  phase: RunwayPhase,
  ends: readonly RunwayCase[],
): RowFigures {
  requireRange('massKg', massKg, 50, 5000, 'kg');
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  if (ends.length === 0) throw new InputProblem('ends', 'at least one end is needed');
  // Ends that are alike are read once.
  const isAlike = ends.every(({ slopeRatio }) => slopeRatio === ends[0]?.slopeRatio);
  const readers = (isAlike ? ends.slice(0, 1) : ends).map((end) => distanceReader(book, phase, end));
  const out = distanceNumbers();
  const altitudesM = pressureAltitudes(elevationM);
  return (air, wind) =>
    eachRow(
      air,
      (row, pressureAltitudeM) => {
        const end = isAlike ? 0 : (wind.end[row] ?? EITHER_END);
        let mostM = 0;
        for (let at = 0; at < readers.length; at++) {
          const reader = readers[at];
          if (reader === undefined || (end !== EITHER_END && at !== end)) continue;
          const { kind, requiredM } = reader.read(
            out,
            massKg,
            pressureAltitudeM,
            air.temperatureC[row] ?? NaN,
            air.dewPointC[row] ?? NaN,
            wind.headwindMs[row] ?? NaN,
          );
          if (kind === 'missingAir') return NaN;
          mostM = Math.max(mostM, requiredM * (1 + Z_95 * reader.readingSdRatio));
        }
        return mostM;
      },
      altitudesM,
    );
}

/**
 * The climb rate after take-off, for every row, less the spread of reading it; minus infinity where the manual answers
 * nothing. The wind is not asked: it does not change the rate.
 * @throws RangeProblem naming massKg or elevationM
 */
export function climbRows(aeroplane: AeroplaneCase): RowFigures {
  return climbFigures(
    aeroplane,
    () => 0,
    ({ climbRateMs }) => climbRateMs,
  );
}

/**
 * The climb's gradient over the ground, for every row, less the spread of reading the rate; minus infinity where the
 * manual answers nothing, or prints no climb speed. A headwind is not counted, a tailwind is (see climbReader), so a row
 * without wind is no observation.
 * @throws RangeProblem naming massKg or elevationM
 */
export function climbGradientRows(aeroplane: AeroplaneCase): RowFigures {
  return climbFigures(
    aeroplane,
    (wind, row) => wind.headwindMs[row] ?? NaN,
    ({ gradientRatio }) => gradientRatio,
  );
}

function climbFigures(
  { book, massKg, elevationM }: AeroplaneCase,
  headwindMs: (wind: RunwayWind, row: number) => number,
  figure: (numbers: ClimbNumbers) => number,
): RowFigures {
  requireRange('massKg', massKg, 50, 5000, 'kg');
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  const reader = climbReader(book);
  const spread = 1 - Z_95 * reader.readingSdRatio;
  const out = climbNumbers();
  const altitudesM = pressureAltitudes(elevationM);
  return (air, wind) =>
    eachRow(
      air,
      (row, pressureAltitudeM) => {
        reader.read(
          out,
          massKg,
          pressureAltitudeM,
          air.temperatureC[row] ?? NaN,
          air.dewPointC[row] ?? NaN,
          headwindMs(wind, row),
        );
        if (out.kind === 'missingAir') return NaN;
        const value = figure(out);
        // Sinking is not made better by a spread.
        return value > 0 ? value * spread : value;
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
