import { requireZone, type ZoneOffsets } from './zone-offsets.ts';

/** Which report stands for which local hour, in order of time; hours without a report are left out. */
export interface HourReports {
  /** Local hours since 1970-01-01 00:00 on the field's clock: 24 x days + hour of the day. */
  localHour: Int32Array;
  /** Place of the report in the columns that were given. */
  report: Int32Array;
}

/** A report stands for an hour when it is no further from it than this. */
export const NEAREST_WITHIN_MINUTES = 30;

/**
 * Choose for each hour of the local clock the one usable report nearest to h:00, within 30 minutes.
 *
 * Equally near, the earlier counts; of one minute, the first in the columns. So a report at 23:53 stands for 00 of the
 * next day, and a storm's many reports weigh no more than a calm hour's one. An hour that the clock repeats counts
 * once, in its first run; one that it leaves out has no report. A report at exactly h:30 can stand for both hours.
 * @param epochMinute minutes since 1970-01-01 00:00 UTC of each report, never falling
 * @param usable      1 where the report may stand for an hour
 * @param zone        the clock, at least over the span of the reports
 * @throws InputProblem where the zone's table is not in order
 */
export function hourReports(epochMinute: Int32Array, usable: Uint8Array, zone: ZoneOffsets): HourReports {
  requireZone(zone);
  const count = epochMinute.length;
  const first = epochMinute[0];
  const last = epochMinute[count - 1];
  if (first === undefined || last === undefined)
    return { localHour: new Int32Array(0), report: new Int32Array(0) };
  // No more hours than the span has, and no more than twice the reports (those at h:30 can serve two).
  const most = Math.min(Math.ceil((last - first) / 60) + 3, 2 * count);
  const localHour = new Int32Array(most);
  const report = new Int32Array(most);
  let found = 0;
  let from = 0;
  let latestHour = -Infinity;

  for (let stretch = 0; stretch < zone.startMinutes.length; stretch++) {
    const offset = zone.offsetMinutes[stretch] ?? 0;
    const begin = Math.max(
      stretch === 0 ? -Infinity : (zone.startMinutes[stretch] ?? 0),
      first - NEAREST_WITHIN_MINUTES,
    );
    const end = Math.min(zone.startMinutes[stretch + 1] ?? Infinity, last + NEAREST_WITHIN_MINUTES + 1);
    for (let hour = Math.ceil((begin + offset) / 60); hour * 60 - offset < end; hour++) {
      // The clock was put back: the second run of this hour does not count.
      if (hour <= latestHour) continue;
      latestHour = hour;
      const minute = hour * 60 - offset;
      while (from < count && (epochMinute[from] ?? 0) < minute - NEAREST_WITHIN_MINUTES) from++;
      let best = -1;
      let bestMinutes = NEAREST_WITHIN_MINUTES + 1;
      for (let i = from; i < count && (epochMinute[i] ?? 0) <= minute + NEAREST_WITHIN_MINUTES; i++) {
        const away = Math.abs((epochMinute[i] ?? 0) - minute);
        if (usable[i] === 1 && away < bestMinutes) {
          best = i;
          bestMinutes = away;
        }
      }
      if (best >= 0) {
        localHour[found] = hour;
        report[found++] = best;
      }
    }
  }
  return { localHour: localHour.slice(0, found), report: report.slice(0, found) };
}
