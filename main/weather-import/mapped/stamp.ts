import { minuteOfMonth } from '../calendar.ts';

export type StampOrder = 'year first' | 'month first' | 'day first';

/** A printed moment. 24:00 stands for 00:00 of the next day. */
export interface PrintedTime {
  year: number;
  month: number;
  /** Of the month; 1440 more than the day's first for 24:00, so up to the month's length. */
  minute: number;
  /** What its own zone is ahead of UTC; null where it has none. */
  offsetMinutes: number | null;
}

const yearFirst =
  /^(\d{4})[-/.]?(\d\d)[-/.]?(\d\d)(?:[T ]+(\d{1,2}):?(\d\d)(?::\d\d(?:\.\d+)?)?)? ?(Z|UTC|GMT|[+-]\d\d:?\d\d)?$/i;
const yearLast =
  /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})(?:[T ]+(\d{1,2}):(\d\d)(?::\d\d)?)? ?(AM|PM)? ?(Z|UTC|GMT|[+-]\d\d:?\d\d)?$/i;

/** A stamp as tables print it, or null where it is no moment that exists. A date alone is none. */
export function readStamp(text: string, order: StampOrder): PrintedTime | null {
  const trimmed = text.trim();
  if (order === 'year first') {
    const [, year, month, day, hour, minute, zone] = yearFirst.exec(trimmed) ?? [];
    return hour === undefined ? null : printed(year, month, day, Number(hour), Number(minute), zone);
  }
  const [, first, second, year, hour, minute, half, zone] = yearLast.exec(trimmed) ?? [];
  if (hour === undefined) return null;
  const [month, day] = order === 'month first' ? [first, second] : [second, first];
  let of24 = Number(hour);
  if (half !== undefined) {
    if (of24 < 1 || of24 > 12) return null;
    of24 = (of24 % 12) + (half.toUpperCase() === 'PM' ? 12 : 0);
  }
  return printed(year, month, day, of24, Number(minute), zone);
}

/** The same from columns of their own. */
export function readParts(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
): PrintedTime | null {
  const midnight = hour === 24 && minute === 0;
  const of = minuteOfMonth(year, month, day, midnight ? 0 : hour, minute);
  return of < 0 ? null : { year, month, minute: midnight ? of + 1440 : of, offsetMinutes: null };
}

function printed(
  year: string | undefined,
  month: string | undefined,
  day: string | undefined,
  hour: number,
  minute: number,
  zone: string | undefined,
): PrintedTime | null {
  const moment = readParts(Number(year), Number(month), Number(day), hour, minute);
  return moment === null ? null : { ...moment, offsetMinutes: offsetOf(zone) };
}

function offsetOf(zone: string | undefined): number | null {
  if (zone === undefined) return null;
  const parts = /^([+-])(\d\d):?(\d\d)$/.exec(zone);
  if (parts === null) return 0;
  return (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3]));
}
