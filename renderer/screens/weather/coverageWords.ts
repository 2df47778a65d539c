import type { OutputOf } from '../../../main/requests/table.ts';
import { figureText } from '../../../shared-calc/units/figure-text.ts';
import { MONTH_NAMES } from '../../../shared-calc/wording/season.ts';
import { dayText } from '../../ui/dateKind.ts';

export type Coverage = OutputOf<'weather.coverage'>;
export type MonthCell = Coverage['months'][number];

export const monthInitials = ['J', 'F', 'M', 'A', 'M', 'J', 'J', 'A', 'S', 'O', 'N', 'D'] as const;
/** One row of the picture: a year with a place for each month, null before the record begins and after it ends ... */
export interface YearRow {
  year: number;
  /** ... or several years on end in which nothing is there. */
  lastYear: number;
  months: (MonthCell | null)[];
}

/** Empty years on end from this many on are one row. */
const leastEmptyYears = 3;

export function yearRows(months: readonly MonthCell[]): YearRow[] {
  const byYear = Map.groupBy(withoutSpill(months), ({ year }) => year);
  const rows = [...byYear].map(([year, of]): YearRow => ({
    year,
    lastYear: year,
    months: monthInitials.map((_, at) => of.find(({ month }) => month === at + 1) ?? null),
  }));
  const isEmpty = (row: YearRow | undefined) =>
    row !== undefined && row.months.every((cell) => cell?.hourCount === 0);
  const folded: YearRow[] = [];
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at];
    if (row === undefined) break;
    let end = at;
    while (isEmpty(rows[end])) end++;
    if (end - at >= leastEmptyYears) {
      folded.push({ year: row.year, lastYear: rows[end - 1]?.year ?? row.year, months: [] });
      at = end - 1;
    } else folded.push(row);
  }
  return folded;
}

/** A record of whole years spills its last report, at 23:53, into the first hour of the next: that month has no file. */
function withoutSpill(months: readonly MonthCell[]): readonly MonthCell[] {
  const last = months.at(-1);
  return last !== undefined && last.sources.length === 0 && last.hourCount <= 1
    ? months.slice(0, -1)
    : months;
}

/** Percent of a month's hours that are there, rounded down: 100 only where none is missing, 0 only where none is there. */
export function percentOf({ hourCount, possibleCount }: MonthCell): number {
  if (hourCount === 0) return 0;
  return Math.max(1, Math.floor((100 * hourCount) / possibleCount));
}

/** Whether the month's reports are from another kind of file than the month's before it. */
export function changesSource(coverage: Coverage, cell: MonthCell): boolean {
  const at = coverage.months.indexOf(cell);
  const before = coverage.months[at - 1];
  if (before === undefined || before.sources.length === 0 || cell.sources.length === 0) return false;
  return kindsOf(coverage, before) !== kindsOf(coverage, cell);
}

function kindsOf({ sources }: Coverage, cell: MonthCell): string {
  return [...new Set(cell.sources.map((place) => sources[place]?.kind ?? ''))].toSorted().join();
}

/** "July 2012: 741 of 744 hours, 99 percent; from 2012.gz". */
export function cellWords(coverage: Coverage, cell: MonthCell): string {
  const percent = cell.hourCount === 0 ? '' : `, ${String(percentOf(cell))} percent`;
  const files = cell.sources.map((place) => coverage.sources[place]?.fileName ?? '');
  const from = files.length === 0 ? '' : `; from ${files.slice(0, 2).join(' and ')}`;
  const more = files.length > 2 ? ` and ${String(files.length - 2)} more` : '';
  const change = changesSource(coverage, cell) ? '; another kind of file than the month before' : '';
  return `${MONTH_NAMES[cell.month - 1] ?? ''} ${String(cell.year)}: ${figureText(cell.hourCount, 0)} of ${figureText(cell.possibleCount, 0)} hours${percent}${from}${more}${change}`;
}

/** "from 3 May 2012, 17 days". */
export function gapWords({ fromEpochS, hourCount }: Coverage['gaps'][number]): string {
  const day = dayText(new Date(fromEpochS * 1000).toISOString().slice(0, 10));
  const days = Math.floor(hourCount / 24);
  return `from ${day}, ${days === 1 ? 'a day' : `${figureText(days, 0)} days`}`;
}
