import { z } from 'zod';
import { airAt } from '../../shared-calc/climate/departure/air-rows.ts';
import { daylightSpan, timesInDaylight } from '../../shared-calc/climate/departure/daylight-span.ts';
import { rowsOfLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import { judge } from '../../shared-calc/climate/departure/judge.ts';
import { daysOfHour, heaviestKg } from '../../shared-calc/climate/departure/one-hour.ts';
import { planDeparture, type DeparturePlan } from '../../shared-calc/climate/departure/plan-departure.ts';
import { rowsAround } from '../../shared-calc/climate/departure/rows-around.ts';
import {
  dateAtPlace,
  dateRuns,
  DAYS_OF_YEAR,
  worksByDate,
  yearOfHour,
} from '../../shared-calc/climate/departure/through-the-year.ts';
import { M_PER_FT } from '../../shared-calc/units/constants.ts';
import { fieldText, shown, unitSuffix } from '../../shared-calc/units/shown.ts';
import { buysSentence, heaviestSentence, yearSentence } from '../../shared-calc/wording/planner-backwards.ts';
import { read, type Context } from './define.ts';
import { massesOf } from './planner-aeroplane.ts';
import { dependsOnLoad, limitsOf } from './planner-asked.ts';
import { plannerInput, prepared, type PlannerInput, type PreparedQuestion } from './planner-prepared.ts';
import { plannerQuestion, type PlannerQuestion } from './planner-schema.ts';
import { zoneOffsets } from './zone-offsets.ts';

const hour = z.int().min(0).max(23);
/** What "20 kg left behind" means in pounds is 44 and a bit: each unit has its own round figure. */
const leftBehind = { kg: 20, lb: 40 * 0.45359237 } as const;

export const plannerBackwardsRequests = {
  'planner.backwards': read({
    about:
      'A departure asked backwards: the heaviest load for an hour, what a lighter load or a looser limit buys, and on which dates of the year that hour works.',
    where: 'heavy',
    input: plannerInput.extend({ hour }),
    output: z.strictObject({
      /** In the order in which they are offered: a lighter load before a looser limit. */
      answers: z.array(
        z.strictObject({
          what: z.enum(['heaviest', 'lighter', 'looser', 'year']),
          sentence: z.string(),
          /** Parts of the question that one press takes over; null where there is nothing to take. */
          take: plannerQuestion.nullable(),
        }),
      ),
      /** Take-off mass as it would be entered; null where none was looked for or none meets the limits. */
      heaviestKg: z.number().nullable(),
      /** Places in a leap year, 0 to 365, both ends included; a run over new year begins after it ends. */
      runs: z.array(z.strictObject({ from: z.int(), to: z.int() })),
    }),
    handle: (context, input) => {
      const question = prepared(context, input);
      if (!question.hours.isObserved || question.daylight === null)
        return { answers: [], heaviestKg: null, runs: [] };
      const plan = planDeparture(question.hours, question.departure);
      const heaviest = heaviestFor(question, plan, input);
      const year = throughTheYear(question, input.hour);
      const lighter = lighterBuys(context, question, plan, input);
      const looser = looserBuys(context, question, plan, input);
      return {
        answers: [heaviest.answer, lighter, looser, year.answer].filter((each) => each !== null),
        heaviestKg: heaviest.heaviestKg,
        runs: year.runs,
      };
    },
  }),
};

interface Answer {
  what: 'heaviest' | 'lighter' | 'looser' | 'year';
  sentence: string;
  take: PlannerQuestion | null;
}

function heaviestFor(
  { hours, asked, departure }: PreparedQuestion,
  plan: DeparturePlan,
  input: PlannerInput & { hour: number },
): { answer: Answer | null; heaviestKg: number | null } {
  const { aeroplane, loading, lighterKg, phase } = asked;
  const masses = massesOf(loading, phase);
  // Where nothing that is asked depends on the load, there is no heaviest one.
  if (aeroplane === null || masses === null || !dependsOnLoad(asked))
    return { answer: null, heaviestKg: null };
  const days = daysOfHour(hours, rowsAround(hours.localHour, departure.date), input.hour, plan.halfDays);
  const doubtKg = masses.highKg - masses.massKg;
  const found = heaviestKg(
    days.air,
    departure.headingsDeg,
    (massKg) => limitsOf(asked, massKg),
    asked.share,
    aeroplane.leastKg + doubtKg,
    aeroplane.mostKg + doubtKg,
  );
  const heaviest = found === null ? null : found - doubtKg;
  const plannedKg = masses.massKg - lighterKg;
  const isWhole = heaviest !== null && heaviest >= aeroplane.mostKg - 0.05;
  const lessKg = heaviest === null ? null : masses.massKg - heaviest;
  return {
    heaviestKg: heaviest,
    answer: {
      what: 'heaviest',
      sentence: heaviestSentence({
        hour: input.hour,
        share: asked.share,
        heaviestKg: heaviest,
        massKg: plannedKg,
        isWholeAeroplane: isWhole,
        isLanding: phase === 'landing',
        units: input.units,
      }),
      // Left behind is told to a tenth of a kilogram, upward: what is taken over must meet the limits.
      take:
        lessKg === null || lessKg <= lighterKg + 1e-9 || isWhole
          ? null
          : { lighterKg: Math.ceil(lessKg * 10 - 1e-6) / 10 },
    },
  };
}

/** The end of the first window, as it is told. */
function endOf(plan: DeparturePlan): number | null {
  return plan.windows.find(({ takeOff }) => takeOff !== null)?.takeOff?.toH ?? null;
}

function changedPlan(
  context: Pick<Context, 'db' | 'nowEpochS'>,
  input: PlannerInput,
  take: PlannerQuestion,
): DeparturePlan {
  const changed = prepared(context, { ...input, question: { ...input.question, ...take } });
  return planDeparture(changed.hours, changed.departure);
}

function lighterBuys(
  context: Pick<Context, 'db' | 'nowEpochS'>,
  { asked, times }: PreparedQuestion,
  plan: DeparturePlan,
  input: PlannerInput,
): Answer | null {
  const { aeroplane } = asked;
  const less = leftBehind[input.units.mass];
  // Nothing that is asked depends on the load, or so much less is less than the empty aeroplane.
  if (aeroplane === null || !dependsOnLoad(asked) || aeroplane.massKg - less < aeroplane.leastKg) return null;
  const take = { lighterKg: asked.lighterKg + less };
  const endsH = endOf(plan);
  const changedEndsH = endOf(changedPlan(context, input, take));
  const more = asked.lighterKg > 0 ? ' more' : '';
  return {
    what: 'lighter',
    sentence: buysSentence({
      what: `${fieldText(less, 'mass', input.units.mass)}${unitSuffix(input.units.mass)}${more} left behind`,
      share: asked.share,
      endsH,
      changedEndsH,
      byDaylight: endsH !== null && times !== null && times.toH - endsH < 1 / 6,
    }),
    take: changedEndsH !== null && (endsH === null || changedEndsH > endsH) ? take : null,
  };
}

/** Only the limit that binds, and only after a lighter load was offered. */
function looserBuys(
  context: Pick<Context, 'db' | 'nowEpochS'>,
  { asked, times }: PreparedQuestion,
  plan: DeparturePlan,
  input: PlannerInput,
): Answer | null {
  const binds =
    plan.windows.find(({ takeOff }) => takeOff !== null)?.endsBy ??
    plan.hours[plan.answeredHours[0] ?? 0]?.failsMost ??
    null;
  if (binds !== 'densityAltitude' || asked.densityAltitudeMostM === null) return null;
  const looserM = asked.densityAltitudeMostM + (input.units.altitude === 'ft' ? 200 * M_PER_FT : 60);
  const take = { densityAltitudeMostM: looserM };
  const endsH = endOf(plan);
  const changedEndsH = endOf(changedPlan(context, input, take));
  return {
    what: 'looser',
    sentence: buysSentence({
      what: `At most ${shown(looserM, 'altitude', input.units.altitude)} instead`,
      share: asked.share,
      endsH,
      changedEndsH,
      byDaylight: endsH !== null && times !== null && times.toH - endsH < 1 / 6,
    }),
    take: changedEndsH !== null && (endsH === null || changedEndsH > endsH) ? take : null,
  };
}

function throughTheYear(
  { hours, asked, departure, limits, rule, flight }: PreparedQuestion,
  atHour: number,
): { answer: Answer; runs: { from: number; to: number }[] } {
  const { place, dayOfYear } = yearOfHour(hours.localHour, atHour);
  const judged = judge(rowsOfLimits(airAt(hours, place), departure.headingsDeg, limits));
  const year = Number(asked.day.slice(0, 4));
  const zone = zoneOffsets(asked.field.timeZone, year, year);
  const isLight = Array.from({ length: DAYS_OF_YEAR }, (_, at) => {
    const { month, day } = dateAtPlace(at);
    const span = daylightSpan(Date.UTC(year, month, day) / 86_400_000, asked.field, zone, rule);
    if (span === null) return false;
    const times = timesInDaylight(span, flight);
    return atHour >= times.fromH && atHour <= times.toH;
  });
  const weather = worksByDate(dayOfYear, judged, asked.share);
  const works = weather.map((each, at) => (isLight[at] === true ? each : false));
  const runs = dateRuns(works);
  return {
    runs,
    answer: {
      what: 'year',
      sentence: yearSentence({
        hour: atHour,
        share: asked.share,
        runs,
        unknownCount: works.filter((each) => each === null).length,
        byDaylight: isLight.includes(false),
        isLanding: asked.phase === 'landing',
        what: dependsOnLoad(asked) ? 'at this load' : 'with these limits',
      }),
      take: null,
    },
  };
}
