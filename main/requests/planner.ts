import { z } from 'zod';
import { hoursOf, planDeparture } from '../../shared-calc/climate/departure/plan-departure.ts';
import { daylightOf } from '../../shared-calc/climate/sun-lines.ts';
import { surfaceKindOf } from '../../shared-calc/performance/surface.ts';
import { dataAgeWords } from '../../shared-calc/wording/data-age.ts';
import { plannerNotes, type PlannerNoteParts } from '../../shared-calc/wording/planner-notes.ts';
import { plannerAnswer, plannerText } from '../../shared-calc/wording/planner.ts';
import { read } from './define.ts';
import { dataAge } from './planner-age.ts';
import { askedOutput } from './planner-asked.ts';
import { slopesOf } from './planner-runway.ts';
import { plannerInput, prepared, type PreparedQuestion } from './planner-prepared.ts';
import { departurePlan, plannerAsked, stretch, type PlannerUnitsInput } from './planner-schema.ts';

const clockH = z.number().nullable();
const part = z.strictObject({ text: z.string(), strong: z.boolean() });

export const plannerRequests = {
  'planner.answer': read({
    about:
      'When to take off at a field: the windows of the day in which all limits are met on so many days in ten, in words and hour by hour, from the record of its weather station.',
    where: 'heavy',
    input: plannerInput,
    output: z.strictObject({
      asked: plannerAsked,
      sentences: z.array(z.array(part)),
      text: z.string(),
      /** What it rests on and leaves out, the weightiest first. */
      notes: z.array(z.string()),
      inShort: z.string(),
      /** null where the record is no observation or the date has no daylight by the rule. */
      plan: departurePlan.nullable(),
      sun: z.strictObject({ dawnH: clockH, sunriseH: clockH, sunsetH: clockH, duskH: clockH }),
      daylight: z.strictObject({ fromH: z.number(), toH: z.number() }).nullable(),
      /** What the flight leaves of the daylight: take-offs or landings, whichever is asked. */
      times: stretch.nullable(),
      /** How old the answer's data are, in one line. */
      age: z.string(),
    }),
    handle: (context, input) => {
      const question = prepared(context, input);
      const { hours, asked, daylight, times } = question;
      const plan = hours.isObserved && daylight !== null ? planDeparture(hours, question.departure) : null;
      const answer = plannerAnswer({
        plan,
        share: asked.share,
        isObserved: hours.isObserved,
        daylight,
        rule: question.rule,
        times,
        flight: question.flight,
        units: input.units,
      });
      return {
        asked: askedOutput(asked),
        sentences: answer.sentences.map((sentence) => [...sentence]),
        text: plannerText(answer),
        notes: plannerNotes(notesOf(question, plan, input.units)),
        inShort: answer.inShort,
        plan: plan === null ? null : sendable(plan),
        sun: daylightOf(question.localDay, asked.field.latitudeDeg, asked.field.longitudeDeg, question.zone),
        daylight: daylight === null ? null : { fromH: daylight.fromH, toH: daylight.toH },
        times: times === null ? null : { ...times },
        age: dataAgeWords(dataAge(context, question)),
      };
    },
  }),
};

function notesOf(
  { asked }: PreparedQuestion,
  plan: ReturnType<typeof planDeparture> | null,
  units: PlannerUnitsInput,
): PlannerNoteParts {
  const { aeroplane, runway } = asked;
  const book = aeroplane?.book;
  const isLanding = asked.phase === 'landing';
  const prepared = isLanding ? book?.landing : book?.takeOff;
  const table = prepared != null ? 'table' : book?.seaLevel != null ? 'estimate' : 'none';
  const figures = prepared?.record ?? book?.seaLevel ?? null;
  const hottest = (plan?.windows ?? []).flatMap(({ takeOff }) =>
    takeOff === null
      ? []
      : hoursOf({ fromH: Math.floor(takeOff.fromH), toH: Math.ceil(takeOff.toH) }).flatMap(
          (hour) => plan?.hours[hour]?.temperatureC ?? [],
        ),
  );
  return {
    loading: asked.loading,
    lighterKg: asked.lighterKg,
    runway:
      runway === null
        ? null
        : {
            surface: runway.record.surface,
            idents: runway.record.ends.map(({ ident }) => ident),
            slopeRatio: runway.record.slopeRatio,
            slopes: slopesOf(runway),
          },
    isSurfaceKnown: runway !== null && surfaceKindOf(runway.record.surface) !== null,
    table,
    isLanding,
    isCompared: figures === null || figures.source.from !== 'manual' || figures.source.comparedOn !== null,
    hasClimb: book?.climb != null,
    slopeCounted:
      prepared?.record.notes.some(({ counts }) => counts === 'slope') === true ? 'note' : 'published',
    safetyRatio: figures?.safety.factorRatio ?? null,
    readingSdRatio: figures?.readingSdRatio ?? 0,
    takeOffAsked: asked.takeOffMostM !== null,
    fuelKinds: aeroplane?.fuelKinds ?? [],
    hottestC: hottest.length === 0 ? null : Math.max(...hottest),
    isFlightAssumed: asked.isFlightAssumed,
    units,
  };
}

/** Readonly lists become plain ones that a message can carry. */
function sendable(plan: ReturnType<typeof planDeparture>): z.input<typeof departurePlan> {
  return {
    ...plan,
    limitNames: [...plan.limitNames],
    answeredHours: [...plan.answeredHours],
    hours: plan.hours.map((hour) => ({ ...hour, failCounts: [...hour.failCounts] })),
    windows: plan.windows.map((window) => ({
      ...window,
      weather: { ...window.weather },
      takeOff: window.takeOff === null ? null : { ...window.takeOff },
    })),
  };
}
