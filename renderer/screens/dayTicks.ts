const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAY_MS = 86_400_000;

/**
 * First days of months between two days, at most a dozen, with their words; each day where all lies within a month.
 * @param domain days since the epoch
 */
export function dayTicks([from, to]: readonly [number, number]): {
  ticks: number[];
  text: (day: number) => string;
} {
  const start = new Date(from * DAY_MS);
  const firsts: number[] = [];
  for (let month = 0; ; month++) {
    const at = Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + month, 1) / DAY_MS;
    if (at > to) break;
    if (at >= from) firsts.push(at);
  }
  const every = [1, 2, 3, 6, 12].find((step) => firsts.length / step <= 12) ?? 24;
  const months = firsts.filter((day) => new Date(day * DAY_MS).getUTCMonth() % every === 0);
  if (months.length >= 2) return { ticks: months, text: monthText };
  const step = Math.max(1, Math.ceil((to - from) / 8));
  const ticks: number[] = [];
  for (let day = Math.ceil(from); day <= to; day += step) ticks.push(day);
  return { ticks, text: dayAndMonth };
}

function monthText(day: number): string {
  const date = new Date(day * DAY_MS);
  const month = MONTHS[date.getUTCMonth()] ?? '';
  return date.getUTCMonth() === 0 ? `${month} ${String(date.getUTCFullYear())}` : month;
}

function dayAndMonth(day: number): string {
  const date = new Date(day * DAY_MS);
  return `${String(date.getUTCDate())} ${MONTHS[date.getUTCMonth()] ?? ''}`;
}
