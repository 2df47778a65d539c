import { requireRange } from '../problem.ts';
import { ZERO_CELSIUS_K } from '../units/constants.ts';
import { inchesHint } from './standard-atmosphere.ts';

// WMO-No. 8 (2018), Guide to Instruments and Methods of Observation, volume I, annex 4.B.
const E0_HPA = 6.112;
const WATER = { factor: 17.62, offsetC: 243.12, lowestC: -45, highestC: 60 } as const;
const ICE = { factor: 22.46, offsetC: 272.62, lowestC: -65, highestC: 0 } as const;
type Phase = typeof WATER | typeof ICE;

/** Ratio of the gas constants of dry air and vapour (WMO-No. 8, annex 4.A). */
export const VAPOUR_GAS_RATIO = 0.62198;

export const LOWEST_DEW_POINT_C = WATER.lowestC;
export const HIGHEST_DEW_POINT_C = WATER.highestC;
const LOWEST_PRESSURE_HPA = 300;
const HIGHEST_PRESSURE_HPA = 1100;

function requirePressure(pressureHpa: number): void {
  requireRange(
    'pressureHpa',
    pressureHpa,
    LOWEST_PRESSURE_HPA,
    HIGHEST_PRESSURE_HPA,
    'hPa',
    inchesHint(pressureHpa),
  );
}

function pureSaturationHpa(temperatureC: number, phase: Phase): number {
  return E0_HPA * Math.exp((phase.factor * temperatureC) / (phase.offsetC + temperatureC));
}

/**
 * Saturation vapour pressure of pure water vapour over water, also below freezing (as reported dew points are).
 * @param temperatureC -45 to 60 degC
 * @returns hPa, within 0.6 % of the reference formulation in this range
 * @throws RangeProblem naming temperatureC
 * @example saturationVapourPressureWaterHpa(20) is 23.33
 * @source WMO-No. 8 (2018) annex 4.B, equation 4.B.1
 */
export function saturationVapourPressureWaterHpa(temperatureC: number): number {
  requireRange('temperatureC', temperatureC, WATER.lowestC, WATER.highestC, 'degC');
  return pureSaturationHpa(temperatureC, WATER);
}

/**
 * Saturation vapour pressure of pure water vapour over ice.
 * @param temperatureC -65 to 0 degC
 * @returns hPa
 * @throws RangeProblem naming temperatureC
 * @source WMO-No. 8 (2018) annex 4.B
 */
export function saturationVapourPressureIceHpa(temperatureC: number): number {
  requireRange('temperatureC', temperatureC, ICE.lowestC, ICE.highestC, 'degC');
  return pureSaturationHpa(temperatureC, ICE);
}

/**
 * How much more vapour moist air of a pressure holds than pure vapour would: the enhancement factor.
 * @param pressureHpa 300 to 1,100 hPa
 * @returns ratio, 1.0023 to 1.0050
 * @throws RangeProblem naming pressureHpa
 * @source WMO-No. 8 (2018) annex 4.B: f(p) = 1.0016 + 3.15e-6 p - 0.074 / p
 */
export function enhancementFactorRatio(pressureHpa: number): number {
  requirePressure(pressureHpa);
  return 1.0016 + 3.15e-6 * pressureHpa - 0.074 / pressureHpa;
}

/**
 * Vapour pressure of moist air from its dew point (over water), with the enhancement factor.
 * The inverse is dewPointC. For the vapour pressure at saturation give the air temperature.
 * @param pressureHpa 300 to 1,100 hPa
 * @param dewPointC   -45 to 60 degC
 * @returns hPa
 * @throws RangeProblem naming pressureHpa or dewPointC
 * @source WMO-No. 8 (2018) annex 4.B
 */
export function vapourPressureHpa(pressureHpa: number, dewPointC: number): number {
  requireRange('dewPointC', dewPointC, WATER.lowestC, WATER.highestC, 'degC');
  return enhancementFactorRatio(pressureHpa) * pureSaturationHpa(dewPointC, WATER);
}

/**
 * Vapour pressure of moist air from its frost point (over ice), with the enhancement factor. The inverse is frostPointC.
 * @param pressureHpa 300 to 1,100 hPa
 * @param frostPointC -65 to 0 degC
 * @returns hPa
 * @throws RangeProblem naming pressureHpa or frostPointC
 * @source WMO-No. 8 (2018) annex 4.B
 */
export function vapourPressureOverIceHpa(pressureHpa: number, frostPointC: number): number {
  requireRange('frostPointC', frostPointC, ICE.lowestC, ICE.highestC, 'degC');
  return enhancementFactorRatio(pressureHpa) * pureSaturationHpa(frostPointC, ICE);
}

/**
 * Dew point (over water) of air with a vapour pressure. The inverse of vapourPressureHpa.
 * @param pressureHpa       300 to 1,100 hPa
 * @param vapourPressureHpa what gives a dew point of -45 to 60 degC: 0.111 to 200 hPa
 * @returns degree C
 * @throws RangeProblem naming pressureHpa or vapourPressureHpa
 * @source WMO-No. 8 (2018) annex 4.B, solved for the temperature
 */
export function dewPointC(pressureHpa: number, vapourPressureHpa: number): number {
  return pointC(pressureHpa, vapourPressureHpa, WATER);
}

/**
 * Frost point (over ice) of air with a vapour pressure. The inverse of vapourPressureOverIceHpa.
 * @param pressureHpa       300 to 1,100 hPa
 * @param vapourPressureHpa what gives a frost point of -65 to 0 degC: 0.0054 to 6.14 hPa
 * @returns degree C
 * @throws RangeProblem naming pressureHpa or vapourPressureHpa
 * @source WMO-No. 8 (2018) annex 4.B, solved for the temperature
 */
export function frostPointC(pressureHpa: number, vapourPressureHpa: number): number {
  return pointC(pressureHpa, vapourPressureHpa, ICE);
}

function pointC(pressureHpa: number, vapourPressureHpa: number, phase: Phase): number {
  const enhancement = enhancementFactorRatio(pressureHpa);
  const lowest = enhancement * pureSaturationHpa(phase.lowestC, phase);
  const highest = enhancement * pureSaturationHpa(phase.highestC, phase);
  requireRange('vapourPressureHpa', vapourPressureHpa, lowest, highest, 'hPa');
  const log = Math.log(vapourPressureHpa / (E0_HPA * enhancement));
  return (phase.offsetC * log) / (phase.factor - log);
}

/**
 * Relative humidity over water. The enhancement factor is in both vapour pressures and falls out.
 * @param temperatureC -45 to 60 degC
 * @param dewPointC    -45 degC to the air temperature
 * @returns ratio, above 0 to 1
 * @throws RangeProblem naming temperatureC or dewPointC
 * @source WMO-No. 8 (2018) annex 4.B
 */
export function relativeHumidityRatio(temperatureC: number, dewPointC: number): number {
  const saturation = saturationVapourPressureWaterHpa(temperatureC);
  requireRange('dewPointC', dewPointC, WATER.lowestC, temperatureC, 'degC');
  return pureSaturationHpa(dewPointC, WATER) / saturation;
}

/**
 * Dew point from the relative humidity over water. The inverse of relativeHumidityRatio.
 * @param temperatureC     -45 to 60 degC
 * @param humidityRatio    what gives a dew point of at least -45 degC, to 1
 * @returns degree C
 * @throws RangeProblem naming temperatureC or humidityRatio
 * @source WMO-No. 8 (2018) annex 4.B
 */
export function dewPointFromHumidityC(temperatureC: number, humidityRatio: number): number {
  const saturation = saturationVapourPressureWaterHpa(temperatureC);
  const driest = pureSaturationHpa(WATER.lowestC, WATER) / saturation;
  requireRange('humidityRatio', humidityRatio, driest, 1, '');
  const log = Math.log((humidityRatio * saturation) / E0_HPA);
  return (WATER.offsetC * log) / (WATER.factor - log);
}

/**
 * Mixing ratio: mass of vapour to mass of dry air.
 * @param pressureHpa 300 to 1,100 hPa
 * @param dewPointC   -45 to 60 degC
 * @returns kg/kg
 * @throws RangeProblem naming pressureHpa or dewPointC
 * @source WMO-No. 8 (2018) annex 4.A
 */
export function mixingRatio(pressureHpa: number, dewPointC: number): number {
  const vapour = vapourPressureHpa(pressureHpa, dewPointC);
  return (VAPOUR_GAS_RATIO * vapour) / (pressureHpa - vapour);
}

/**
 * Specific humidity: mass of vapour to mass of moist air.
 * @param pressureHpa 300 to 1,100 hPa
 * @param dewPointC   -45 to 60 degC
 * @returns kg/kg
 * @throws RangeProblem naming pressureHpa or dewPointC
 * @source WMO-No. 8 (2018) annex 4.A
 */
export function specificHumidityRatio(pressureHpa: number, dewPointC: number): number {
  const vapour = vapourPressureHpa(pressureHpa, dewPointC);
  return (VAPOUR_GAS_RATIO * vapour) / (pressureHpa - (1 - VAPOUR_GAS_RATIO) * vapour);
}

/**
 * Temperature at which dry air of the same pressure is as light as this moist air. Performance tables are entered with it
 * where humidity counts.
 * @param pressureHpa  300 to 1,100 hPa
 * @param temperatureC -45 to 60 degC
 * @param dewPointC    -45 degC to the air temperature
 * @returns degree C, at least temperatureC
 * @throws RangeProblem naming the argument
 * @example 1013.25 hPa, 30 degC with a dew point of 24 degC: 33.4 degC
 * @source WMO-No. 8 (2018) annex 4.A: Tv = T / (1 - (1 - 0.62198) e / p)
 */
export function virtualTemperatureC(pressureHpa: number, temperatureC: number, dewPointC: number): number {
  requireRange('temperatureC', temperatureC, WATER.lowestC, WATER.highestC, 'degC');
  requireRange('dewPointC', dewPointC, WATER.lowestC, temperatureC, 'degC');
  const vapour = vapourPressureHpa(pressureHpa, dewPointC);
  return (
    (temperatureC + ZERO_CELSIUS_K) / (1 - ((1 - VAPOUR_GAS_RATIO) * vapour) / pressureHpa) - ZERO_CELSIUS_K
  );
}

/**
 * Virtual temperature where the specific humidity is known instead of the dew point.
 * @param temperatureC          -90 to 60 degC
 * @param specificHumidityRatio 0 to 0.1 kg/kg
 * @returns degree C
 * @throws RangeProblem naming the argument
 * @source WMO-No. 8 (2018) annex 4.A: Tv = T (1 + (1 / 0.62198 - 1) q), the same as virtualTemperatureC
 */
export function virtualTemperatureFromSpecificC(temperatureC: number, specificHumidityRatio: number): number {
  requireRange('temperatureC', temperatureC, -90, 60, 'degC');
  requireRange('specificHumidityRatio', specificHumidityRatio, 0, 0.1, 'kg/kg');
  return (
    (temperatureC + ZERO_CELSIUS_K) * (1 + (1 / VAPOUR_GAS_RATIO - 1) * specificHumidityRatio) -
    ZERO_CELSIUS_K
  );
}
