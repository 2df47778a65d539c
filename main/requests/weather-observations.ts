import { z } from 'zod';
import { civilDate, dayNumber } from '../../shared-calc/climate/civil-date.ts';
import { MOST_DAYS_OFF } from '../../shared-calc/climate/near-date.ts';
import { HOURS } from '../../shared-calc/climate/season.ts';
import { read } from './define.ts';
import { figureInput, figureKind, figureValues, worseOf } from './field-figure.ts';
import { fieldHours } from './field-record.ts';
import { day, id } from './ranges.ts';

const MOST_ROWS = 1500;
const valueOrNull = z.number().nullable();

export const weatherObservationRequests = {
  'weather.observations': read({
    about:
      'The observations behind one hour of the clock, in a month or in a window of days around a date of every year, the worst first.',
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      figure: figureInput.default({ kind: 'densityAltitude' }),
      hour: z.int().min(0).max(23),
      /** From 1 for January; or the days around a date. */
      of: z.union([
        z.strictObject({ month: z.int().min(1).max(12) }),
        z.strictObject({ date: day, halfWidthDays: z.int().min(0).max(MOST_DAYS_OFF) }),
      ]),
    }),
    output: z.strictObject({
      figure: figureKind,
      /** All there are; the list is cut after 1 500. */
      dayCount: z.int(),
      rows: z.array(
        z.strictObject({
          /** On the field's calendar. */
          date: z.string(),
          /** When the report was made that stands for the hour. */
          epochS: z.number(),
          /** The figure; null where it is beyond what is known. */
          value: valueOrNull,
          temperatureC: z.number(),
          dewPointC: z.number(),
          settingHpa: valueOrNull,
          windFromDeg: valueOrNull,
          windMs: valueOrNull,
          gustMs: valueOrNull,
        }),
      ),
    }),
    handle: ({ db }, { fieldId, figure, hour, of }) => {
      const hours = fieldHours(db, fieldId);
      const { values } = figureValues(db, hours, figure);
      const belongs = 'month' in of ? isInMonth(of.month - 1) : isAround(of.date, of.halfWidthDays);
      const places: number[] = [];
      hours.localHour.forEach((at, place) => {
        const localDay = Math.floor(at / HOURS);
        if (at - localDay * HOURS === hour && !Number.isNaN(values[place]) && belongs(localDay))
          places.push(place);
      });
      const sign = worseOf(figure) === 'up' ? -1 : 1;
      places.sort((a, b) => {
        const [first, second] = [values[a] ?? NaN, values[b] ?? NaN];
        return first === second ? a - b : sign * (first < second ? -1 : 1);
      });
      const orNull = (column: Float64Array, place: number) => {
        const value = column[place] ?? NaN;
        return Number.isFinite(value) ? value : null;
      };
      return {
        figure: figure.kind,
        dayCount: places.length,
        rows: places.slice(0, MOST_ROWS).map((place) => ({
          date: dateText(Math.floor((hours.localHour[place] ?? 0) / HOURS)),
          epochS: (hours.epochMinute[place] ?? 0) * 60,
          value: orNull(values, place),
          temperatureC: hours.temperatureC[place] ?? NaN,
          dewPointC: hours.dewPointC[place] ?? NaN,
          settingHpa: orNull(hours.settingHpa, place),
          windFromDeg: orNull(hours.windFromDeg, place),
          windMs: orNull(hours.windMs, place),
          gustMs: orNull(hours.gustMs, place),
        })),
      };
    },
  }),
};

function isInMonth(month: number): (localDay: number) => boolean {
  return (localDay) => civilDate(localDay).month === month;
}

function isAround(date: string, halfWidthDays: number): (localDay: number) => boolean {
  const [, month = 1, dayOfMonth = 1] = date.split('-').map(Number);
  return (localDay) => {
    const { year } = civilDate(localDay);
    return [year - 1, year, year + 1].some(
      (each) =>
        Math.abs(localDay - dayNumber({ year: each, month: month - 1, day: dayOfMonth })) <= halfWidthDays,
    );
  };
}

function dateText(localDay: number): string {
  return new Date(localDay * 86_400_000).toISOString().slice(0, 10);
}
