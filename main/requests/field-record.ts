import type Database from 'better-sqlite3';
import { fieldDensityAltitudeInto } from '../../shared-calc/climate/field-density-altitude-into.ts';
import {
  fieldSettingHpa,
  pressureFrom,
  type PressureFrom,
  type ReportedAir,
} from '../../shared-calc/climate/field-density-altitude.ts';
import { hourReports } from '../../shared-calc/climate/hour-reports.ts';
import type { RecordNature } from '../../shared-calc/wording/share-words.ts';
import type { ZoneOffsets } from '../../shared-calc/climate/zone-offsets.ts';
import { readField, type FieldRecord } from '../store/fields.ts';
import { loadObservations, usableAt } from '../store/load-observations.ts';
import {
  flag,
  missing,
  reducedPressureOffset,
  stationPressureOffset,
  type ObservationColumns,
} from '../store/observation-columns.ts';
import { importsOfStation } from '../store/weather-imports.ts';
import { weatherStation, type WeatherStation } from '../store/weather-stations.ts';
import { distanceM } from './distance.ts';
import { lastFew } from './last-few.ts';
import { Refusal } from './problem.ts';
import { doubtfulSetting, type Doubtful } from './weather-doubtful.ts';
import { zoneOffsets } from './zone-offsets.ts';

/** Beyond these a station does not stand for a field (common practice, no source). */
const furthestM = 80_000;
const mostElevationDifferenceM = 300;

/** What a field's station reported, one report an hour of the field's clock. All columns are in step with `localHour`. */
export interface FieldHours {
  /** Changes whenever anything does on which the columns rest. */
  readonly key: string;
  readonly field: FieldRecord;
  readonly station: WeatherStation;
  /** The field's clock over the span of the record. */
  readonly zone: ZoneOffsets;
  /** Hours since 1970-01-01 00:00 on the field's clock, rising: 24 x days + hour of the day. */
  readonly localHour: Int32Array;
  /** When the report that stands for the hour was made: minutes since 1970-01-01 00:00 UTC. */
  readonly epochMinute: Int32Array;
  /** For the field's elevation; NaN where the report's air is out of range. */
  readonly densityAltitudeM: Float64Array;
  readonly temperatureC: Float64Array;
  /** At most the temperature. */
  readonly dewPointC: Float64Array;
  /** As reported, or from the station's or the sea-level pressure. */
  readonly settingHpa: Float64Array;
  /** Degrees true; NaN where variable (the speed then stands) or missing (the speed is missing too). */
  readonly windFromDeg: Float64Array;
  /** Mean; NaN where not reported. */
  readonly windMs: Float64Array;
  /** NaN where none was reported. */
  readonly gustMs: Float64Array;
  /** Whether every import is of observations; only then may days be counted. */
  readonly isObserved: boolean;
  /** What the imports are. */
  readonly nature: RecordNature;
  readonly observationCount: number;
  /** Reports without temperature, dew point or pressure, or with a spoilt one. */
  readonly unusableCount: number;
  /** Reports left out as doubtful. */
  readonly doubtfulCount: number;
  readonly firstEpochS: number;
  readonly lastEpochS: number;
  /** Hours with a density altitude, by how their pressure was had. */
  readonly pressureCount: Record<PressureFrom, number>;
}

/** @throws Refusal where the field or its station is not there, or the station stands too far or too high */
export function fieldAndStation(
  db: Database.Database,
  fieldId: string,
): { field: FieldRecord; station: WeatherStation } {
  const kept = readField(db, fieldId);
  if (kept === null || kept.removed) throw new Refusal('not-found', `There is no field '${fieldId}'.`);
  const field = kept.record;
  const station = field.weatherStationId === null ? null : weatherStation(db, field.weatherStationId);
  if (station === null)
    throw new Refusal(
      'not-found',
      `${field.name} has no weather station yet. Import a file and tie its station.`,
    );
  const apartM = distanceM(field, station);
  if (apartM > furthestM)
    throw new Refusal(
      'input-refused',
      `${station.name} lies ${String(Math.round(apartM / 1000))} km from ${field.name}; at most ${String(furthestM / 1000)} km are taken. Choose a nearer station.`,
    );
  const higherM = field.elevationM - station.elevationM;
  if (Math.abs(higherM) > mostElevationDifferenceM)
    throw new Refusal(
      'input-refused',
      `${field.name} lies ${String(Math.round(Math.abs(higherM)))} m ${higherM > 0 ? 'above' : 'below'} ${station.name}; at most ${String(mostElevationDifferenceM)} m are taken. Choose a station nearer in height.`,
    );
  return { field, station };
}

/** The part that rests on the station alone: another elevation of the field must not load the record again. */
type StationHours = Omit<FieldHours, 'key' | 'field' | 'station' | 'densityAltitudeM' | 'pressureCount'> & {
  key: string;
  /** Place in `ways` of how each hour's pressure was had. */
  pressureWay: Uint8Array;
};
const ways: readonly PressureFrom[] = ['station', 'altimeterSetting', 'seaLevel'];
/** Fields that are compared side by side: going from one to the next and back must not read a record again. */
const MOST_RECORDS = 6;
/** Hours in all of them together, some 50 bytes each. */
const MOST_HOURS = 2_000_000;
const size = { sizeOf: ({ localHour }: { localHour: Int32Array }) => localHour.length, mostSize: MOST_HOURS };
const lastStations = lastFew<StationHours>(MOST_RECORDS, size);
/** Asking again with another limit computes nothing of them anew. */
const lastFields = lastFew<FieldHours>(MOST_RECORDS, size);

/** @throws Refusal as `fieldAndStation`, and where the station has no observations */
export function fieldHours(
  db: Database.Database,
  fieldId: string,
  doubtful: Doubtful = doubtfulSetting(db),
): FieldHours {
  const { field, station } = fieldAndStation(db, fieldId);
  const ofStation = stationHours(db, station, field.timeZone, doubtful);
  const key = JSON.stringify([ofStation.key, field.elevationM]);
  // The runways may have changed, which the columns do not rest on.
  return { ...lastFields(db, key, () => hoursAtField(key, field, station, ofStation)), field };
}

function hoursAtField(
  key: string,
  field: FieldRecord,
  station: WeatherStation,
  { pressureWay, ...columns }: StationHours,
): FieldHours {
  const densityAltitudeM = new Float64Array(columns.localHour.length);
  const { settingHpa, temperatureC, dewPointC } = columns;
  fieldDensityAltitudeInto(densityAltitudeM, settingHpa, temperatureC, dewPointC, field.elevationM);
  const pressureCount = { station: 0, altimeterSetting: 0, seaLevel: 0 };
  densityAltitudeM.forEach((altitudeM, i) => {
    const way = ways[pressureWay[i] ?? 0];
    if (way !== undefined && !Number.isNaN(altitudeM)) pressureCount[way]++;
  });
  return { ...columns, key, field, station, densityAltitudeM, pressureCount };
}

function stationHours(
  db: Database.Database,
  station: WeatherStation,
  timeZone: string,
  doubtful: Doubtful,
): StationHours {
  const imports = importsOfStation(db, station.id);
  const key = JSON.stringify([
    station,
    timeZone,
    imports,
    doubtful.countsSuspect,
    doubtful.countsImplausible,
  ]);
  return lastStations(db, key, () => readStation(db, key, station, timeZone, imports, doubtful));
}

function readStation(
  db: Database.Database,
  key: string,
  station: WeatherStation,
  timeZone: string,
  imports: ReturnType<typeof importsOfStation>,
  doubtful: Doubtful,
): StationHours {
  const columns = loadObservations(db, station.id);
  const count = columns.epochMinute.length;
  if (count === 0)
    throw new Refusal('not-found', `${station.name} has no observations. Import a file first.`);
  const { usable, unusableCount, doubtfulCount } = usableReports(columns, doubtful);
  const firstEpochS = (columns.epochMinute[0] ?? 0) * 60;
  const lastEpochS = (columns.epochMinute[count - 1] ?? 0) * 60;
  const zone = zoneOffsets(timeZone, yearOf(firstEpochS), yearOf(lastEpochS));
  const nature = natureOf(imports);
  const { localHour, report } = hourReports(columns.epochMinute, usable, zone);
  return {
    key,
    zone,
    localHour,
    epochMinute: report.map((place) => columns.epochMinute[place] ?? 0),
    ...airColumns(columns, report, station.elevationM),
    ...windColumns(columns, report),
    isObserved: nature === 'observed',
    nature,
    observationCount: count,
    unusableCount,
    doubtfulCount,
    firstEpochS,
    lastEpochS,
  };
}

function natureOf(imports: readonly { nature: RecordNature }[]): RecordNature {
  const [first = 'observed', ...others] = new Set(imports.map(({ nature }) => nature));
  return others.length === 0 ? first : 'mixed';
}

function usableReports(
  columns: ObservationColumns,
  { countsSuspect, countsImplausible }: Doubtful,
): { usable: Uint8Array; unusableCount: number; doubtfulCount: number } {
  const leftOut =
    (countsSuspect ? 0 : flag.suspectBySource) | (countsImplausible ? 0 : flag.spike | flag.stuck);
  const count = columns.epochMinute.length;
  const usable = new Uint8Array(count);
  let unusableCount = 0;
  let doubtfulCount = 0;
  for (let i = 0; i < count; i++) {
    if (!usableAt(columns, i)) unusableCount++;
    else if (((columns.flags[i] ?? 0) & leftOut) !== 0) doubtfulCount++;
    else usable[i] = 1;
  }
  return { usable, unusableCount, doubtfulCount };
}

function airColumns(
  columns: ObservationColumns,
  report: Int32Array,
  stationElevationM: number,
): Pick<StationHours, 'temperatureC' | 'dewPointC' | 'settingHpa' | 'pressureWay'> {
  const count = report.length;
  const temperatureC = new Float64Array(count);
  const dewPointC = new Float64Array(count);
  const settingHpa = new Float64Array(count);
  const pressureWay = new Uint8Array(count);
  const air: ReportedAir = {
    temperatureC: NaN,
    dewPointC: NaN,
    stationPressureHpa: NaN,
    altimeterSettingHpa: NaN,
    seaLevelPressureHpa: NaN,
  };
  for (let i = 0; i < count; i++) {
    readAir(columns, report[i] ?? 0, air);
    temperatureC[i] = air.temperatureC;
    dewPointC[i] = Math.min(air.dewPointC, air.temperatureC);
    settingHpa[i] = fieldSettingHpa(air, stationElevationM);
    pressureWay[i] = ways.indexOf(pressureFrom(air) ?? 'station');
  }
  return { temperatureC, dewPointC, settingHpa, pressureWay };
}

function readAir(columns: ObservationColumns, i: number, air: ReportedAir): void {
  air.temperatureC = plain(columns.temperatureC100[i], 0);
  air.dewPointC = plain(columns.dewPointC100[i], 0);
  air.stationPressureHpa = plain(columns.stationPressureHpa100[i], stationPressureOffset);
  air.altimeterSettingHpa = plain(columns.altimeterSettingHpa100[i], reducedPressureOffset);
  air.seaLevelPressureHpa = plain(columns.seaLevelPressureHpa100[i], reducedPressureOffset);
}

/** A direction below 0 says that it varied. */
function windColumns(
  columns: ObservationColumns,
  report: Int32Array,
): Pick<FieldHours, 'windFromDeg' | 'windMs' | 'gustMs'> {
  const windFromDeg = new Float64Array(report.length);
  const windMs = new Float64Array(report.length);
  const gustMs = new Float64Array(report.length);
  report.forEach((place, i) => {
    const direction = columns.windFromDeg[place] ?? missing;
    windFromDeg[i] = direction < 0 ? NaN : direction;
    windMs[i] = plain(columns.windSpeedMs100[place], 0);
    gustMs[i] = plain(columns.gustMs100[place], 0);
  });
  return { windFromDeg, windMs, gustMs };
}

function plain(stored: number | undefined, offset: number): number {
  return stored === undefined || stored === missing ? NaN : (stored + offset) / 100;
}

function yearOf(epochS: number): number {
  return new Date(epochS * 1000).getUTCFullYear();
}
