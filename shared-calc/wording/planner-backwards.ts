import {
  dateAtPlace,
  DAYS_OF_YEAR,
  runsToTell,
  type DateRun,
} from '../climate/departure/through-the-year.ts';
import { shownDuration } from '../units/duration-text.ts';
import { shown } from '../units/shown.ts';
import { daysInWords } from './days-in-words.ts';
import { type PlannerUnits } from './planner.ts';
import { clockText } from './planner-words.ts';
import { MONTH_NAMES } from './season.ts';

/** The heaviest load for one hour, against the one that is planned. */
export interface HeaviestParts {
  readonly hour: number;
  readonly share: number;
  /** Take-off mass as it would be entered; null where no load of this aeroplane meets the limits. */
  readonly heaviestKg: number | null;
  /** As planned, what is left behind taken off. */
  readonly massKg: number;
  /** What ended the search: the aeroplane's own limit rather than runway and air. */
  readonly isWholeAeroplane: boolean;
  /** The masses are those at landing. */
  readonly isLanding: boolean;
  readonly units: Pick<PlannerUnits, 'mass'>;
}

/**
 * @example "At 11:00 at most 478.2 kg at take-off, nine days in ten: 17.1 kg less than planned."
 * @example "At 06:00 any load up to 600.0 kg at take-off, nine days in ten."
 */
export function heaviestSentence({
  hour,
  share,
  heaviestKg,
  massKg,
  isWholeAeroplane,
  isLanding,
  units,
}: HeaviestParts): string {
  const days = daysInWords(share);
  const at = isLanding ? 'at landing' : 'at take-off';
  if (heaviestKg === null) return `At ${clockText(hour)} no load meets the limits ${days}.`;
  const most = shown(heaviestKg, 'mass', units.mass, 'allowance');
  if (isWholeAeroplane)
    return `At ${clockText(hour)} any load up to ${most} ${at}, ${days}; the CG is another question.`;
  const differenceKg = heaviestKg - massKg;
  const beside =
    differenceKg >= 0
      ? `${shown(differenceKg, 'mass', units.mass, 'allowance')} more than planned`
      : `${shown(-differenceKg, 'mass', units.mass, 'excess')} less than planned`;
  return `At ${clockText(hour)} at most ${most} ${at}, ${days}: ${beside}.`;
}

/** What a change of the question does to the end of the first window; null for an end is no window. */
export interface BuysParts {
  /** "20 kg left behind", "At most 7 200 ft instead" */
  readonly what: string;
  readonly share: number;
  readonly endsH: number | null;
  readonly changedEndsH: number | null;
  /** The daylight ends it, before and after the change. */
  readonly byDaylight: boolean;
}

/**
 * @example "20 kg left behind buys 30 min, to 10:50."
 * @example "20 kg left behind opens a window, to 08:10."
 */
export function buysSentence({ what, share, endsH, changedEndsH, byDaylight }: BuysParts): string {
  if (changedEndsH === null) return `${what} still opens no window ${daysInWords(share)}.`;
  if (endsH === null) return `${what} opens a window, to ${clockText(changedEndsH)}.`;
  const minutes = Math.round((changedEndsH - endsH) * 60);
  if (minutes <= 0)
    return byDaylight
      ? `${what} buys nothing: the daylight ends the window.`
      : `${what} buys less than ten minutes.`;
  return `${what} buys ${shownDuration(minutes * 60)}, to ${clockText(changedEndsH)}.`;
}

/** One hour of the day through the year. */
export interface YearParts {
  readonly hour: number;
  readonly share: number;
  readonly runs: readonly DateRun[];
  /** Dates on which neither yes nor no can be said. */
  readonly unknownCount: number;
  /** Whether some dates are left out because the flight would not be inside their daylight. */
  readonly byDaylight: boolean;
  readonly isLanding: boolean;
  /** "at this load", "with these limits" */
  readonly what: string;
}

/**
 * @example "A departure at 11:00 at this load works nine days in ten until 6 June and again from 25 August."
 */
export function yearSentence({
  hour,
  share,
  runs,
  unknownCount,
  byDaylight,
  isLanding,
  what,
}: YearParts): string {
  const begins = `A ${isLanding ? 'landing' : 'departure'} at ${clockText(hour)} ${what} works ${daysInWords(share)}`;
  const light = byDaylight ? ', where the whole flight is inside daylight' : '';
  if (unknownCount === DAYS_OF_YEAR)
    return `At ${clockText(hour)} no date of the year has days enough to tell.`;
  const unknown =
    unknownCount === 0 ? '' : ` ${String(unknownCount)} dates of the year have too few days to tell.`;
  const { runs: told, hasGaps } = runsToTell(runs);
  const gaps = hasGaps && told.length > 0 ? ', but for a few days in between' : '';
  return `${begins} ${runsWords(told)}${gaps}${light}.${unknown}`;
}

function runsWords(runs: readonly DateRun[]): string {
  const [first, second] = runs;
  if (first === undefined) return 'on no date of the year';
  if (second === undefined) {
    if (first.from === 0 && first.to === DAYS_OF_YEAR - 1) return 'all year';
    // Over the new year: what a person waits for is the gap.
    if (first.from > first.to) return `until ${dateWords(first.to)} and again from ${dateWords(first.from)}`;
  }
  return runs.map(({ from, to }) => `from ${dateWords(from)} to ${dateWords(to)}`).join(', and ');
}

function dateWords(place: number): string {
  const { month, day } = dateAtPlace(place);
  return `${String(day)} ${MONTH_NAMES[month] ?? ''}`;
}
