import { dayText } from '../../shared-calc/wording/day-text.ts';
import type { FieldKind } from './fieldKind.ts';

export { dayText };

const monthWords = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/**
 * A day of the calendar, kept as '2026-07-19', shown as '19 July 2026'. Read as shown, as ISO, with the month in
 * words (three letters do) on either side of the day, or as 'today'. A date in figures only, of which day and
 * month could be told apart only by custom, is refused.
 */
export function dateKind(today: () => string): FieldKind<string> {
  return {
    show: dayText,
    read: (text) => {
      const trimmed = text.trim().toLowerCase();
      if (trimmed === '') return { value: null };
      if (trimmed === 'today') return { value: today(), becomes: `becomes ${dayText(today())}` };
      const parts = partsOf(trimmed);
      if (parts === null)
        return {
          refused: /^\d{1,2}[./-]\d{1,2}[./-]\d{2,4}$/.test(trimmed)
            ? `In '${text.trim()}' day and month could be either. Write the month in words, or year-month-day.`
            : `'${text.trim()}' is not a date. Write it like 19 July 2026.`,
        };
      const { year, month, day } = parts;
      const date = new Date(Date.UTC(year, month - 1, day));
      if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
        return { refused: `There is no ${String(day)} ${nameOf(month)} ${String(year)}.` };
      const value = date.toISOString().slice(0, 10);
      return { value, becomes: `becomes ${dayText(value)}` };
    },
    step: (value, steps) => {
      const date = new Date(`${value ?? today()}T00:00:00Z`);
      date.setUTCDate(date.getUTCDate() + steps);
      return date.toISOString().slice(0, 10);
    },
    widthCount: 14,
    align: 'left',
  };
}

/** The day on this computer's calendar, as '2026-07-19'. */
export function todayHere(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
}

function nameOf(month: number): string {
  const word = monthWords[month - 1] ?? '';
  return word.charAt(0).toUpperCase() + word.slice(1);
}

function partsOf(text: string): { year: number; month: number; day: number } | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso !== null) return { year: Number(iso[1]), month: Number(iso[2]), day: Number(iso[3]) };
  const dayFirst = /^(\d{1,2})\.?\s+([a-z]{3,9})\.?,?\s+(\d{4})$/.exec(text);
  const monthFirst = /^([a-z]{3,9})\.?\s+(\d{1,2}),?\s+(\d{4})$/.exec(text);
  const [day, word, year] =
    dayFirst !== null
      ? [dayFirst[1], dayFirst[2], dayFirst[3]]
      : [monthFirst?.[2], monthFirst?.[1], monthFirst?.[3]];
  if (day === undefined || word === undefined || year === undefined) return null;
  const month = monthWords.findIndex((name) => name.startsWith(word)) + 1;
  return month === 0 ? null : { year: Number(year), month, day: Number(day) };
}
