import type { DaylightRule, DaylightSpan } from '../climate/departure/daylight-span.ts';
import { WINDOW_STEP_MIN } from '../climate/departure/departure-windows.ts';
import type { LimitName } from '../climate/departure/judge.ts';
import type { DeparturePlan, PlannedHour, PlannedWindow } from '../climate/departure/plan-departure.ts';
import { shownDuration } from '../units/duration-text.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong, textOf, type Sentence } from './parts.ts';
import { daysInWords, intervalWords } from './days-in-words.ts';

export type PlannerUnits = Pick<
  UnitPreferences,
  'altitude' | 'temperature' | 'altimeterSetting' | 'distance' | 'speed' | 'climbRate' | 'mass'
>;

/** What the answer on a departure rests on. */
export interface PlannerAnswerParts {
  /** null where the record is no observation, or the sun does not come up. */
  readonly plan: DeparturePlan | null;
  readonly share: number;
  /** False for typical years, averages and models: they never answer on how many days. */
  readonly isObserved: boolean;
  readonly daylight: DaylightSpan | null;
  readonly rule: DaylightRule;
  readonly latestTakeOffH: number;
  /** A landing is asked: no flight stands between the hour and the end of daylight, only the reserve. */
  readonly isLanding: boolean;
  readonly flightS: number;
  readonly reserveS: number;
  readonly units: PlannerUnits;
}

export interface PlannerAnswer {
  readonly sentences: readonly Sentence[];
  /** For a list of contents: "until 10:20". */
  readonly inShort: string;
}

/** From here on a stretch of good weather is the evening's. */
const EVENING_FROM_H = 15;

/**
 * When to take off, in words: the windows with how sure and what ends them, why the evening has none, and the rule to take
 * along. The answer's strong part is the end of the first window, or that there is none.
 * @example "Between 05:50 and 10:20 local, nine days in ten (seven to ten with the years at hand); then density altitude
 *   fails first, and from 11:30 it is one day in two. No evening window: 3 h 10 min with the reserve from 20:40 ends at
 *   23:50; sunset is 20:33. One day in ten is not inside: above 31 °C or below 1 004 hPa, do not go."
 */
export function plannerAnswer(parts: PlannerAnswerParts): PlannerAnswer {
  const { plan, daylight, share } = parts;
  if (!parts.isObserved)
    return one(
      'not from a record',
      'This record is a typical year, averages or a model, and never answers on how many days.',
    );
  if (daylight === null || plan === null)
    return one('no daylight', `There is no daylight ${daylightWords(parts.rule)} on this date.`);
  if (plan.answeredHours.length === 0) return one('too few days', tooFewWords(plan, share));
  const open = plan.windows.flatMap((opening) =>
    opening.takeOff === null ? [] : [{ opening, takeOff: opening.takeOff }],
  );
  const [first, ...later] = open;
  const sentences: Sentence[] = [];
  if (first === undefined) sentences.push(noneSentence(plan, parts, daylight));
  else sentences.push(firstSentence(first.opening, first.takeOff, plan, parts, daylight));
  for (const { opening, takeOff } of later) sentences.push(laterSentence(opening, takeOff, parts, daylight));
  // Where good weather lasts up to the latest take-off, what comes after it is no window that was lost.
  const isCut = plan.windows.some(
    ({ weather, takeOff }) => takeOff !== null && weather.toH >= parts.latestTakeOffH,
  );
  if (first !== undefined && !isCut)
    for (const opening of plan.windows) {
      const why = opening.takeOff === null ? lostToDaylight(opening, parts, daylight) : null;
      if (why !== null) sentences.push([plain(why)]);
    }
  if (first !== undefined && share < 1) sentences.push([plain(ruleSentence(plan, parts))]);
  if (plan.isFewYears)
    sentences.push([plain(`${fromYears(plan.yearCount)} only: other years may differ much.`)]);
  return { sentences, inShort: inShortOf(open[0]?.takeOff ?? null, open.length, parts, daylight) };
}

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

function one(inShort: string, sentence: string): PlannerAnswer {
  return { sentences: [[plain(sentence)]], inShort };
}

function firstSentence(
  opening: PlannedWindow,
  takeOff: { readonly fromH: number; readonly toH: number },
  plan: DeparturePlan,
  parts: PlannerAnswerParts,
  daylight: DaylightSpan,
): Sentence {
  const { share } = parts;
  const sure = intervalWords(share, opening, plan.resampled.of);
  const until = clockText(takeOff.toH);
  return [
    plain(`${parts.isLanding ? 'Land between' : 'Between'} ${clockText(takeOff.fromH)} and `),
    strong(until),
    plain(
      ` local, ${daysInWords(share)}${sure === '' ? '' : ` (${sure})`}; ${afterWords(opening, parts, daylight)}.`,
    ),
  ];
}

/** What ends a window: the daylight that the flight needs, or the limit that then fails most. */
function afterWords(opening: PlannedWindow, parts: PlannerAnswerParts, daylight: DaylightSpan): string {
  if (parts.latestTakeOffH < opening.weather.toH - 1e-9)
    return `later ${spanWords(parts)} would not end by ${endWords(parts.rule)} at ${clockText(daylight.toH, 'down')}`;
  const half =
    opening.halfAtH === null || parts.share <= 0.5
      ? ''
      : `, and from ${clockText(Math.floor((opening.halfAtH * 60) / WINDOW_STEP_MIN) * (WINDOW_STEP_MIN / 60))} it is one day in two`;
  if (opening.endsBy === null) return `then the record has too few days${half}`;
  return `then ${limitWords(opening.endsBy)} ${opening.endsBy === 'gust' ? 'fail' : 'fails'} first${half}`;
}

function laterSentence(
  opening: PlannedWindow,
  takeOff: { readonly fromH: number; readonly toH: number },
  parts: PlannerAnswerParts,
  daylight: DaylightSpan,
): Sentence {
  const isEvening = takeOff.fromH >= EVENING_FROM_H;
  const when = isEvening ? 'In the evening not before' : 'Again from';
  const end =
    parts.latestTakeOffH < opening.weather.toH - 1e-9
      ? `until ${clockText(takeOff.toH)}, so that ${spanWords(parts)} ends by ${endWords(parts.rule)} at ${clockText(daylight.toH, 'down')}`
      : `until ${clockText(takeOff.toH)}`;
  return [plain(`${when} ${clockText(takeOff.fromH)}, ${end}.`)];
}

/** Weather that is good but too late; null where the stretch is only shorter than ten minutes. */
function lostToDaylight(
  opening: PlannedWindow,
  parts: PlannerAnswerParts,
  daylight: DaylightSpan,
): string | null {
  const fromH = Math.ceil((opening.weather.fromH * 60) / WINDOW_STEP_MIN - 1e-7) * (WINDOW_STEP_MIN / 60);
  if (fromH <= parts.latestTakeOffH) return null;
  const endsH = fromH + (parts.flightS + parts.reserveS) / 3600;
  const which = fromH >= EVENING_FROM_H ? 'No evening window' : 'No later window';
  return `${which}: ${spanWords(parts)} from ${clockText(fromH)} ends at ${clockText(endsH, 'up')}; ${endWords(parts.rule)} is ${clockText(daylight.toH, 'down')}.`;
}

function noneSentence(plan: DeparturePlan, parts: PlannerAnswerParts, daylight: DaylightSpan): Sentence {
  const { share } = parts;
  const lost = plan.windows
    .map((opening) => lostToDaylight(opening, parts, daylight))
    .find((why) => why !== null);
  if (parts.latestTakeOffH < daylight.fromH)
    return [
      strong('No departure'),
      plain(
        `: ${spanWords(parts)} is longer than the daylight, ${clockText(daylight.fromH, 'up')} to ${clockText(daylight.toH, 'down')}.`,
      ),
    ];
  const best = plan.answeredHours
    .map((hour) => plan.hours[hour])
    .filter((hour) => hour !== undefined)
    .filter(({ hour }) => hour <= parts.latestTakeOffH)
    .reduce<PlannedHour | null>(
      (found, hour) => (found === null || (hour.share ?? 0) > (found.share ?? 0) ? hour : found),
      null,
    );
  const bestWords =
    best === null
      ? ''
      : ` The best full hour is ${clockText(best.hour)} with ${hourCountWords(best)} days${best.failsMost === null ? '' : `; ${limitWords(best.failsMost)} fails most`}.`;
  return [
    strong(`At no time of daylight ${daysInWords(share)}.`),
    plain(`${bestWords}${lost === undefined ? '' : ` ${lost}`}`),
  ];
}

/** The days that are left over, and how to know them: the last sentence of the answer. */
function ruleSentence(plan: DeparturePlan, { share, units }: PlannerAnswerParts): string {
  const rest = `${daysInWords(1 - share, 'capital')} is not inside`;
  const hasWind = plan.limitNames.some(
    (name) => name === 'crosswind' || name === 'tailwind' || name === 'gust',
  );
  const rule = plan.takeAlong;
  const asksAir = plan.limitNames.some((name) => !['crosswind', 'tailwind', 'gust'].includes(name));
  if (rule === null && asksAir)
    return `${rest}: work the limits out again from the air of the day before you go.`;
  const ways = [
    ...(rule?.temperatureBinds === true
      ? [`above ${shown(rule.temperatureMostC, 'temperature', units.temperature)}`]
      : []),
    ...(rule?.settingBinds === true
      ? [`below ${shown(rule.settingLeastHpa, 'altimeterSetting', units.altimeterSetting)}`]
      : []),
    ...(hasWind ? ['over the wind limits'] : []),
  ];
  const last = ways.at(-1);
  // No air of the record breaks the limits: what is left over is the wind that the distance is entered with.
  if (last === undefined) return `${rest}: with the wind behind or of no certain direction, do not go.`;
  return `${rest}: ${ways.length === 1 ? last : `${ways.slice(0, -1).join(', ')} or ${last}`}, do not go.`;
}

function tooFewWords(plan: DeparturePlan, share: number): string {
  const most = Math.max(0, ...plan.hours.map(({ dayCount }) => dayCount));
  return (
    `Too few days: the fullest hour has ${String(most)} of the ${String(plan.daysNeeded)} that ${daysInWords(share)} needs, ` +
    `with ${String(plan.halfDays)} days on either side. ` +
    (share > 0.5 ? 'Import more years, or ask for one day in two.' : 'Import more of this station.')
  );
}

function fromYears(count: number): string {
  return count === 1 ? 'From one year' : `From ${String(count)} years`;
}

function spanWords({ flightS, reserveS }: PlannerAnswerParts): string {
  return reserveS > 0
    ? `${shownDuration(flightS + reserveS, 'needed')} with the reserve`
    : shownDuration(flightS, 'needed');
}

function endWords(rule: DaylightRule): string {
  if (rule.rule === 'civil twilight') return 'dusk';
  return rule.rule === 'sunset' ? 'sunset' : 'the end of daylight by the local rule';
}

function daylightWords(rule: DaylightRule): string {
  if (rule.rule === 'civil twilight') return 'by civil twilight';
  return rule.rule === 'sunset' ? 'between sunrise and sunset' : 'by the local rule';
}

function inShortOf(
  takeOff: { readonly fromH: number; readonly toH: number } | null,
  count: number,
  { share }: PlannerAnswerParts,
  daylight: DaylightSpan,
): string {
  if (takeOff === null) return `no hour ${daysInWords(share)}`;
  const more = count > 1 ? ' and later' : '';
  // Rounded inward, the first light is at most ten minutes off.
  return takeOff.fromH - daylight.fromH <= WINDOW_STEP_MIN / 60
    ? `until ${clockText(takeOff.toH)}${more}`
    : `${clockText(takeOff.fromH)} to ${clockText(takeOff.toH)}${more}`;
}

/** The answer as plain text. */
export function plannerText(answer: PlannerAnswer): string {
  return textOf(answer.sentences);
}
