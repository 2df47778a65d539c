import { MONTH_NAMES } from '../../../shared-calc/wording/season.ts';

/** Where a date stands in the season picture: months since the beginning of the year, 6.5 in the middle of July. */
export function monthOfYear(date: string): number {
  const { year, month, day } = partsOf(date);
  return month + (day - 0.5) / daysIn(year, month);
}

/** The same date of the year moved by whole days, staying in its year. */
export function dateAt(year: number, dayOfYear: number): string {
  return new Date(Date.UTC(year, 0, 1 + dayOfYear)).toISOString().slice(0, 10);
}

/** From 0 for 1 January. */
export function dayOfYear(date: string): number {
  const { year } = partsOf(date);
  return Math.round((Date.parse(`${date}T00:00:00Z`) - Date.UTC(year, 0, 1)) / 86_400_000);
}

export function daysInYear(year: number): number {
  return Math.round((Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / 86_400_000);
}

/** The date nearest to a place in the season picture. */
export function dateNear(year: number, months: number): string {
  const within = Math.min(11.999, Math.max(0, months));
  const month = Math.floor(within);
  const day = Math.floor((within - month) * daysIn(year, month)) + 1;
  return new Date(Date.UTC(year, month, day)).toISOString().slice(0, 10);
}

/** Month from 0, day from 1. */
export function partsOf(date: string): { year: number; month: number; day: number } {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  return { year, month: month - 1, day };
}

/** As far as daylight is worked out. */
const YEARS = { first: 1902, last: 2099 };

/** Why a departure cannot be asked for on a date, as a sentence; null where it can. */
export function dateRefusal(date: string): string | null {
  const { year } = partsOf(date);
  return year >= YEARS.first && year <= YEARS.last
    ? null
    : `Daylight is worked out for the years ${String(YEARS.first)} to ${String(YEARS.last)}, not for ${String(year)}.`;
}

/** '19 July': a date of the year. */
export function dayAndMonth(date: string): string {
  const { month, day } = partsOf(date);
  return `${String(day)} ${MONTH_NAMES[month] ?? ''}`;
}

function daysIn(year: number, month: number): number {
  return new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
}
