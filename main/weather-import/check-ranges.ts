import {
  flag,
  missing,
  reducedPressureOffset,
  stationPressureOffset,
  type ColumnName,
} from '../store/observation-columns.ts';
import { numbersFrom } from './digits.ts';
import type { ProblemList } from './problems.ts';

// What air near the ground can be; the first two are the ranges that the air's density is computed for. Wider than
// every record (-89.2 and 56.7 degC, 870 and 1084.8 hPa, 113 m/s; WMO archive of extremes, from memory).
const temperature = { min: -9000, max: 6000 };
const pressure = { min: 85_000, max: 110_000 };
const stationPressure = { min: 48_000, max: 110_000 };
const windSpeed = { min: 0, max: 15_000 };
const direction = { min: 0, max: 360 };
/** A dew point above the temperature by no more than this is rounding. */
const dewPointRoundingC100 = 5;

interface Limits {
  min: number;
  max: number;
}

/** The value where it can be, else `missing`. What was not reported lies outside every range. */
function within(value: number, { min, max }: Limits): number {
  return value >= min && value <= max ? value : missing;
}

/** The flag of a value that was left out, none where nothing was reported. */
function spoilt(value: number, outOfRange: number): number {
  return value < numbersFrom || value === missing ? 0 : outOfRange;
}

/** A kept value less its column's offset. */
function less(kept: number, offset: number): number {
  return kept === missing ? missing : kept - offset;
}

/** What a row said, in hundredths of degC, hPa and m/s, degrees, or `absent`. */
export interface RawValues {
  temperatureC100: number;
  dewPointC100: number;
  altimeterSettingHpa100: number;
  seaLevelPressureHpa100: number;
  stationPressureHpa100: number;
  windFromDeg: number;
  windSpeedMs100: number;
  gustMs100: number;
}

/** A row in which nothing was reported, for a reader to fill again and again. */
export function emptyRow(): RawValues {
  return {
    temperatureC100: absent,
    dewPointC100: absent,
    altimeterSettingHpa100: absent,
    seaLevelPressureHpa100: absent,
    stationPressureHpa100: absent,
    windFromDeg: absent,
    windSpeedMs100: absent,
    gustMs100: absent,
  };
}

/** Not reported, among raw values: outside everything that a reader can produce. */
export const absent = missing * 65_536;

/**
 * Check a row's values one by one and fill the report. A value out of range is left out, flagged and counted; the
 * row's others stay. A speed without a direction counts as variable, which is the safe side for runways;
 * with no speed it is calm, direction 0, whatever stands there.
 * @param ownFlags what the reader itself has to say: flag.special, flag.suspectBySource ...
 * @returns false where nothing is left that could be kept
 */
export function fillReport(
  values: Record<ColumnName, number>,
  raw: RawValues,
  ownFlags: number,
  problems: ProblemList,
  line: number,
  example: () => string,
): boolean {
  let flags = ownFlags;
  // Written out, column by column: named properties are found at once, and this is done a million times.
  values.temperatureC100 = within(raw.temperatureC100, temperature);
  if (values.temperatureC100 === missing) flags |= spoilt(raw.temperatureC100, flag.temperatureOutOfRange);
  values.dewPointC100 = within(raw.dewPointC100, temperature);
  if (values.dewPointC100 === missing) flags |= spoilt(raw.dewPointC100, flag.temperatureOutOfRange);
  const setting = within(raw.altimeterSettingHpa100, pressure);
  if (setting === missing) flags |= spoilt(raw.altimeterSettingHpa100, flag.pressureOutOfRange);
  values.altimeterSettingHpa100 = less(setting, reducedPressureOffset);
  const seaLevel = within(raw.seaLevelPressureHpa100, pressure);
  if (seaLevel === missing) flags |= spoilt(raw.seaLevelPressureHpa100, flag.pressureOutOfRange);
  values.seaLevelPressureHpa100 = less(seaLevel, reducedPressureOffset);
  const station = within(raw.stationPressureHpa100, stationPressure);
  if (station === missing) flags |= spoilt(raw.stationPressureHpa100, flag.pressureOutOfRange);
  values.stationPressureHpa100 = less(station, stationPressureOffset);
  values.windSpeedMs100 = within(raw.windSpeedMs100, windSpeed);
  if (values.windSpeedMs100 === missing) flags |= spoilt(raw.windSpeedMs100, flag.windOutOfRange);
  values.gustMs100 = within(raw.gustMs100, windSpeed);
  if (values.gustMs100 === missing) flags |= spoilt(raw.gustMs100, flag.windOutOfRange);
  values.windFromDeg = within(raw.windFromDeg, direction);
  if (values.windFromDeg === missing) flags |= spoilt(raw.windFromDeg, flag.windOutOfRange);
  if (values.windSpeedMs100 === 0) values.windFromDeg = 0;
  else if (values.windFromDeg === missing && values.windSpeedMs100 > 0) values.windFromDeg = -1;
  if (values.dewPointC100 !== missing && values.temperatureC100 !== missing) {
    if (values.dewPointC100 > values.temperatureC100 + dewPointRoundingC100) {
      flags |= flag.dewPointAboveTemperature;
      problems.add('dew point above temperature: kept, marked, left out of figures', line, example);
    }
  }
  if ((flags & flag.temperatureOutOfRange) !== 0)
    problems.add('temperature or dew point outside -90 to 60 degC: value left out', line, example);
  if ((flags & flag.pressureOutOfRange) !== 0)
    problems.add('pressure outside 850 to 1100 hPa: value left out', line, example);
  if ((flags & flag.windOutOfRange) !== 0)
    problems.add('wind outside 0 to 360 degrees or above 150 m/s: value left out', line, example);
  values.flags = flags;
  return (
    values.temperatureC100 !== missing ||
    values.altimeterSettingHpa100 !== missing ||
    values.seaLevelPressureHpa100 !== missing ||
    values.stationPressureHpa100 !== missing ||
    values.windSpeedMs100 !== missing
  );
}
