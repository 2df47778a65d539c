import { z } from 'zod';
import { civilDate } from '../../shared-calc/climate/civil-date.ts';
import { daysNeeded } from '../../shared-calc/climate/days-needed.ts';
import { quantileReordering } from '../../shared-calc/climate/quantile.ts';
import { HOURS } from '../../shared-calc/climate/season.ts';
import { finiteOrNull } from '../../shared-calc/climate/safe-side.ts';
import { changeOverYears, YEARS_FOR_TREND } from '../../shared-calc/climate/through-years.ts';
import { read } from './define.ts';
import { figureInput, figureKind, figureValues } from './field-figure.ts';
import { fieldHours } from './field-record.ts';
import { id } from './ranges.ts';

export const weatherYearRequests = {
  'weather.years': read({
    about:
      "One hour of one month through the years of a field's record: each year's median, and whether it changes.",
    where: 'heavy',
    input: z.strictObject({
      fieldId: id,
      figure: figureInput.default({ kind: 'densityAltitude' }),
      /** From 1 for January. */
      month: z.int().min(1).max(12),
      hour: z.int().min(0).max(23),
    }),
    output: z.strictObject({
      figure: figureKind,
      /** null with fewer than 20 days, or beyond what is known. */
      years: z.array(z.strictObject({ year: z.int(), dayCount: z.int(), median: z.number().nullable() })),
      yearsNeeded: z.int(),
      /** A year, with its 95 % band; null with fewer than 8 years, or for records that are not of observations. */
      change: z
        .strictObject({ slope: z.number(), low: z.number(), high: z.number(), isClear: z.boolean() })
        .nullable(),
    }),
    handle: ({ db }, { fieldId, figure, month, hour }) => {
      const hours = fieldHours(db, fieldId);
      const { values } = figureValues(db, hours, figure);
      const byYear = new Map<number, number[]>();
      hours.localHour.forEach((at, place) => {
        const localDay = Math.floor(at / HOURS);
        const value = values[place] ?? NaN;
        if (at - localDay * HOURS !== hour || Number.isNaN(value)) return;
        const date = civilDate(localDay);
        if (date.month !== month - 1) return;
        const list = byYear.get(date.year) ?? [];
        list.push(value);
        byYear.set(date.year, list);
      });
      const years = [...byYear].map(([year, list]) => ({
        year,
        dayCount: list.length,
        median:
          list.length < daysNeeded(0.5)
            ? null
            : finiteOrNull(quantileReordering(Float64Array.from(list), 0.5)),
      }));
      const known = years.flatMap(({ year, median }) => (median === null ? [] : [{ year, median }]));
      return {
        figure: figure.kind,
        years,
        yearsNeeded: YEARS_FOR_TREND,
        change: hours.isObserved
          ? changeOverYears(
              known.map(({ year }) => year),
              known.map(({ median }) => median),
            )
          : null,
      };
    },
  }),
};
