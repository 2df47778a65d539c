import type { AskedFlight, DaylightRule, DaylightSpan } from '../climate/departure/daylight-span.ts';
import { WINDOW_STEP_MIN, type Stretch } from '../climate/departure/departure-windows.ts';
import type { DeparturePlan, PlannedHour, PlannedWindow } from '../climate/departure/plan-departure.ts';
import { shownDuration } from '../units/duration-text.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong, textOf, type Sentence } from './parts.ts';
import { daysInWords, intervalWords } from './days-in-words.ts';
import { clockText, hourCountWords, limitWords } from './planner-words.ts';

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
  /** What the flight leaves of the daylight (see timesInDaylight); null without any. */
  readonly times: Stretch | null;
  readonly flight: AskedFlight;
  readonly units: PlannerUnits;
}

export interface PlannerAnswer {
  readonly sentences: readonly Sentence[];
  /** For a list of contents: "until 10:20". */
  readonly inShort: string;
}

/** Daylight, and what the flight leaves of it. */
interface Light {
  readonly daylight: DaylightSpan;
  readonly times: Stretch;
}

/** From here on a stretch of good weather is the evening's. */
const EVENING_FROM_H = 15;

/**
 * When to take off, in words: the windows with how sure and what ends them, why the evening has none, and the rule to take
 * along. The answer's strong part is the end of the first window, or that there is none.
 * @example "Between 05:50 and 10:20 local, nine days in ten (seven to ten with the years at hand); then density altitude
 *   fails first, and from 11:30 it is one day in two. No evening window: 3 h 10 min with the reserve from 20:40 ends at
 *   23:50; sunset is 20:33. Up to one day in ten is not inside: above 31 °C or below 1 004 hPa, do not go."
 */
export function plannerAnswer(parts: PlannerAnswerParts): PlannerAnswer {
  const { plan, daylight, times, share } = parts;
  if (!parts.isObserved)
    return one(
      'not from a record',
      'This record is a typical year, averages or a model, and never answers on how many days.',
    );
  if (daylight === null || times === null || plan === null)
    return one('no daylight', `There is no daylight ${daylightWords(parts.rule)} on this date.`);
  if (plan.answeredHours.length === 0) return one('too few days', tooFewWords(plan, share));
  const open = plan.windows.flatMap((opening) =>
    opening.takeOff === null ? [] : [{ opening, takeOff: opening.takeOff }],
  );
  const [first, ...later] = open;
  const sentences: Sentence[] = [];
  const light = { daylight, times };
  if (first === undefined) sentences.push(noneSentence(plan, parts, light));
  else {
    sentences.push(firstSentence(first.opening, first.takeOff, plan, parts, light));
    if (parts.flight.phase === 'landing' && parts.flight.flightS > 0)
      sentences.push([plain(takeOffBefore(first.takeOff, parts.flight))]);
  }
  for (const { opening, takeOff } of later) sentences.push(laterSentence(opening, takeOff, parts, light));
  // Where good weather lasts up to the latest time, what comes after it is no window that was lost.
  const isCut = plan.windows.some(({ weather, takeOff }) => takeOff !== null && weather.toH >= times.toH);
  if (first !== undefined)
    for (const opening of plan.windows) {
      const why = opening.takeOff === null ? lostToDaylight(opening, parts, light) : null;
      if (why !== null && !(isCut && opening.weather.fromH > times.toH)) sentences.push([plain(why)]);
    }
  if (first !== undefined) sentences.push([plain(ruleSentence(plan, parts))]);
  if (plan.isFewYears)
    sentences.push([plain(`${fromYears(plan.yearCount)} only: other years may differ much.`)]);
  return { sentences, inShort: inShortOf(open[0]?.takeOff ?? null, open.length, parts, light) };
}

function one(inShort: string, sentence: string): PlannerAnswer {
  return { sentences: [[plain(sentence)]], inShort };
}

function firstSentence(
  opening: PlannedWindow,
  takeOff: Stretch,
  plan: DeparturePlan,
  parts: PlannerAnswerParts,
  light: Light,
): Sentence {
  const { share } = parts;
  const sure = intervalWords(share, opening, plan.resampled.of);
  const until = clockText(takeOff.toH);
  return [
    plain(
      `${parts.flight.phase === 'landing' ? 'Land between' : 'Between'} ${clockText(takeOff.fromH)} and `,
    ),
    strong(until),
    plain(
      ` local, ${daysInWords(share)}${sure === '' ? '' : ` (${sure})`}; ${afterWords(opening, parts, light)}.`,
    ),
  ];
}

/** What ends a window: the daylight that the flight needs, or the limit that then fails most. */
function afterWords(opening: PlannedWindow, parts: PlannerAnswerParts, { daylight, times }: Light): string {
  if (times.toH < opening.weather.toH - 1e-9)
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
  takeOff: Stretch,
  parts: PlannerAnswerParts,
  { daylight, times }: Light,
): Sentence {
  const isEvening = takeOff.fromH >= EVENING_FROM_H;
  const when = isEvening ? 'In the evening not before' : 'Again from';
  const end =
    times.toH < opening.weather.toH - 1e-9
      ? `until ${clockText(takeOff.toH)}, so that ${spanWords(parts)} ends by ${endWords(parts.rule)} at ${clockText(daylight.toH, 'down')}`
      : `until ${clockText(takeOff.toH)}`;
  return [plain(`${when} ${clockText(takeOff.fromH)}, ${end}.`)];
}

/** Weather that is good but too late, or too early to land; null where the stretch is only shorter than ten minutes. */
function lostToDaylight(
  opening: PlannedWindow,
  parts: PlannerAnswerParts,
  { daylight, times }: Light,
): string | null {
  const { phase, flightS, reserveS } = parts.flight;
  if (opening.weather.toH < times.fromH)
    return `No morning window: ${shownDuration(flightS, 'needed')} of flight from ${beginWords(parts.rule)} at ${clockText(daylight.fromH, 'up')} lands at ${clockText(times.fromH, 'up')}.`;
  const fromH = Math.ceil((opening.weather.fromH * 60) / WINDOW_STEP_MIN - 1e-7) * (WINDOW_STEP_MIN / 60);
  if (fromH <= times.toH) return null;
  const endsH = fromH + (phase === 'landing' ? reserveS : flightS + reserveS) / 3600;
  const which = fromH >= EVENING_FROM_H ? 'No evening window' : 'No later window';
  return `${which}: ${spanWords(parts)} from ${clockText(fromH)} ends at ${clockText(endsH, 'up')}; ${endWords(parts.rule)} is ${clockText(daylight.toH, 'down')}.`;
}

function noneSentence(plan: DeparturePlan, parts: PlannerAnswerParts, light: Light): Sentence {
  const { share, flight } = parts;
  const { daylight, times } = light;
  const isLanding = flight.phase === 'landing';
  const lost = plan.windows
    .map((opening) => lostToDaylight(opening, parts, light))
    .find((why) => why !== null);
  if (times.toH < times.fromH)
    return [
      strong(isLanding ? 'No landing' : 'No departure'),
      plain(
        `: ${wholeWords(flight)} is longer than the daylight, ${clockText(daylight.fromH, 'up')} to ${clockText(daylight.toH, 'down')}.`,
      ),
    ];
  const best = plan.answeredHours
    .map((hour) => plan.hours[hour])
    .filter((hour) => hour !== undefined)
    .filter(({ hour }) => hour >= times.fromH && hour <= times.toH)
    .reduce<PlannedHour | null>(
      (found, hour) => (found === null || (hour.share ?? 0) > (found.share ?? 0) ? hour : found),
      null,
    );
  const bestWords =
    best === null
      ? ''
      : best.metCount === 0
        ? ` No day of the record is inside at any full hour; ${best.failsMost === null ? '' : `at ${clockText(best.hour)} ${limitWords(best.failsMost)} fails most.`}`
        : ` The best full hour is ${clockText(best.hour)} with ${hourCountWords(best)} days${best.failsMost === null ? '' : `; ${limitWords(best.failsMost)} fails most`}.`;
  return [
    strong(`${noTimeWords(plan, lost !== undefined)} ${daysInWords(share)}.`),
    plain(`${bestWords}${lost === undefined ? '' : ` ${lost}`}`),
  ];
}

/** What is not there: good weather at all, good weather for ten minutes, or good weather early or late enough. */
function noTimeWords({ windows }: DeparturePlan, isLost: boolean): string {
  if (isLost) return 'At no time that the flight leaves of the daylight';
  return windows.length === 0 ? 'At no time of daylight' : 'Not for ten minutes of daylight together';
}

/**
 * How many days the windows leave outside at their worst time, as counted and rounded up; the share that was asked is
 * only the least that they keep.
 */
function restWords({ windows }: DeparturePlan): string {
  const least = Math.min(...windows.flatMap(({ leastShare }) => leastShare ?? []));
  const percent = Math.ceil(100 * (1 - least) - 1e-9);
  if (percent <= 0) return 'Every day that was counted is inside; all the same,';
  const words = daysInWords(Math.min(99, percent) / 100);
  return `Up to ${words} ${/^(one|1) /.test(words) ? 'is' : 'are'} not inside:`;
}

const WORK_OUT_AGAIN = 'work the limits out again from the air of the day before you go.';

/**
 * The rule is safe at its corner, in the dampest air: where it holds back more days than are outside, that is said, so
 * that nobody takes the count of days for the rule's.
 */
function stricterWords({ windows, takeAlong }: DeparturePlan): string {
  if (takeAlong === null) return '';
  const goes = takeAlong.goesCount / takeAlong.dayCount;
  const least = Math.min(...windows.flatMap(({ leastShare }) => leastShare ?? []));
  const percent = Math.floor(100 * goes + 1e-9);
  // A day in a hundred is not worth a sentence.
  if (goes >= least - 0.01 || percent < 1) return '';
  return ` That air is met on ${daysInWords(Math.min(99, percent) / 100)}: the rule holds back some that were inside.`;
}

/** The days that are left over, and how to know them: the last sentence of the answer. */
function ruleSentence(plan: DeparturePlan, { units }: PlannerAnswerParts): string {
  const rest = restWords(plan);
  const hasWind = plan.limitNames.some(
    (name) => name === 'crosswind' || name === 'tailwind' || name === 'gust',
  );
  const rule = plan.takeAlong;
  const asksAir = plan.limitNames.some((name) => !['crosswind', 'tailwind', 'gust'].includes(name));
  if (rule === null && asksAir) return `${rest} ${WORK_OUT_AGAIN}`;
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
  if (last === undefined)
    // No air of the record breaks the limits: what is left over is the wind that the distance is entered with.
    return rest.startsWith('Every')
      ? `${rest} ${WORK_OUT_AGAIN}`
      : `${rest} with the wind behind or of no certain direction, do not go.`;
  return `${rest} ${ways.length === 1 ? last : `${ways.slice(0, -1).join(', ')} or ${last}`}, do not go.${stricterWords(plan)}`;
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

/** What has to fit between the time told and the end of daylight. */
function spanWords({ flight }: PlannerAnswerParts): string {
  return flight.phase === 'landing'
    ? `${shownDuration(flight.reserveS, 'needed')} of reserve`
    : wholeWords(flight);
}

function wholeWords({ flightS, reserveS }: AskedFlight): string {
  return reserveS > 0
    ? `${shownDuration(flightS + reserveS, 'needed')} with the reserve`
    : shownDuration(flightS, 'needed');
}

/** A landing's window as that of the take-off before it. */
function takeOffBefore({ fromH, toH }: Stretch, { flightS }: AskedFlight): string {
  const beforeH = flightS / 3600;
  return `After ${shownDuration(flightS, 'needed')} of flight that is a take-off between ${clockText(fromH - beforeH, 'up')} and ${clockText(toH - beforeH, 'down')}.`;
}

function beginWords(rule: DaylightRule): string {
  if (rule.rule === 'civil twilight') return 'dawn';
  return rule.rule === 'sunset' ? 'sunrise' : 'the beginning of daylight by the local rule';
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
  takeOff: Stretch | null,
  count: number,
  { share }: PlannerAnswerParts,
  { times }: Light,
): string {
  if (takeOff === null) return `no hour ${daysInWords(share)}`;
  const more = count > 1 ? ' and later' : '';
  // Rounded inward, the first light is at most ten minutes off.
  return takeOff.fromH - times.fromH <= WINDOW_STEP_MIN / 60
    ? `until ${clockText(takeOff.toH)}${more}`
    : `${clockText(takeOff.fromH)} to ${clockText(takeOff.toH)}${more}`;
}

/** The answer as plain text. */
export function plannerText(answer: PlannerAnswer): string {
  return textOf(answer.sentences);
}
