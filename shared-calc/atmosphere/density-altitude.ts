import { requireRange } from '../problem.ts';
import { HPA_PER_INHG, M_PER_FT } from '../units/constants.ts';
import { dryAirDensityKgM3, moistAirDensityKgM3 } from './air-density.ts';
import {
  inchesHint,
  isaAltitudeOfDensityM,
  isaTemperatureC,
  pressureAltitudeM,
} from './standard-atmosphere.ts';

/**
 * Density altitude, exact: the altitude at which the standard atmosphere has the density of this moist air.
 * It is the figure that the program plans with; densityAltitudeInto does the same for a million observations.
 * @param pressureHpa  station pressure, 300 to 1,100 hPa
 * @param temperatureC -45 to 60 degC
 * @param dewPointC    -45 degC to the air temperature
 * @returns geopotential m; below zero in cold, dense air
 * @throws RangeProblem naming the argument
 * @example densityAltitudeM(1013.25, 30, 24) is 640.8 m; dry air of 30 degC has 525.5 m
 * @source ICAO Doc 7488/3 (the altitude of equal density); WMO-No. 8 (2018) for the humidity
 */
export function densityAltitudeM(pressureHpa: number, temperatureC: number, dewPointC: number): number {
  return isaAltitudeOfDensityM(moistAirDensityKgM3(pressureHpa, temperatureC, dewPointC));
}

/**
 * Density altitude as if the air were dry: for records without a dew point, which must say so, and to show what humidity adds.
 * @param pressureHpa  station pressure, 100 to 1,100 hPa
 * @param temperatureC -90 to 60 degC
 * @returns geopotential m; too low by up to some 200 m in hot, humid air
 * @throws RangeProblem naming pressureHpa or temperatureC
 * @source ICAO Doc 7488/3
 */
export function dryDensityAltitudeM(pressureHpa: number, temperatureC: number): number {
  return isaAltitudeOfDensityM(dryAirDensityKgM3(pressureHpa, temperatureC));
}

/**
 * Density altitude by the formula that the US National Weather Service published, for dry air: only to be shown beside
 * the exact figure. 145442.16 ft [1 - (17.326 P / (459.67 + T))^0.235], P in inHg, T in degF; there rounded to 100 ft.
 * @param pressureHpa  station pressure, 300 to 1,100 hPa
 * @param temperatureC -60 to 60 degC
 * @returns m
 * @throws RangeProblem naming pressureHpa or temperatureC
 * @source National Weather Service, density altitude calculator documentation
 */
export function weatherServiceDensityAltitudeM(pressureHpa: number, temperatureC: number): number {
  requireRange('pressureHpa', pressureHpa, 300, 1100, 'hPa', inchesHint(pressureHpa));
  requireRange('temperatureC', temperatureC, -60, 60, 'degC');
  const pressureInHg = pressureHpa / HPA_PER_INHG;
  const temperatureF = temperatureC * 1.8 + 32;
  return 145442.16 * M_PER_FT * (1 - ((17.326 * pressureInHg) / (459.67 + temperatureF)) ** 0.235);
}

/** What pilots add for each degree C above standard. */
export const RULE_OF_THUMB_FT_PER_C = 120;

/**
 * Density altitude by the rule of thumb, pressure altitude plus 120 ft for each degree C above standard: only to be shown
 * beside the exact figure. Leaves out humidity and the rise of the factor with altitude.
 * @param pressureHpa  station pressure, 300 to 1,100 hPa
 * @param temperatureC -60 to 60 degC
 * @returns m
 * @throws RangeProblem naming pressureHpa or temperatureC
 * @source common practice; FAA-H-8083-25C gives it as 120 ft per degree C
 */
export function ruleOfThumbDensityAltitudeM(pressureHpa: number, temperatureC: number): number {
  requireRange('pressureHpa', pressureHpa, 300, 1100, 'hPa', inchesHint(pressureHpa));
  requireRange('temperatureC', temperatureC, -60, 60, 'degC');
  const altitudeM = pressureAltitudeM(pressureHpa);
  return altitudeM + RULE_OF_THUMB_FT_PER_C * M_PER_FT * (temperatureC - isaTemperatureC(altitudeM));
}

/** A shorter way beside the exact figure; the error is way minus exact, negative where it promises too little height. */
export type ShorterWay = { altitudeM: number; errorM: number };
export type DensityAltitudeComparison = {
  exactM: number;
  dry: ShorterWay;
  weatherService: ShorterWay;
  ruleOfThumb: ShorterWay;
};

/**
 * The exact density altitude beside the shorter ways that pilots know, each with its error.
 * @param pressureHpa  station pressure, 300 to 1,100 hPa
 * @param temperatureC -45 to 60 degC
 * @param dewPointC    -45 degC to the air temperature
 * @throws RangeProblem naming the argument
 */
export function compareDensityAltitudes(
  pressureHpa: number,
  temperatureC: number,
  dewPointC: number,
): DensityAltitudeComparison {
  const exactM = densityAltitudeM(pressureHpa, temperatureC, dewPointC);
  const beside = (altitudeM: number): ShorterWay => ({ altitudeM, errorM: altitudeM - exactM });
  return {
    exactM,
    dry: beside(dryDensityAltitudeM(pressureHpa, temperatureC)),
    weatherService: beside(weatherServiceDensityAltitudeM(pressureHpa, temperatureC)),
    ruleOfThumb: beside(ruleOfThumbDensityAltitudeM(pressureHpa, temperatureC)),
  };
}
