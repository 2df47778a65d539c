import { InputProblem } from '../problem.ts';
import {
  HIGHEST_DEW_POINT_C,
  LOWEST_DEW_POINT_C,
  VAPOUR_GAS_RATIO,
  saturationVapourPressureWaterHpa,
} from './humidity.ts';
import { GAS_CONSTANT_DRY_AIR, isaAltitudeOfDensityM } from './standard-atmosphere.ts';
import { HIGHEST_SETTING_HPA, LOWEST_SETTING_HPA, stationPressureHpa } from './station-pressure.ts';

export type Reals = Float64Array | Float32Array;

// A million powers and exponentials take five times as long as looking each up between two neighbours of a table. The
// tables are plain arrays with constant places: read out of an object they would cost half as much again.
function tabulate(f: (x: number) => number, from: number, to: number, steps: number): Float64Array {
  // One more than needed, so that the last place has a right neighbour.
  return Float64Array.from({ length: steps + 2 }, (_, i) =>
    f(Math.min(to, from + ((to - from) * i) / steps)),
  );
}

/** The straight line between two neighbours; NaN stays NaN, any other place must lie in the table. */
function lookUp(values: Float64Array, place: number): number {
  const i = place | 0;
  const left = values[i] as number;
  return left + (place - i) * ((values[i + 1] as number) - left);
}

/** Vapour is lighter than the dry air that it displaces by this share of its pressure. */
const LIGHTER_BY = 1 - VAPOUR_GAS_RATIO;
const KG_M3_PER_HPA_K = 100 / GAS_CONSTANT_DRY_AIR;

/** Tenths of a degree, as they are reported. */
const VAPOUR_PER_C = 10;
const VAPOUR_FROM_C = -45;
const VAPOUR = tabulate(
  saturationVapourPressureWaterHpa,
  LOWEST_DEW_POINT_C,
  HIGHEST_DEW_POINT_C,
  (HIGHEST_DEW_POINT_C - LOWEST_DEW_POINT_C) * VAPOUR_PER_C,
);

/** From moist air of 300 hPa and 60 degC (0.24 kg/m3) to dry air of 1,100 hPa and -45 degC (1.68), with room. */
const LEAST_DENSITY_KG_M3 = 0.2;
const MOST_DENSITY_KG_M3 = 1.75;
const ALTITUDE_STEPS = 2048;
const ALTITUDE_PER_KG_M3 = ALTITUDE_STEPS / (MOST_DENSITY_KG_M3 - LEAST_DENSITY_KG_M3);
const ALTITUDE = tabulate(isaAltitudeOfDensityM, LEAST_DENSITY_KG_M3, MOST_DENSITY_KG_M3, ALTITUDE_STEPS);

/**
 * Density altitude of every observation of a record from its station pressure, within 1 cm of densityAltitudeM.
 * Costs some 10 ns a row. A row with a value that is missing (NaN) or outside its range becomes NaN; a dew point above the
 * air temperature, as sensors report it in fog, is taken as it is.
 * @param outM               filled, as long as the others; may be one of them
 * @param stationPressureHpa 300 to 1,100 hPa
 * @param temperatureC       -45 to 60 degC
 * @param dewPointC          -45 to 60 degC
 * @throws InputProblem when the lengths differ
 * @source as densityAltitudeM
 */
export function densityAltitudeInto(
  outM: Reals,
  stationPressureHpa: Reals,
  temperatureC: Reals,
  dewPointC: Reals,
): void {
  requireSameLength(outM, { stationPressureHpa, temperatureC, dewPointC });
  const { length } = outM;
  for (let i = 0; i < length; i += 1) {
    const p = stationPressureHpa[i] as number;
    const t = temperatureC[i] as number;
    const d = dewPointC[i] as number;
    // One condition and figures instead of names: twice the speed of named limits and a function a row.
    if (!(p >= 300 && p <= 1100 && t >= -45 && t <= 60 && d >= -45 && d <= 60)) {
      outM[i] = NaN;
      continue;
    }
    const vapourHpa = lookUp(VAPOUR, (d - VAPOUR_FROM_C) * VAPOUR_PER_C);
    const enhancement = 1.0016 + 3.15e-6 * p - 0.074 / p;
    const densityKgM3 = ((p - LIGHTER_BY * enhancement * vapourHpa) * KG_M3_PER_HPA_K) / (t + 273.15);
    outM[i] = lookUp(ALTITUDE, (densityKgM3 - LEAST_DENSITY_KG_M3) * ALTITUDE_PER_KG_M3);
  }
}

/**
 * The same from altimeter settings, for a record kept at one elevation.
 * @param outM                filled, as long as the others; may be one of them, not temperatureC or dewPointC
 * @param altimeterSettingHpa 850 to 1,100 hPa
 * @param elevationM          of the field, -500 to 6,000 m
 * @throws InputProblem when the lengths differ; RangeProblem naming elevationM
 */
export function densityAltitudeFromSettingInto(
  outM: Reals,
  altimeterSettingHpa: Reals,
  temperatureC: Reals,
  dewPointC: Reals,
  elevationM: number,
): void {
  requireSameLength(outM, { altimeterSettingHpa, temperatureC, dewPointC });
  const pressures = pressureOfSettings(elevationM);
  // In pieces that stay in the processor's own memory between the two steps.
  for (let from = 0; from < outM.length; from += PIECE) {
    const to = from + PIECE;
    const piece = outM.subarray(from, to);
    lookUpPressures(piece, altimeterSettingHpa.subarray(from, to), pressures);
    densityAltitudeInto(piece, piece, temperatureC.subarray(from, to), dewPointC.subarray(from, to));
  }
}

const PIECE = 16_384;

/**
 * Station pressure of every altimeter setting of a record kept at one elevation, within 0.0001 hPa of stationPressureHpa.
 * A setting that is missing (NaN) or outside its range becomes NaN.
 * @param outHpa              filled, as long as the settings; may be the same array
 * @param altimeterSettingHpa 850 to 1,100 hPa
 * @param elevationM          of the field, -500 to 6,000 m
 * @throws InputProblem when the lengths differ; RangeProblem naming elevationM
 * @source as stationPressureHpa
 */
export function stationPressureInto(outHpa: Reals, altimeterSettingHpa: Reals, elevationM: number): void {
  requireSameLength(outHpa, { altimeterSettingHpa });
  lookUpPressures(outHpa, altimeterSettingHpa, pressureOfSettings(elevationM));
}

/** At one elevation the pressure is very nearly a straight line of the setting: steps of 1 hPa are fine enough. */
function pressureOfSettings(elevationM: number): Float64Array {
  return tabulate(
    (settingHpa) => stationPressureHpa(settingHpa, elevationM),
    LOWEST_SETTING_HPA,
    HIGHEST_SETTING_HPA,
    HIGHEST_SETTING_HPA - LOWEST_SETTING_HPA,
  );
}

function lookUpPressures(outHpa: Reals, settingsHpa: Reals, pressures: Float64Array): void {
  const { length } = outHpa;
  for (let i = 0; i < length; i += 1) {
    const settingHpa = settingsHpa[i] as number;
    outHpa[i] = settingHpa >= 850 && settingHpa <= 1100 ? lookUp(pressures, settingHpa - 850) : NaN;
  }
}

function requireSameLength(outM: Reals, columns: Record<string, Reals>): void {
  for (const [field, column] of Object.entries(columns)) {
    if (column.length !== outM.length) {
      throw new InputProblem(
        field,
        `has ${String(column.length)} values, the result has room for ${String(outM.length)}`,
      );
    }
  }
}
