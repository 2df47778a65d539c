import { DAYS_FOR_WORST } from '../climate/day-window.ts';
import {
  figureShown,
  orBetter,
  WEATHER_FIGURES,
  type FigureUnits,
  type WeatherFigure,
} from './weather-figure.ts';
import { hourText, MONTH_NAMES, shareWords } from './season.ts';

/** What the days near a date say, hour by hour. */
export interface DayParts {
  readonly figure: WeatherFigure;
  readonly quantiles: readonly { share: number; value: readonly (number | null)[] }[];
  readonly dayCount: readonly number[];
  readonly yearCount: readonly number[];
  readonly units: FigureUnits;
}

/**
 * One hour of a day: its figures and the days behind them.
 * @example "09:00: 6 510 ft or less on nine days in ten, 6 080 ft or less on half the days; 165 days of 11 years"
 */
export function dayHourWords(hour: number, parts: DayParts): string {
  const days = parts.dayCount[hour] ?? 0;
  const years = parts.yearCount[hour] ?? 0;
  const figures = parts.quantiles.flatMap(({ share, value }) => {
    const valueSi = value[hour] ?? null;
    return valueSi === null
      ? []
      : [
          `${figureShown(valueSi, parts.figure, parts.units)} ${orBetter(parts.figure)} on ${shareWords(share)}`,
        ];
  });
  const count = days === 0 ? 'no day' : `${countOf(days, 'day')} of ${countOf(years, 'year')}`;
  return figures.length === 0
    ? `${hourText(hour)}: too few, ${count}`
    : `${hourText(hour)}: ${figures.join(', ')}; ${count}`;
}

/**
 * Which days of the record a date is answered from.
 * @example "12 to 26 July of 11 years, every day alike"
 */
export function windowWords(
  date: { month: number; day: number },
  halfWidthDays: number,
  yearCount: number,
): string {
  const end = (by: number) => {
    // A year with 29 February: only the names of the days matter.
    const at = new Date(Date.UTC(2000, date.month, date.day + by));
    return { day: at.getUTCDate(), month: MONTH_NAMES[at.getUTCMonth()] ?? '' };
  };
  const from = end(-halfWidthDays);
  const to = end(halfWidthDays);
  const first = from.month === to.month ? String(from.day) : `${String(from.day)} ${from.month}`;
  return `${first} to ${String(to.day)} ${to.month} of ${countOf(yearCount, 'year')}, every day alike`;
}

/** 'highest of 165 days', 'lowest of 165 days'; says too few below 20. */
export function worstWords(figure: WeatherFigure, dayCount: number): string {
  if (dayCount < DAYS_FOR_WORST) return `too few, ${countOf(dayCount, 'day')}`;
  return `${WEATHER_FIGURES[figure].worse === 'up' ? 'highest' : 'lowest'} of ${countOf(dayCount, 'day')}`;
}

function countOf(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${String(count)} ${what}s`;
}
