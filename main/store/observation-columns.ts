/** What an import's values are: only 'observed' ever answers how many days in ten. */
export type Nature = 'observed' | 'typical year' | 'averages' | 'model';

/** Not reported. The same in every 16-bit column of a block. */
export const missing = -32768;

/** What a flag bit of an observation says; the migrations have the same list for readers of the file. */
export const flag = {
  special: 1,
  temperatureOutOfRange: 2,
  dewPointAboveTemperature: 4,
  pressureOutOfRange: 8,
  windOutOfRange: 16,
  /** Temperature, dew point or a pressure; kept. */
  suspectBySource: 32,
  /** Wind or gust; kept. */
  suspectWindBySource: 64,
  /** Temperature, dew point or a pressure stands alone against the reports around it; kept. See plausibility.ts. */
  spike: 128,
  /** Temperature and dew point, or the pressure, did not move for a day or longer; kept. */
  stuck: 256,
  /** Temperature in whole degrees only: good to half a degree, some 60 ft of density altitude. */
  wholeDegrees: 512,
} as const;

/** Pressures are kept in hundredths of hPa less these, so that 16 bits hold them: 672 to 1 327 hPa ... */
export const reducedPressureOffset = 100_000;
/** ... and 472 to 1 127 hPa for the pressure at the station itself. */
export const stationPressureOffset = 80_000;

/** The columns beside the minute, each with its blob in `observation_block`. */
export const columnBlobs = {
  temperatureC100: 'temperature_c100',
  dewPointC100: 'dew_point_c100',
  altimeterSettingHpa100: 'altimeter_setting_hpa100_less_100000',
  seaLevelPressureHpa100: 'sea_level_pressure_hpa100_less_100000',
  stationPressureHpa100: 'station_pressure_hpa100_less_80000',
  windFromDeg: 'wind_from_deg',
  windSpeedMs100: 'wind_speed_ms100',
  gustMs100: 'gust_ms100',
  flags: 'flags',
} as const;

export type ColumnName = keyof typeof columnBlobs;
export const columnNames = Object.keys(columnBlobs) as ColumnName[];

/** Observations as columns of integers, in order of time. Pressures carry their offsets; `missing` where not reported. */
export type ObservationColumns = Record<ColumnName, Int16Array> & {
  /** Minutes since 1970-01-01 00:00 UTC. */
  epochMinute: Int32Array;
};

/** The same for one month of one import, as a reader hands it over and a block keeps it. */
export interface MonthBlock {
  /** UTC epoch seconds of the month's first minute. */
  monthStartEpochS: number;
  part: number;
  observationCount: number;
  minuteOfMonth: Uint16Array;
  /** null where nothing in the month was reported. */
  columns: Record<ColumnName, Int16Array | null>;
}
