import { ALIKE_DAYS, CANDIDATES_NEEDED } from '../climate/days-alike.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown, shownRange } from '../units/shown.ts';
import { countOf } from './count-of.ts';
import { plain, strong, type Sentence } from './parts.ts';
import { hourText, MONTH_NAMES } from './season.ts';
import { figureShown, WEATHER_FIGURES, type FigureUnits } from './weather-figure.ts';

type TodayUnits = FigureUnits & Pick<UnitPreferences, 'altimeterSetting' | 'temperatureDifference'>;

/** Today's observation among the days of the record. */
export interface TodayParts {
  readonly figure: 'densityAltitude' | 'temperature';
  readonly hour: number;
  readonly today: number;
  readonly candidateCount: number;
  readonly alikeCount: number;
  readonly within: {
    readonly temperatureC: number;
    readonly dewPointC: number;
    readonly settingHpa: number;
  } | null;
  readonly atMostCount: number;
  /** From `hour` on. */
  readonly hours: readonly ({
    readonly low: number;
    readonly median: number;
    readonly high: number;
  } | null)[];
  readonly check: {
    readonly testCount: number;
    readonly heldShare: number;
    readonly widthRatio: number;
    readonly isTrusted: boolean;
  } | null;
  readonly units: TodayUnits;
}

/**
 * Where today stands among the days near its date, and where the days that began alike lead.
 * @example "At 08:00 today: 6 540 ft, more than 310 of 473 days around this date. The days that began most alike lead to
 *   8 300 to 8 650 ft at 16:00, eight days in ten."
 */
export function todaySentences(parts: TodayParts): Sentence[] {
  const { figure, hour, today, candidateCount, atMostCount, units } = parts;
  const sentences: Sentence[] = [
    [
      plain(`At ${hourText(hour)} today: `),
      strong(figureShown(today, figure, units)),
      plain(
        candidateCount === 0
          ? '. The record has no day with this hour around the date.'
          : `, ${WEATHER_FIGURES[figure].name} no lower than on ${String(atMostCount)} of ${countOf(candidateCount, 'day')} around this date.`,
      ),
    ],
  ];
  const most = parts.hours.reduce<{ at: number; low: number; high: number } | null>(
    (best, each, at) =>
      at > 0 && each !== null && (best === null || each.high > best.high) ? { ...each, at: hour + at } : best,
    null,
  );
  if (parts.within === null) {
    sentences.push([
      plain(
        `Days that began alike are not told: ${String(CANDIDATES_NEEDED)} days around the date are needed to choose ${String(ALIKE_DAYS)} from.`,
      ),
    ]);
    return sentences;
  }
  if (parts.check?.isTrusted !== true) {
    sentences.push([
      plain(untrustedWords(parts.check)),
      plain(' The season’s own lines are the better guide.'),
    ]);
    return sentences;
  }
  if (most !== null)
    sentences.push([
      plain(
        `The days that began most alike lead to ${rangeWords(most.low, most.high, parts)} at ${hourText(most.at)}, eight days in ten, if nothing but the usual weather comes.`,
      ),
    ]);
  return sentences;
}

/** How many, how alike, and how well it held. */
export function alikeWords({ alikeCount, candidateCount, within, check, units }: TodayParts): string {
  if (within === null) return '';
  const difference = (value: number) =>
    shown(value, 'temperatureDifference', units.temperatureDifference, 'doubt');
  const like = `${String(alikeCount)} of ${countOf(candidateCount, 'day')} began most alike: nine in ten of them within ${difference(within.temperatureC)} of temperature, ${difference(within.dewPointC)} of dew point and ${settingShown(within.settingHpa, units)} of setting.`;
  if (check === null) return `${like} Not checked: with one year left out too few days remain.`;
  return `${like} On ${countOf(check.testCount, 'day')} of years left out the band held ${percent(check.heldShare)} of the hours (80 % was asked) and was ${percent(check.widthRatio)} as wide as the season’s.`;
}

function untrustedWords(check: TodayParts['check']): string {
  if (check === null)
    return 'Days that began alike are not shown: with one year left out too few days remain to check them.';
  return `Days that began alike are not shown: on years left out their band held ${percent(check.heldShare)} of the hours where 80 % was asked, at ${percent(check.widthRatio)} of the season’s width.`;
}

function rangeWords(low: number, high: number, { figure, units }: TodayParts): string {
  const { quantity } = WEATHER_FIGURES[figure];
  return shownRange(low, high, quantity, units[quantity]);
}

/** A difference of settings: a hundredth of an inch is a third of a hectopascal. */
function settingShown(valueHpa: number, units: TodayUnits): string {
  return shown(valueHpa, 'altimeterSetting', units.altimeterSetting, 'doubt');
}

function percent(share: number): string {
  return `${String(Math.round(share * 100))}\u00a0%`;
}

/** A month at one hour through the years. */
export interface YearsParts {
  readonly figure: keyof typeof WEATHER_FIGURES;
  /** From 1. */
  readonly month: number;
  readonly hour: number;
  readonly years: readonly { readonly year: number; readonly median: number | null }[];
  readonly yearsNeeded: number;
  readonly change: {
    readonly slope: number;
    readonly low: number;
    readonly high: number;
    readonly isClear: boolean;
  } | null;
  readonly units: FigureUnits & Pick<UnitPreferences, 'temperatureDifference'>;
}

/**
 * Whether a month is hotter (or higher, windier) than it was; a figure only where it is clear.
 * @example "July at 15:00 has risen by about 120 ft in ten years (20 to 210), 2015 to 2025."
 */
export function yearsSentence(parts: YearsParts): string {
  const known = parts.years.filter(({ median }) => median !== null);
  const [first] = known;
  const last = known.at(-1);
  const what = `${WEATHER_FIGURES[parts.figure].name} of ${MONTH_NAMES[parts.month - 1] ?? ''} at ${hourText(parts.hour)}`;
  if (first === undefined || last === undefined || parts.change === null)
    return `Too few years to tell whether ${what} changes: ${String(known.length)} of the ${String(parts.yearsNeeded)} needed.`;
  const { slope, low, high, isClear } = parts.change;
  const span = `${String(first.year)} to ${String(last.year)}`;
  if (!isClear) return `No clear change of ${what}, ${span}.`;
  const ten = (each: number) => decadeShown(Math.abs(each) * 10, parts);
  const ends = [Math.abs(low), Math.abs(high)].sort((a, b) => a - b);
  return `Half the days’ ${what} has ${slope > 0 ? 'risen' : 'fallen'} by about ${ten(slope)} in ten years (${ten(ends[0] ?? 0)} to ${ten(ends[1] ?? 0)}, 95 times in 100), ${span}.`;
}

function decadeShown(value: number, { figure, units }: YearsParts): string {
  const { quantity } = WEATHER_FIGURES[figure];
  return quantity === 'temperature'
    ? shown(value, 'temperatureDifference', units.temperatureDifference)
    : shown(value, quantity, units[quantity]);
}
