import { DAYS_FOR_WORST } from '../climate/days-needed.ts';
import { countOf } from './count-of.ts';
import { hourText, MONTH_NAMES, quantileWords } from './season.ts';
import { figureShown, WEATHER_FIGURES, type FigureUnits, type WeatherFigure } from './weather-figure.ts';

/**
 * One hour of a day: its figures and the days behind them.
 * @example "09:00: 6 510 ft or less on nine days in ten, 6 080 ft or less on half the days; 165 days of 11 years"
 */
export function dayHourWords(hour: number, of: Parameters<typeof quantileWords>[1]): string {
  return `${hourText(hour)}: ${quantileWords(hour, of)}`;
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

/**
 * What stands behind a place beside its quantiles: the worst day, and the days beyond a limit.
 * @example "9 140 ft the highest of 164 days; 46 of them beyond the limit"
 */
export function beyondWords(
  at: number,
  {
    figure,
    worst,
    beyondCount,
    dayCount,
    units,
  }: {
    readonly figure: WeatherFigure;
    readonly worst: readonly (number | null)[];
    readonly beyondCount: readonly number[] | null;
    readonly dayCount: readonly number[];
    readonly units: FigureUnits;
  },
): string {
  const days = dayCount[at] ?? 0;
  const value = worst[at] ?? null;
  const most = value === null ? [] : [`${figureShown(value, figure, units)} the ${worstWords(figure, days)}`];
  const beyond =
    beyondCount === null || days === 0
      ? []
      : [`${String(beyondCount[at] ?? 0)} of ${String(days)} beyond the limit`];
  return [...most, ...beyond].join(', ');
}
