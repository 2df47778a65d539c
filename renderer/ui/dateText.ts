import { dayText } from './dateKind.ts';

/** A day in words, '19 July 2026', on this computer's calendar: for what a person did. */
export function dateText(epochS: number): string {
  const date = new Date(epochS * 1000);
  return dayText(
    [date.getFullYear(), date.getMonth() + 1, date.getDate()]
      .map((part) => String(part).padStart(2, '0'))
      .join('-'),
  );
}
