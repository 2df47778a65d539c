import { requireRange } from '../problem.ts';
import { LAPSE_K_PER_M, SEA_LEVEL_TEMPERATURE_K } from '../atmosphere/standard-atmosphere.ts';
import { M_PER_FT, ZERO_CELSIUS_K } from '../units/constants.ts';

// Three answers to one question, each named for what it is. All are heights above the station that gives the altimeter
// setting, and all say how much lower than indicated an aeroplane is in air colder than standard (positive), so what has
// to be added to a height to be flown.

const TABLE_HEIGHTS_FT = [
  200, 300, 400, 500, 600, 700, 800, 900, 1000, 1500, 2000, 3000, 4000, 5000,
] as const;
/** ICAO cold temperature error table as the AIM prints it (TBL 7-3-1): corrections in feet, rounded up to 10. */
const TABLE_FT: readonly (readonly number[])[] = [
  [10, 10, 10, 10, 20, 20, 20, 20, 20, 30, 40, 60, 80, 90], // 10 degC
  [20, 20, 30, 30, 40, 40, 50, 50, 60, 90, 120, 170, 230, 280], // 0 degC
  [20, 30, 40, 50, 60, 70, 80, 90, 100, 150, 200, 290, 390, 490], // -10 degC
  [30, 50, 60, 70, 90, 100, 120, 130, 140, 210, 280, 420, 570, 710], // -20 degC
  [40, 60, 80, 100, 120, 140, 150, 170, 190, 280, 380, 570, 760, 950], // -30 degC
  [50, 80, 100, 120, 150, 170, 190, 220, 240, 360, 480, 720, 970, 1210], // -40 degC
  [60, 90, 120, 150, 180, 210, 240, 270, 300, 450, 590, 890, 1190, 1500], // -50 degC
];
export const TABLE_LOWEST_HEIGHT_M = 200 * M_PER_FT;
export const TABLE_HIGHEST_HEIGHT_M = 5000 * M_PER_FT;

/**
 * Cold-temperature error by the published table, linear between its rows and columns.
 * @param temperatureC    reported at the airport, -50 to 10 degC
 * @param heightAboveStationM above the airport that reports, 200 to 5,000 ft (60.96 to 1,524 m)
 * @returns m to add
 * @throws RangeProblem naming temperatureC or heightAboveStationM: the table is not extended
 * @example -20 degC, 3,000 ft: 420 ft
 * @source ICAO cold temperature error table, Aeronautical Information Manual TBL 7-3-1
 */
export function coldErrorByTableM(temperatureC: number, heightAboveStationM: number): number {
  requireRange('temperatureC', temperatureC, -50, 10, 'degC');
  requireRange(
    'heightAboveStationM',
    heightAboveStationM,
    TABLE_LOWEST_HEIGHT_M,
    TABLE_HIGHEST_HEIGHT_M,
    'm',
  );
  const rowPlace = (10 - temperatureC) / 10;
  const row = Math.min(Math.floor(rowPlace), TABLE_FT.length - 2);
  const heightFt = heightAboveStationM / M_PER_FT;
  const warmer = atHeight(TABLE_FT[row] ?? [], heightFt);
  const colder = atHeight(TABLE_FT[row + 1] ?? [], heightFt);
  return (warmer + (colder - warmer) * (rowPlace - row)) * M_PER_FT;
}

function atHeight(corrections: readonly number[], heightFt: number): number {
  const above = TABLE_HEIGHTS_FT.findIndex((height) => height >= heightFt);
  const right = above === -1 ? TABLE_HEIGHTS_FT.length - 1 : Math.max(above, 1);
  const [low = 0, high = 0] = [TABLE_HEIGHTS_FT[right - 1], TABLE_HEIGHTS_FT[right]];
  const [atLow = 0, atHigh = 0] = [corrections[right - 1], corrections[right]];
  return atLow + ((atHigh - atLow) * (heightFt - low)) / (high - low);
}

/**
 * Cold-temperature error by the formula from which the table was made.
 * @param temperatureC        at the airport, -60 to 50 degC; negative results in air warmer than standard
 * @param heightAboveStationM 0 to 3,000 m
 * @param stationElevationM   -500 to 6,000 m
 * @returns m to add
 * @throws RangeProblem naming the argument
 * @source ICAO Doc 8168 (PANS-OPS) volume I, temperature correction: H (15 - t0) / (273 + t0 - 0.5 L0 (H + Hss)), where
 *   t0 is the airport's temperature taken down to sea level by 6.5 K/km
 */
export function coldErrorByFormulaM(
  temperatureC: number,
  heightAboveStationM: number,
  stationElevationM: number,
): number {
  requireColumn(temperatureC, heightAboveStationM, stationElevationM);
  const seaLevelC = temperatureC + LAPSE_K_PER_M * stationElevationM;
  return (
    (heightAboveStationM * (15 - seaLevelC)) /
    (273 + seaLevelC - 0.5 * LAPSE_K_PER_M * (heightAboveStationM + stationElevationM))
  );
}

/**
 * Temperature error by physics: the hydrostatic thickness of the air between station and aeroplane, in a column that is
 * colder (or warmer) than standard by the same amount at every pressure, against the standard thickness that the altimeter shows.
 * Exact for that column; real columns have inversions, and then neither this nor the table is right.
 * @param temperatureC        at the station, -60 to 50 degC
 * @param heightAboveStationM indicated, 0 to 3,000 m
 * @param stationElevationM   -500 to 6,000 m
 * @returns m: indicated height less true height; negative in air warmer than standard
 * @throws RangeProblem naming the argument
 * @source hydrostatic equation; the same as the accurate correction of ICAO Doc 8168 volume I. Dry air, setting 1013.25 hPa
 */
export function temperatureErrorM(
  temperatureC: number,
  heightAboveStationM: number,
  stationElevationM: number,
): number {
  requireColumn(temperatureC, heightAboveStationM, stationElevationM);
  const standardAtStationK = SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * stationElevationM;
  const differenceK = temperatureC + ZERO_CELSIUS_K - standardAtStationK;
  // dz = -R T / g d(ln p). With T = standard + d at every pressure the true thickness is the standard one plus
  // (R d / g) ln(p1 / p2), and in standard air ln(p1 / p2) = (g / (R L)) ln(T1 / T2).
  const standardAtTopK = standardAtStationK - LAPSE_K_PER_M * heightAboveStationM;
  const thickening = (differenceK / LAPSE_K_PER_M) * Math.log(standardAtStationK / standardAtTopK);
  return thickening === 0 ? 0 : -thickening;
}

function requireColumn(temperatureC: number, heightAboveStationM: number, stationElevationM: number): void {
  requireRange('temperatureC', temperatureC, -60, 50, 'degC');
  requireRange('heightAboveStationM', heightAboveStationM, 0, 3000, 'm');
  requireRange('stationElevationM', stationElevationM, -500, 6000, 'm');
}
