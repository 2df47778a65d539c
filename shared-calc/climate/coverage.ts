import { InputProblem, requireRange } from '../problem.ts';

/** A month of a record (UTC) and how much of it is there. */
export interface MonthCoverage {
  year: number;
  /** 1 to 12. */
  month: number;
  /** Hours with a usable report within 30 minutes, of the hours that the month has. */
  hourCount: number;
  possibleCount: number;
}

/** A run of hours without a usable report. */
export interface Gap {
  /** The first missing hour, hours since 1970-01-01 00:00. */
  fromHour: number;
  hourCount: number;
}

export interface Coverage {
  /** Every month from the first to the last with any hour, also those that have none. */
  months: MonthCoverage[];
  /** The longest gaps, longest first; of equals, the earlier. */
  gaps: Gap[];
}

/**
 * How much of a record is there, month by month, and where it stops for a while.
 * @param hours      hours with a usable report, hours since 1970-01-01 00:00, each once and rising (see hourReports)
 * @param leastHours a gap shorter than this is not told of; at least 1
 * @param mostGaps   so many are given; at least 0
 * @throws InputProblem where the hours do not rise; RangeProblem where a bound is below its least
 */
export function coverageOf(hours: Int32Array, leastHours: number, mostGaps: number): Coverage {
  requireRange('leastHours', leastHours, 1, 1e9, 'hours');
  requireRange('mostGaps', mostGaps, 0, 1e9, 'gaps');
  const first = hours[0];
  const last = hours.at(-1);
  if (first === undefined || last === undefined) return { months: [], gaps: [] };
  const gaps: Gap[] = [];
  const counts = new Map<number, number>();
  let before = first - 1;
  for (const hour of hours) {
    if (hour <= before) throw new InputProblem('hours', 'hours are not rising');
    const missingCount = hour - before - 1;
    if (missingCount >= leastHours) gaps.push({ fromHour: before + 1, hourCount: missingCount });
    before = hour;
    const month = monthOf(hour);
    counts.set(month, (counts.get(month) ?? 0) + 1);
  }
  const months: MonthCoverage[] = [];
  for (let month = monthOf(first); month <= monthOf(last); month++) {
    const year = Math.floor(month / 12);
    const ofYear = month % 12;
    months.push({
      year,
      month: ofYear + 1,
      hourCount: counts.get(month) ?? 0,
      possibleCount: (Date.UTC(year, ofYear + 1, 1) - Date.UTC(year, ofYear, 1)) / 3_600_000,
    });
  }
  return {
    months,
    gaps: gaps.toSorted((a, b) => b.hourCount - a.hourCount || a.fromHour - b.fromHour).slice(0, mostGaps),
  };
}

/** Months since year 0 of the proleptic Gregorian calendar. */
function monthOf(hour: number): number {
  const date = new Date(hour * 3_600_000);
  return date.getUTCFullYear() * 12 + date.getUTCMonth();
}
