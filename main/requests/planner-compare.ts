import { z } from 'zod';
import { planDeparture } from '../../shared-calc/climate/departure/plan-departure.ts';
import { InputProblem, RangeProblem } from '../../shared-calc/problem.ts';
import { plannerAnswer } from '../../shared-calc/wording/planner.ts';
import { read, type Context } from './define.ts';
import { plannerInput, prepared, type PlannerInput } from './planner-prepared.ts';
import { limitName, plannerQuestion, stretch, type PlannerQuestion } from './planner-schema.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';

const compared = z.strictObject({
  name: z.string(),
  /** null where this one cannot be answered; `refusal` says why. */
  answer: z
    .strictObject({
      inShort: z.string(),
      /** Take-off windows, rounded inward. */
      windows: z.array(stretch),
      /** At the hour in hand; null where it has too few days. */
      hourShare: z.number().nullable(),
      hourMetCount: z.int(),
      hourDayCount: z.int(),
      /** What most days fail at that hour. */
      hourFails: limitName.nullable(),
      takeOffM: z.number().nullable(),
      densityAltitudeM: z.number().nullable(),
    })
    .nullable(),
  refusal: z.string().nullable(),
});

export const plannerCompareRequests = {
  'planner.compare': read({
    about: 'The same departure with other loadings, runways, dates or fields, side by side.',
    where: 'heavy',
    input: plannerInput.extend({
      hour: z.int().min(0).max(23),
      /** What each one changes of the question. */
      with: z
        .array(
          z.strictObject({
            name: z.string().min(1).max(120),
            fieldId: id.optional(),
            question: plannerQuestion,
          }),
        )
        .max(12),
    }),
    output: z.array(compared),
    handle: (context, input) =>
      input.with.map(({ name, fieldId, question }): z.input<typeof compared> => {
        const changed = {
          ...input,
          fieldId: fieldId ?? input.fieldId,
          question: { ...carriedOver(input, fieldId), ...question },
        };
        try {
          return { name, answer: answerOf(context, changed, input.hour), refusal: null };
        } catch (error) {
          // One that cannot be answered must not take the others with it.
          if (error instanceof Refusal) return { name, answer: null, refusal: error.problem.sentence };
          if (error instanceof RangeProblem || error instanceof InputProblem)
            return { name, answer: null, refusal: `${error.message}.` };
          throw error;
        }
      }),
  }),
};

/** A runway and its length belong to their field; at another one the usual values stand in for them. */
function carriedOver({ fieldId, question }: PlannerInput, otherId: string | undefined): PlannerQuestion {
  if (otherId === undefined || otherId === fieldId) return question;
  const carried = { ...question };
  delete carried.runwayId;
  delete carried.end;
  delete carried.takeOffMostM;
  delete carried.densityAltitudeMostM;
  return carried;
}

function answerOf(context: Pick<Context, 'db' | 'nowEpochS'>, input: PlannerInput, hour: number) {
  const question = prepared(context, input);
  const { hours, asked, daylight } = question;
  const plan = hours.isObserved && daylight !== null ? planDeparture(hours, question.departure) : null;
  const at = plan?.hours[hour];
  return {
    inShort: plannerAnswer({
      ...question,
      plan,
      share: asked.share,
      isObserved: hours.isObserved,
      units: input.units,
    }).inShort,
    windows: (plan?.windows ?? []).flatMap(({ takeOff }) => (takeOff === null ? [] : [{ ...takeOff }])),
    hourShare: at?.share ?? null,
    hourMetCount: at?.metCount ?? 0,
    hourDayCount: at?.dayCount ?? 0,
    hourFails: at?.failsMost ?? null,
    takeOffM: at?.takeOffM ?? null,
    densityAltitudeM: at?.densityAltitudeM ?? null,
  };
}
