import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { airAt } from '../../shared-calc/climate/departure/air-rows.ts';
import { daylightSpan, timesInDaylight } from '../../shared-calc/climate/departure/daylight-span.ts';
import { rowsOfLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import { judge } from '../../shared-calc/climate/departure/judge.ts';
import {
  dateAtPlace,
  worksByDate,
  yearOfHour,
  type WorksByDate,
} from '../../shared-calc/climate/departure/through-the-year.ts';
import { HOURS } from '../../shared-calc/climate/season.ts';
import { read, type LookContext } from './define.ts';
import { massesOf } from './planner-aeroplane.ts';
import { dependsOnLoad, limitsOf } from './planner-asked.ts';
import { plannerInput, prepared, type PreparedQuestion } from './planner-prepared.ts';
import { Refusal } from './problem.ts';
import { zoneOffsets } from './zone-offsets.ts';

const WEEKS = 52;
const WEEK_DAYS = 7;
/** What stays behind, beside the loading as it is; round in each unit. */
const LESS_KG = { kg: [0, 20, 40], lb: [0, 40 * 0.45359237, 80 * 0.45359237] } as const;

export const plannerWeekRequests = {
  'planner.weeks': read({
    about:
      'The latest full hour of take-off for each week of the year and some loads: the hours from the first of the day that works until the first that does not.',
    where: 'heavy',
    input: plannerInput,
    output: z.strictObject({
      isObserved: z.boolean(),
      share: z.number(),
      loads: z.array(
        z.strictObject({
          lessKg: z.number(),
          /** As entered less what stays behind; null where nothing asked depends on the load. */
          massKg: z.number().nullable(),
        }),
      ),
      weeks: z.array(
        z.strictObject({
          /** The week's first day; month from 1. */
          month: z.int(),
          day: z.int(),
          /** First full hour of light; null where the flight is too long for the day. */
          firstHour: z.int().nullable(),
          /** One a load. */
          latest: z.array(
            z.strictObject({
              kind: z.enum(['until', 'allDay', 'none', 'tooFew']),
              /** Full hours of the clock; null where there is none. */
              fromHour: z.int().nullable(),
              untilHour: z.int().nullable(),
            }),
          ),
        }),
      ),
    }),
    handle: async (context, input) => {
      const question = prepared(context, input);
      const { asked, hours } = question;
      const { aeroplane, loading, phase } = asked;
      const ofLoad = dependsOnLoad(asked);
      const massKg = massesOf(loading, phase)?.massKg ?? null;
      const loads = (ofLoad ? LESS_KG[input.units.mass] : [0]).map((lessKg) => ({
        lessKg,
        massKg: ofLoad && massKg !== null ? massKg - asked.lighterKg - lessKg : null,
      }));
      if (!hours.isObserved) return { isObserved: false, share: asked.share, loads, weeks: [] };
      const steps = countedSteps(context, loads.length * HOURS);
      const works: WorksByDate[][] = [];
      for (const { lessKg } of loads) {
        const massKg = ofLoad && aeroplane !== null ? aeroplane.massKg - lessKg : undefined;
        works.push(await worksByHour(question, massKg, steps));
      }
      return {
        isObserved: true,
        share: asked.share,
        loads,
        weeks: Array.from({ length: WEEKS }, (_, week) => {
          const place = week * WEEK_DAYS;
          const { month, day } = dateAtPlace(place);
          const span = hoursOfLight(question, month, day);
          return {
            month: month + 1,
            day,
            firstHour: span?.first ?? null,
            latest: works.map((byHour) => latestOf(byHour, place, span)),
          };
        }),
      };
    },
  }),
};

/** For each hour of the clock, on which dates of the year it works. */
async function worksByHour(
  { hours, asked, departure }: PreparedQuestion,
  massKg: number | undefined,
  step: () => Promise<void>,
): Promise<WorksByDate[]> {
  const limits = limitsOf(asked, massKg);
  const works: WorksByDate[] = [];
  for (let hour = 0; hour < HOURS; hour++) {
    const { place, dayOfYear } = yearOfHour(hours.localHour, hour);
    const judged = judge(rowsOfLimits(airAt(hours, place), departure.headingsDeg, limits));
    works.push(worksByDate(dayOfYear, judged, asked.share));
    await step();
  }
  return works;
}

/**
 * Report after each step, and let what was asked meanwhile be heard: a cancel among it.
 * @returns to be called after each; throws Refusal 'cancelled'
 */
function countedSteps(
  { signal, progress }: Pick<LookContext, 'signal' | 'progress'>,
  totalCount: number,
): () => Promise<void> {
  let doneCount = 0;
  return async () => {
    doneCount++;
    progress({ doing: 'Working out each week of the year', doneCount, totalCount, unit: 'hours of the day' });
    await setImmediate();
    if (signal.aborted) throw new Refusal('cancelled', 'Working out the weeks was cancelled.');
  };
}

/** Full hours at which the whole flight and its reserve lie in daylight; null where there is none. */
function hoursOfLight(
  { asked, rule, flight }: PreparedQuestion,
  month: number,
  day: number,
): { first: number; last: number } | null {
  const year = Number(asked.day.slice(0, 4));
  const zone = zoneOffsets(asked.field.timeZone, year, year);
  const span = daylightSpan(Date.UTC(year, month, day) / 86_400_000, asked.field, zone, rule);
  if (span === null) return null;
  const times = timesInDaylight(span, flight);
  const first = Math.max(0, Math.ceil(times.fromH));
  const last = Math.min(HOURS - 1, Math.floor(times.toH));
  return last < first ? null : { first, last };
}

function latestOf(
  byHour: readonly WorksByDate[],
  place: number,
  light: { first: number; last: number } | null,
): { kind: 'until' | 'allDay' | 'none' | 'tooFew'; fromHour: number | null; untilHour: number | null } {
  const nothing = { fromHour: null, untilHour: null };
  if (light === null) return { kind: 'none', ...nothing };
  const at = (hour: number) => byHour[hour]?.[place] ?? null;
  const all = Array.from({ length: light.last - light.first + 1 }, (_, i) => light.first + i);
  const fromHour = all.find((hour) => at(hour) === true);
  if (fromHour === undefined)
    return { kind: all.every((hour) => at(hour) === null) ? 'tooFew' : 'none', ...nothing };
  let untilHour = fromHour;
  while (untilHour < light.last && at(untilHour + 1) === true) untilHour++;
  return {
    kind: fromHour === light.first && untilHour === light.last ? 'allDay' : 'until',
    fromHour,
    untilHour,
  };
}
