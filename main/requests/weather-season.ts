import type Database from 'better-sqlite3';
import { z } from 'zod';
import { seaLevelBandM } from '../../shared-calc/climate/field-density-altitude.ts';
import { CELLS, seasonCells, seasonQuantiles, type SeasonCells } from '../../shared-calc/climate/season.ts';
import { sunLines } from '../../shared-calc/climate/sun-lines.ts';
import { read } from './define.ts';
import { distanceM } from './distance.ts';
import { fieldHours, type FieldHours } from './field-record.ts';
import { id } from './ranges.ts';
import { zoneOffsets } from './zone-offsets.ts';

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
        /** Reports left out as spikes or stuck values. */
        doubtfulCount: z.int(),
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
      const hours = fieldHours(db, input.fieldId);
      const { field, station } = hours;
      const cells = cellsOf(db, hours);
      const quantiles = input.shares.map((share) => ({ share, ...seasonQuantiles(cells, share) }));
      const { years } = cells;
      const sunYear = years.at(-1) ?? new Date(hours.lastEpochS * 1000).getUTCFullYear();
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
          isObserved: hours.isObserved,
          observationCount: hours.observationCount,
          hourCount: cells.values.length,
          years,
          firstEpochS: hours.firstEpochS,
          lastEpochS: hours.lastEpochS,
          unusableCount: hours.unusableCount,
          doubtfulCount: hours.doubtfulCount,
        },
        pressureFrom: {
          stationCount: hours.pressureCount.station,
          altimeterSettingCount: hours.pressureCount.altimeterSetting,
          seaLevelCount: hours.pressureCount.seaLevel,
          seaLevelBandM: seaLevelBandM(station.elevationM),
        },
        quantiles: quantiles.map(({ share, daysNeeded, quantile }) => ({
          share,
          daysNeeded,
          densityAltitudeM: quantile,
        })),
        dayCount: quantiles[0]?.dayCount ?? [],
        yearCount: [...cells.yearCount],
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

/** The last picture's cells of each connection: another share must not sort the record again. */
const lastCells = new WeakMap<Database.Database, { key: string; cells: SeasonCells }>();

function cellsOf(db: Database.Database, hours: FieldHours): SeasonCells {
  const before = lastCells.get(db);
  if (before?.key === hours.key) return before.cells;
  const cells = seasonCells(hours.localHour, hours.densityAltitudeM);
  lastCells.set(db, { key: hours.key, cells });
  return cells;
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}

/** Hours to a tenth of a minute or so: a drawing has no use for more. */
function roundOrNull(hour: number | null): number | null {
  return hour === null ? null : round(hour, 3);
}
