import { reportEpochS } from '../../../shared-calc/metar/report-time.ts';
import { readReport } from '../../../shared-calc/metar/report.ts';

/** The air of this morning, as typed or read from a report; null where not given yet. */
export interface TodayAir {
  /** Full hour of the field's clock. */
  hour: number;
  temperatureC: number | null;
  dewPointC: number | null;
  settingHpa: number | null;
}

/** What a pasted report gives, or why it gives nothing. */
export type ReportRead = { air: TodayAir; date: string } | { refused: string };

/**
 * Today's air from a pasted report. Of its minute the nearest full hour of the field's clock is taken, of a day named
 * only by its number the one nearest to now.
 */
export function readToday(text: string, timeZone: string, nowEpochS: number): ReportRead {
  const report = readReport(text);
  if (report.nil) return { refused: 'The report says that there is none.' };
  if (report.time === null)
    return { refused: 'No time was found, like 261753Z: day of the month and hours and minutes in UTC.' };
  const { temperatureC, dewPointC, settingHpa } = report;
  const lacks = [
    ...(temperatureC === null ? ['temperature'] : []),
    ...(dewPointC === null ? ['dew point'] : []),
    ...(settingHpa === null ? ['altimeter setting'] : []),
  ];
  if (lacks.length === 3)
    return { refused: 'Neither temperature nor altimeter setting was found. Paste a whole METAR report.' };
  // Half an hour later, cut to the hour, is the nearest hour.
  const nearestS = reportEpochS(report.time, nowEpochS) + 1800;
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(nearestS * 1000);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
  return {
    air: { hour: Number(part('hour')), temperatureC, dewPointC, settingHpa },
    date: `${part('year')}-${part('month')}-${part('day')}`,
  };
}
