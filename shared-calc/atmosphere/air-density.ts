import { requireRange } from '../problem.ts';
import { ZERO_CELSIUS_K } from '../units/constants.ts';
import { virtualTemperatureC } from './humidity.ts';
import { GAS_CONSTANT_DRY_AIR, inchesHint } from './standard-atmosphere.ts';

/**
 * Density of dry air by the ideal-gas law. Leaves out humidity: see moistAirDensityKgM3.
 * @param pressureHpa  static pressure, 100 to 1,100 hPa
 * @param temperatureC -90 to 60 degC
 * @returns kg/m3
 * @throws RangeProblem naming pressureHpa or temperatureC
 * @example dryAirDensityKgM3(1013.25, 15) is 1.2250
 * @source U.S. Standard Atmosphere 1976, perfect-gas law; R = 287.05287 J/(kg K), ICAO Doc 7488/3
 */
export function dryAirDensityKgM3(pressureHpa: number, temperatureC: number): number {
  requireRange('pressureHpa', pressureHpa, 100, 1100, 'hPa', inchesHint(pressureHpa));
  requireRange('temperatureC', temperatureC, -90, 60, 'degC');
  return (pressureHpa * 100) / (GAS_CONSTANT_DRY_AIR * (temperatureC + ZERO_CELSIUS_K));
}

/**
 * Density of moist air: that of dry air at the virtual temperature. Moist air is the lighter.
 * @param pressureHpa  static pressure, 300 to 1,100 hPa
 * @param temperatureC -45 to 60 degC
 * @param dewPointC    -45 degC to the air temperature
 * @returns kg/m3. Leaves out the compressibility of air, 0.04 % at sea level.
 * @throws RangeProblem naming the argument
 * @example moistAirDensityKgM3(1013.25, 30, 24) is 1.1514
 * @source WMO-No. 8 (2018) annex 4.A and 4.B; perfect-gas law
 */
export function moistAirDensityKgM3(pressureHpa: number, temperatureC: number, dewPointC: number): number {
  const virtualK = virtualTemperatureC(pressureHpa, temperatureC, dewPointC) + ZERO_CELSIUS_K;
  return (pressureHpa * 100) / (GAS_CONSTANT_DRY_AIR * virtualK);
}
