import { MONTH_NAMES } from './season.ts';

/** '2026-07-19' as '19 July 2026'. */
export function dayText(day: string): string {
  const [year = '', month = '', date = ''] = day.split('-');
  return `${String(Number(date))} ${MONTH_NAMES[Number(month) - 1] ?? ''} ${year}`;
}
