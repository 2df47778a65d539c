import type Database from 'better-sqlite3';
import { z } from 'zod';
import {
  fieldDensityAltitudeM,
  pressureFrom,
  seaLevelBandM,
  type ReportedAir,
} from '../../shared-calc/climate/field-density-altitude.ts';
import { hourReports } from '../../shared-calc/climate/hour-reports.ts';
import { CELLS, seasonCells, seasonQuantiles, type SeasonCells } from '../../shared-calc/climate/season.ts';
import { sunLines } from '../../shared-calc/climate/sun-lines.ts';
import { readField, type FieldRecord } from '../store/fields.ts';
import { loadObservations, usableAt } from '../store/load-observations.ts';
import {
  missing,
  reducedPressureOffset,
  stationPressureOffset,
  type ObservationColumns,
} from '../store/observation-columns.ts';
import { importsOfStation } from '../store/weather-imports.ts';
import { weatherStation, type WeatherStation } from '../store/weather-stations.ts';
import { read } from './define.ts';
import { distanceM } from './distance.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';
import { zoneOffsets } from './zone-offsets.ts';

/** Beyond these a station does not stand for a field (common practice, no source). */
const furthestM = 80_000;
const mostElevationDifferenceM = 300;
/** From here on the difference is said. */
const worthSayingM = 30;

const hours = z.array(z.number().nullable()).length(CELLS);
const clockH = z.number().nullable();

export const weatherSeasonRequests = {
  'weather.season': read({
    about:
      "Density altitude at a field through the day and the year, from its weather station's observations: quantiles by month and local hour (12 x 24, month after month), days behind each, and the edges of daylight.",
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      /** Share of days that lie below: 0.5 for half of them, 0.9 for nine in ten. */
      shares: z.array(z.number().min(0.5).max(0.99)).min(1).max(5).default([0.5, 0.9]),
    }),
    output: z.strictObject({
      field: z.strictObject({
        name: z.string(),
        timeZone: z.string(),
        elevationM: z.number(),
      }),
      station: z.strictObject({
        name: z.string(),
        identifier: z.string().nullable(),
        elevationM: z.number(),
        distanceM: z.number(),
        /** Field less station; worth saying where `isFar`. */
        elevationDifferenceM: z.number(),
        isElevationApart: z.boolean(),
      }),
      record: z.strictObject({
        /** Whether every import is of observations; only then may days be counted. */
        isObserved: z.boolean(),
        observationCount: z.int(),
        /** Local hours with a usable report. */
        hourCount: z.int(),
        years: z.array(z.int()),
        firstEpochS: z.number(),
        lastEpochS: z.number(),
        /** Reports that cannot serve, by the first reason. */
        unusableCount: z.int(),
      }),
      pressureFrom: z.strictObject({
        stationCount: z.int(),
        altimeterSettingCount: z.int(),
        seaLevelCount: z.int(),
        /** How far off density altitude may be, either way, where only sea-level pressure was reported. */
        seaLevelBandM: z.number(),
      }),
      quantiles: z.array(z.strictObject({ share: z.number(), daysNeeded: z.int(), densityAltitudeM: hours })),
      dayCount: z.array(z.int()).length(CELLS),
      /** Different years behind each cell. */
      yearCount: z.array(z.int()).length(CELLS),
      sun: z.array(
        z.strictObject({
          monthOfYear: z.number(),
          dawnH: clockH,
          sunriseH: clockH,
          sunsetH: clockH,
          duskH: clockH,
        }),
      ),
    }),
    handle: ({ db }, input) => {
      const { field, station } = fieldAndStation(db, input.fieldId);
      const season = seasonOf(db, field, station);
      const quantiles = input.shares.map((share) => ({ share, ...seasonQuantiles(season.cells, share) }));
      const { years } = season.cells;
      const sunYear = years.at(-1) ?? new Date(season.lastEpochS * 1000).getUTCFullYear();
      const zone = zoneOffsets(field.timeZone, sunYear, sunYear);
      return {
        field: { name: field.name, timeZone: field.timeZone, elevationM: field.elevationM },
        station: {
          name: station.name,
          identifier: station.identifier,
          elevationM: station.elevationM,
          distanceM: distanceM(field, station),
          elevationDifferenceM: field.elevationM - station.elevationM,
          isElevationApart: Math.abs(field.elevationM - station.elevationM) > worthSayingM,
        },
        record: {
          isObserved: season.isObserved,
          observationCount: season.observationCount,
          hourCount: season.cells.values.length,
          years,
          firstEpochS: season.firstEpochS,
          lastEpochS: season.lastEpochS,
          unusableCount: season.unusableCount,
        },
        pressureFrom: { ...season.pressureFrom, seaLevelBandM: seaLevelBandM(station.elevationM) },
        quantiles: quantiles.map(({ share, daysNeeded, quantile }) => ({
          share,
          daysNeeded,
          densityAltitudeM: quantile,
        })),
        dayCount: quantiles[0]?.dayCount ?? [],
        yearCount: [...season.cells.yearCount],
        sun: sunLines(sunYear, field.latitudeDeg, field.longitudeDeg, zone).map((line) => ({
          monthOfYear: round(line.monthOfYear, 4),
          dawnH: roundOrNull(line.dawnH),
          sunriseH: roundOrNull(line.sunriseH),
          sunsetH: roundOrNull(line.sunsetH),
          duskH: roundOrNull(line.duskH),
        })),
      };
    },
  }),
};

function fieldAndStation(
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

interface Season {
  key: string;
  cells: SeasonCells;
  isObserved: boolean;
  observationCount: number;
  unusableCount: number;
  firstEpochS: number;
  lastEpochS: number;
  pressureFrom: { stationCount: number; altimeterSettingCount: number; seaLevelCount: number };
}

/** The last season of each connection: asking again with another share must not load the record again. */
const lastSeason = new WeakMap<Database.Database, Season>();

function seasonOf(db: Database.Database, field: FieldRecord, station: WeatherStation): Season {
  const imports = importsOfStation(db, station.id);
  const key = JSON.stringify([station, field.elevationM, field.timeZone, imports]);
  const before = lastSeason.get(db);
  if (before?.key === key) return before;

  const columns = loadObservations(db, station.id);
  const count = columns.epochMinute.length;
  if (count === 0)
    throw new Refusal('not-found', `${station.name} has no observations. Import a file first.`);
  const usable = new Uint8Array(count);
  let unusableCount = 0;
  for (let i = 0; i < count; i++) {
    usable[i] = usableAt(columns, i) ? 1 : 0;
    if (usable[i] === 0) unusableCount++;
  }
  const firstEpochS = (columns.epochMinute[0] ?? 0) * 60;
  const lastEpochS = (columns.epochMinute[count - 1] ?? 0) * 60;
  const zone = zoneOffsets(field.timeZone, yearOf(firstEpochS), yearOf(lastEpochS));
  const { localHour, report } = hourReports(columns.epochMinute, usable, zone);

  const value = new Float64Array(report.length);
  const counts = { station: 0, altimeterSetting: 0, seaLevel: 0 };
  const air: ReportedAir = {
    temperatureC: NaN,
    dewPointC: NaN,
    stationPressureHpa: NaN,
    altimeterSettingHpa: NaN,
    seaLevelPressureHpa: NaN,
  };
  for (let i = 0; i < report.length; i++) {
    readAir(columns, report[i] ?? 0, air);
    const altitudeM = fieldDensityAltitudeM(air, station.elevationM, field.elevationM);
    value[i] = altitudeM;
    const from = pressureFrom(air);
    if (from !== null && !Number.isNaN(altitudeM)) counts[from]++;
  }
  const season: Season = {
    key,
    cells: seasonCells(localHour, value),
    isObserved: imports.every(({ nature }) => nature === 'observed'),
    observationCount: count,
    unusableCount,
    firstEpochS,
    lastEpochS,
    pressureFrom: {
      stationCount: counts.station,
      altimeterSettingCount: counts.altimeterSetting,
      seaLevelCount: counts.seaLevel,
    },
  };
  lastSeason.set(db, season);
  return season;
}

function readAir(columns: ObservationColumns, i: number, air: ReportedAir): void {
  air.temperatureC = plain(columns.temperatureC100[i], 0);
  air.dewPointC = plain(columns.dewPointC100[i], 0);
  air.stationPressureHpa = plain(columns.stationPressureHpa100[i], stationPressureOffset);
  air.altimeterSettingHpa = plain(columns.altimeterSettingHpa100[i], reducedPressureOffset);
  air.seaLevelPressureHpa = plain(columns.seaLevelPressureHpa100[i], reducedPressureOffset);
}

function plain(stored: number | undefined, offset: number): number {
  return stored === undefined || stored === missing ? NaN : (stored + offset) / 100;
}

function yearOf(epochS: number): number {
  return new Date(epochS * 1000).getUTCFullYear();
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}

/** Hours to a tenth of a minute or so: a drawing has no use for more. */
function roundOrNull(hour: number | null): number | null {
  return hour === null ? null : round(hour, 3);
}
