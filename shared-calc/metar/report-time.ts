import { requireRange } from '../problem.ts';

export type ReportTime = { day: number; hour: number; minute: number };

/** Day of the month and time, UTC: "091955Z". @source FMH-1 12.6.3; WMO-No. 306 FM 15, 15.4 */
export function readReportTime(text: string): ReportTime | undefined {
  const parts = /^(\d{2})(\d{2})(\d{2})Z$/.exec(text);
  if (parts === null) return undefined;
  const [day, hour, minute] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  return day >= 1 && day <= 31 && hour <= 23 && minute <= 59 ? { day, hour, minute } : undefined;
}

const DAY_S = 86_400;

/**
 * The instant of a report that names only the day of its month: of all such days the one nearest to an instant that is
 * known otherwise (a stamp beside it, the report before it in a list, now).
 * @param time        day 1 to 31, hour 0 to 23, minute 0 to 59, UTC
 * @param aboutEpochS UTC, 1900 to 2200; a report some days late is still placed rightly, half a month early or late is not
 * @returns UTC epoch seconds
 * @throws RangeProblem naming the argument
 */
export function reportEpochS(time: ReportTime, aboutEpochS: number): number {
  requireRange('time.day', time.day, 1, 31, '');
  requireRange('time.hour', time.hour, 0, 23, '');
  requireRange('time.minute', time.minute, 0, 59, '');
  requireRange('aboutEpochS', aboutEpochS, -2_208_988_800, 7_258_118_400, 's');
  const about = new Date(aboutEpochS * 1000);
  const candidates: number[] = [];
  // Two months either way: a day 31 may be missing in both neighbours.
  for (let month = -2; month <= 2; month += 1) {
    const first = Date.UTC(about.getUTCFullYear(), about.getUTCMonth() + month, 1) / 1000;
    const epochS = first + (time.day - 1) * DAY_S + time.hour * 3600 + time.minute * 60;
    if (new Date(epochS * 1000).getUTCDate() === time.day) candidates.push(epochS);
  }
  return candidates.reduce((nearest, one) =>
    Math.abs(one - aboutEpochS) < Math.abs(nearest - aboutEpochS) ? one : nearest,
  );
}
