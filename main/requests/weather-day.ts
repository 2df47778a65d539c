import { z } from 'zod';
import { dayNumber } from '../../shared-calc/climate/civil-date.ts';
import {
  dayCounts,
  dayQuantiles,
  daysBeyond,
  dayWindow,
  dayWorst,
  type DayWindow,
} from '../../shared-calc/climate/day-window.ts';
import { daysNeeded } from '../../shared-calc/climate/days-needed.ts';
import { HOURS } from '../../shared-calc/climate/season.ts';
import { daylightOf } from '../../shared-calc/climate/sun-lines.ts';
import { firstAtLeast } from '../../shared-calc/numeric/first-at-least.ts';
import { read } from './define.ts';
import { figureKind, figureQuestion, figureValues, worseOf } from './field-figure.ts';
import { fieldHours, type FieldHours } from './field-record.ts';
import { id } from './ranges.ts';
import { recordNature } from './weather-schema.ts';
import { zoneOffsets } from './zone-offsets.ts';

/** So many single days are drawn at most, spread evenly over the record. */
const SINGLE_DAYS = 120;
/** The sun's own calculation ends here. */
const FIRST_SUN_YEAR = 1902;
const LAST_SUN_YEAR = 2099;

const byHour = z.array(z.number().nullable()).length(HOURS);
const counts = z.array(z.int()).length(HOURS);
const clockH = z.number().nullable();

export const weatherDayRequests = {
  'weather.day': read({
    about:
      'A figure hour by hour on a date at a field, from the days of its record near that date: quantiles, days beyond a limit, single days, daylight.',
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      /** '2026-07-19', on the field's calendar. */
      date: z.iso.date(),
      /** The window is wide enough for each share for which three weeks suffice. */
      ...figureQuestion,
    }),
    output: z.strictObject({
      figure: figureKind,
      worse: z.enum(['up', 'down']),
      window: z.strictObject({
        halfWidthDays: z.int(),
        /** The window's days before which the record has none or after which it ends are simply not there. */
        yearCount: z.int(),
        firstYear: z.int().nullable(),
        lastYear: z.int().nullable(),
      }),
      isObserved: z.boolean(),
      nature: recordNature,
      /** No worse than this on a share of the days; null with too few days. */
      quantiles: z.array(z.strictObject({ share: z.number(), daysNeeded: z.int(), value: byHour })),
      /** Where one day in ten lies on the better side; null with too few days. */
      better: byHour,
      /** Highest (or lowest) of all days; null below 20. */
      worst: byHour,
      dayCount: counts,
      yearCount: counts,
      /** Days beyond the limit; null where none was asked. */
      beyondCount: counts.nullable(),
      /** Some or all of the window's days, 25 hours each: the last is the next day's midnight. */
      singleDays: z.array(z.array(z.number().nullable())),
      /** Different days in the window. */
      singleDayCount: z.int(),
      sun: z.strictObject({ dawnH: clockH, sunriseH: clockH, sunsetH: clockH, duskH: clockH }).nullable(),
    }),
    handle: ({ db }, input) => {
      const hours = fieldHours(db, input.fieldId);
      const worse = worseOf(input.figure);
      const { values } = figureValues(db, hours, input.figure);
      const [year = 0, month = 1, day = 1] = input.date.split('-').map(Number);
      const window = dayWindow(hours.localHour, values, { month: month - 1, day }, input.shares);
      const { list, count } = singleDays(window, hours, values);
      return {
        figure: input.figure.kind,
        worse,
        window: {
          halfWidthDays: window.halfWidthDays,
          yearCount: Math.max(0, ...window.yearCount),
          firstYear: window.years[0] ?? null,
          lastYear: window.years.at(-1) ?? null,
        },
        isObserved: hours.isObserved,
        nature: hours.nature,
        quantiles: input.shares.map((each) => ({
          share: each,
          daysNeeded: daysNeeded(each),
          value: dayQuantiles(window, each, worse),
        })),
        better: dayQuantiles(window, 0.9, worse === 'up' ? 'down' : 'up'),
        worst: dayWorst(window, worse),
        dayCount: dayCounts(window),
        yearCount: [...window.yearCount],
        beyondCount: input.limit === null ? null : daysBeyond(window, input.limit, worse),
        singleDays: list,
        singleDayCount: count,
        sun:
          year < FIRST_SUN_YEAR || year > LAST_SUN_YEAR
            ? null
            : daylightOf(
                dayNumber({ year, month: month - 1, day }),
                hours.field.latitudeDeg,
                hours.field.longitudeDeg,
                zoneOffsets(hours.field.timeZone, year, year),
              ),
      };
    },
  }),
};

/** Whole courses of single days, evenly chosen where there are more than can be told apart. */
function singleDays(
  window: DayWindow,
  { localHour }: FieldHours,
  values: Float64Array,
): { list: (number | null)[][]; count: number } {
  const days = [...new Set(window.localDay)].sort((a, b) => a - b);
  const chosen =
    days.length <= SINGLE_DAYS
      ? days
      : Array.from({ length: SINGLE_DAYS }, (_, i) => days[Math.floor((i * days.length) / SINGLE_DAYS)] ?? 0);
  const list = chosen.map((day) => {
    const course = Array.from({ length: HOURS + 1 }, (): number | null => null);
    for (let i = firstAtLeast(localHour, day * HOURS); i < localHour.length; i++) {
      const hour = (localHour[i] ?? 0) - day * HOURS;
      if (hour > HOURS) break;
      const value = values[i] ?? NaN;
      if (Number.isFinite(value)) course[hour] = Math.round(value * 10) / 10;
    }
    return course;
  });
  return { list, count: days.length };
}
