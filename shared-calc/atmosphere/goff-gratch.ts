import { requireRange } from '../problem.ts';

// The scale of 1946, on which ice melts at 273.16 K and water boils at 373.16 K; with today's zero it would be 0.07 % low.
const ICE_POINT_K = 273.16;
const STEAM_POINT_K = 373.16;
const STEAM_POINT_HPA = 1013.246;

/**
 * Saturation vapour pressure over water as the Smithsonian tables have it: only to be shown beside
 * saturationVapourPressureWaterHpa, whose short formula is up to 0.23 % lower between 0 and 45 degC. The difference is worth
 * at most 2 ft of density altitude there.
 * @param temperatureC -50 to 100 degC
 * @returns hPa
 * @throws RangeProblem naming temperatureC
 * @example 25 degC: 31.67 hPa
 * @source Goff and Gratch (1946), as in the Smithsonian Meteorological Tables, 6th edition, table 94
 */
export function goffGratchVapourPressureHpa(temperatureC: number): number {
  requireRange('temperatureC', temperatureC, -50, 100, 'degC');
  const ratio = STEAM_POINT_K / (temperatureC + ICE_POINT_K);
  const log10 =
    -7.90298 * (ratio - 1) +
    5.02808 * Math.log10(ratio) -
    1.3816e-7 * (10 ** (11.344 * (1 - 1 / ratio)) - 1) +
    8.1328e-3 * (10 ** (-3.49149 * (ratio - 1)) - 1) +
    Math.log10(STEAM_POINT_HPA);
  return 10 ** log10;
}
