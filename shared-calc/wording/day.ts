import { DAYS_FOR_WORST } from '../climate/days-needed.ts';
import { countOf } from './count-of.ts';
import { hourText, MONTH_NAMES, quantileWords } from './season.ts';
import { WEATHER_FIGURES, type WeatherFigure } from './weather-figure.ts';

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
