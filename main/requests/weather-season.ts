import type Database from 'better-sqlite3';
import { z } from 'zod';
import { seaLevelBandM } from '../../shared-calc/climate/field-density-altitude.ts';
import {
  CELLS,
  seasonBeyond,
  seasonCells,
  seasonOrder,
  seasonQuantiles,
  seasonWorst,
  type SeasonCells,
  type SeasonOrder,
  type SeasonQuantiles,
} from '../../shared-calc/climate/season.ts';
import type { SafeSide } from '../../shared-calc/climate/safe-side.ts';
import { sunLines, type Daylight } from '../../shared-calc/climate/sun-lines.ts';
import { read } from './define.ts';
import { distanceM } from './distance.ts';
import { figureKind, figureQuestion, type FigureAsked, figureValues, worseOf } from './field-figure.ts';
import { fieldHours, type FieldHours } from './field-record.ts';
import { lastFew } from './last-few.ts';
import { id } from './ranges.ts';
import { recordNature } from './weather-schema.ts';
import { zoneOffsets } from './zone-offsets.ts';

/** From here on a difference of elevation between station and field is said. */
const worthSayingM = 30;

const values = z.array(z.number().nullable()).length(CELLS);
const counts = z.array(z.int()).length(CELLS);
const clockH = z.number().nullable();

export const weatherSeasonRequests = {
  'weather.season': read({
    about:
      "A figure at a field through the day and the year, from its weather station's observations: quantiles by month and local hour (12 x 24, month after month), days beyond a limit, days behind each, and the edges of daylight.",
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      ...figureQuestion,
    }),
    output: z.strictObject({
      figure: figureKind,
      worse: z.enum(['up', 'down']),
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
        /** Field less station; worth saying where `isElevationApart`. */
        elevationDifferenceM: z.number(),
        isElevationApart: z.boolean(),
      }),
      record: z.strictObject({
        /** Whether every import is of observations; only then may days be counted. */
        isObserved: z.boolean(),
        nature: recordNature,
        observationCount: z.int(),
        /** Local hours with this figure. */
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
      /** null with too few days, or with enough where the figure is beyond what is known. */
      quantiles: z.array(z.strictObject({ share: z.number(), daysNeeded: z.int(), value: values })),
      /** Highest (or lowest) of all days; null below 20. */
      worst: values,
      /** Days beyond the limit; null where none was asked. */
      beyondCount: counts.nullable(),
      dayCount: counts,
      /** Different years behind each cell. */
      yearCount: counts,
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
      const worse = worseOf(input.figure);
      const picture = pictureOf(db, hours, input.figure, worse);
      const { cells } = picture;
      const { years } = cells;
      const sunYear = years.at(-1) ?? new Date(hours.lastEpochS * 1000).getUTCFullYear();
      return {
        figure: input.figure.kind,
        worse,
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
          nature: hours.nature,
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
        quantiles: quantilesAsked(picture, input.shares, worse),
        worst: picture.worst,
        beyondCount: input.limit === null ? null : seasonBeyond(cells, input.limit, worse),
        dayCount: Array.from(
          { length: CELLS },
          (_, cell) => (cells.starts[cell + 1] ?? 0) - (cells.starts[cell] ?? 0),
        ),
        yearCount: [...cells.yearCount],
        sun: sunOf(db, hours, sunYear),
      };
    },
  }),
};

/** One figure sorted into cells, with the quantiles that were asked of it: a new limit must not compute them again. */
interface Picture {
  cells: SeasonCells;
  worst: (number | null)[];
  quantiles: Map<number, SeasonQuantiles>;
}

/** An array of hours is made anew with each record, so it tells the record. */
const orders = new WeakMap<Int32Array, SeasonOrder>();

function orderOf({ localHour }: FieldHours): SeasonOrder {
  const before = orders.get(localHour);
  if (before !== undefined) return before;
  const order = seasonOrder(localHour);
  orders.set(localHour, order);
  return order;
}

const lastPictures = lastFew<Picture>(1);

function pictureOf(db: Database.Database, hours: FieldHours, figure: FigureAsked, worse: SafeSide): Picture {
  const { key, values: figures } = figureValues(db, hours, figure);
  return lastPictures(db, key, () => {
    const cells = seasonCells(orderOf(hours), figures);
    return { cells, worst: seasonWorst(cells, worse), quantiles: new Map<number, SeasonQuantiles>() };
  });
}

function quantilesAsked(
  { cells, quantiles }: Picture,
  shares: readonly number[],
  worse: SafeSide,
): { share: number; daysNeeded: number; value: (number | null)[] }[] {
  const unknown = shares.filter((share) => !quantiles.has(share));
  if (unknown.length > 0)
    seasonQuantiles(cells, unknown, worse).forEach((found, at) => quantiles.set(unknown[at] ?? NaN, found));
  return shares.flatMap((share) => {
    const found = quantiles.get(share);
    return found === undefined ? [] : [{ share, daysNeeded: found.daysNeeded, value: found.quantile }];
  });
}

type SunLines = ({ monthOfYear: number } & Daylight)[];
/** A year of sunrises takes longer than all quantiles: kept for each connection's last field. */
const lastSuns = lastFew<SunLines>(1);

function sunOf(db: Database.Database, { field }: FieldHours, sunYear: number): SunLines {
  const key = JSON.stringify([field.latitudeDeg, field.longitudeDeg, field.timeZone, sunYear]);
  return lastSuns(db, key, () => {
    const zone = zoneOffsets(field.timeZone, sunYear, sunYear);
    return sunLines(sunYear, field.latitudeDeg, field.longitudeDeg, zone).map((line) => ({
      monthOfYear: round(line.monthOfYear, 4),
      dawnH: roundOrNull(line.dawnH),
      sunriseH: roundOrNull(line.sunriseH),
      sunsetH: roundOrNull(line.sunsetH),
      duskH: roundOrNull(line.duskH),
    }));
  });
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}

/** Hours to a tenth of a minute or so: a drawing has no use for more. */
function roundOrNull(hour: number | null): number | null {
  return hour === null ? null : round(hour, 3);
}
