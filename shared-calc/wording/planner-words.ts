import type { LimitName } from '../climate/departure/judge.ts';
import type { DeparturePlan, PlannedHour } from '../climate/departure/plan-departure.ts';

/** The clock at an hour of the day: "05:47", "24:10" is "00:10". Exact to the minute, rounded to the side asked. */
export function clockText(atH: number, side: 'down' | 'up' | 'nearest' = 'nearest'): string {
  const minutes = atH * 60;
  const whole =
    side === 'down'
      ? Math.floor(minutes + 1e-6)
      : side === 'up'
        ? Math.ceil(minutes - 1e-6)
        : Math.round(minutes);
  const onClock = ((whole % 1440) + 1440) % 1440;
  return `${String(Math.floor(onClock / 60)).padStart(2, '0')}:${String(onClock % 60).padStart(2, '0')}`;
}

/** The limit as what fails: "density altitude". */
export function limitWords(name: LimitName): string {
  return LIMIT_WORDS[name];
}

const LIMIT_WORDS: Readonly<Record<LimitName, string>> = {
  takeOff: 'take-off distance',
  landing: 'landing distance',
  climbRate: 'climb rate',
  climbGradient: 'climb gradient',
  densityAltitude: 'density altitude',
  crosswind: 'crosswind',
  tailwind: 'tailwind',
  gust: 'gusts',
};

/** The same for a narrow column: "take-off". */
export function limitColumn(name: LimitName): string {
  if (name === 'takeOff') return 'take-off';
  if (name === 'landing') return 'landing';
  if (name === 'climbGradient') return 'gradient';
  return name === 'climbRate' ? 'climb' : LIMIT_WORDS[name];
}

/** How a date's days are counted: "15 July and 7 days either side, 11 years". */
export function daysCountedWords(
  dateWords: string,
  plan: Pick<DeparturePlan, 'halfDays' | 'yearCount'>,
): string {
  const years = plan.yearCount === 1 ? 'one year' : `${String(plan.yearCount)} years`;
  return `${dateWords} and ${String(plan.halfDays)} days either side, ${years}`;
}

/** "158 of 165"; "too few: 31". */
export function hourCountWords({ share, dayCount, metCount }: PlannedHour): string {
  return share === null ? `too few: ${String(dayCount)}` : `${String(metCount)} of ${String(dayCount)}`;
}
