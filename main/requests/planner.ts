import { z } from 'zod';
import { daylightSpan, latestTakeOffH } from '../../shared-calc/climate/departure/daylight-span.ts';
import { asksAir } from '../../shared-calc/climate/departure/departure-limits.ts';
import { planDeparture } from '../../shared-calc/climate/departure/plan-departure.ts';
import type { Steps } from '../../shared-calc/climate/departure/take-along.ts';
import { daylightOf } from '../../shared-calc/climate/sun-lines.ts';
import { toSi } from '../../shared-calc/units/convert.ts';
import { plannerAnswer, plannerText } from '../../shared-calc/wording/planner.ts';
import { listLoadings } from '../store/loadings.ts';
import { readSetting } from '../store/settings.ts';
import { read, type Context } from './define.ts';
import { fieldHours } from './field-record.ts';
import {
  askedOutput,
  completeQuestion,
  headingsOf,
  limitsOf,
  ruleOf as daylightRuleOf,
} from './planner-asked.ts';
import { departurePlan, plannerAsked, plannerQuestion, plannerUnits } from './planner-schema.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';
import { zoneOffsets } from './zone-offsets.ts';

const clockH = z.number().nullable();
const part = z.strictObject({ text: z.string(), strong: z.boolean() });

const plannerInput = z.strictObject({
  fieldId: id,
  /** Whose current loading is taken where the question names none; left out: none is. */
  aircraftId: id.nullable().default(null),
  question: plannerQuestion.default({}),
  units: plannerUnits.default(plannerUnits.parse({})),
});

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
      inShort: z.string(),
      /** null where the record is no observation or the date has no daylight by the rule. */
      plan: departurePlan.nullable(),
      sun: z.strictObject({ dawnH: clockH, sunriseH: clockH, sunsetH: clockH, duskH: clockH }),
      daylight: z.strictObject({ fromH: z.number(), toH: z.number() }).nullable(),
      latestTakeOffH: z.number().nullable(),
    }),
    handle: (context, input) => {
      const { db } = context;
      const hours = fieldHours(db, input.fieldId);
      const asked = completeQuestion(
        context,
        hours.field,
        input.question,
        currentLoading(db, input.aircraftId),
      );
      const limits = limitsOf(asked);
      if (
        !asksAir(limits) &&
        asked.crosswindMostMs === null &&
        asked.tailwindMostMs === null &&
        asked.gustMostMs === null
      )
        throw new Refusal('input-refused', 'No limit is asked. Ask at least one: density altitude or wind.');
      const localDay = Date.parse(`${asked.day}T00:00:00Z`) / 86_400_000;
      const year = Number(asked.day.slice(0, 4));
      const zone = zoneOffsets(asked.field.timeZone, year, year);
      const rule = daylightRuleOf(asked);
      const daylight = daylightSpan(localDay, asked.field, zone, rule);
      const flightS = asked.flightMin * 60;
      const reserveS = asked.reserveMin * 60;
      const latestH = daylight === null ? -Infinity : latestTakeOffH(daylight, flightS, reserveS);
      const plan =
        hours.isObserved && daylight !== null
          ? planDeparture(hours, {
              date: { month: Number(asked.day.slice(5, 7)), day: Number(asked.day.slice(8, 10)) },
              share: asked.share,
              elevationM: asked.field.elevationM,
              headingsDeg: headingsOf(asked.runway),
              limits,
              daylight,
              latestTakeOffH: latestH,
              steps: stepsIn(input.units),
            })
          : null;
      const answer = plannerAnswer({
        plan,
        share: asked.share,
        isObserved: hours.isObserved,
        daylight,
        rule,
        latestTakeOffH: latestH,
        flightS,
        reserveS,
        units: input.units,
      });
      return {
        asked: askedOutput(asked),
        sentences: answer.sentences.map((sentence) => [...sentence]),
        text: plannerText(answer),
        inShort: answer.inShort,
        plan: plan === null ? null : sendable(plan),
        sun: daylightOf(localDay, asked.field.latitudeDeg, asked.field.longitudeDeg, zone),
        daylight: daylight === null ? null : { fromH: daylight.fromH, toH: daylight.toH },
        latestTakeOffH: daylight === null ? null : latestH,
      };
    },
  }),
};

function currentLoading(db: Context['db'], aircraftId: string | null): string | null {
  if (aircraftId === null) return null;
  const loadings = listLoadings(db, aircraftId);
  const chosen = readSetting.one(db, `current.loading.${aircraftId}`);
  return (loadings.find((each) => each.id === chosen) ?? loadings[0])?.id ?? null;
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

/** Whole degrees and settings as instruments show them, in the person's units: -45 to 55 degC, 950 to 1,060 hPa. */
function stepsIn(units: z.output<typeof plannerUnits>): Steps {
  const range = (from: number, to: number, step: number) =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
  const degrees = units.temperature === 'degF' ? range(-49, 131, 1) : range(-45, 55, 1);
  return {
    temperaturesC: units.temperature === 'degF' ? degrees.map((each) => toSi(each, 'degF')) : degrees,
    settingsHpa:
      units.altimeterSetting === 'inHg'
        ? range(2810, 3130, 2).map((each) => toSi(each / 100, 'inHg'))
        : range(950, 1060, 1),
  };
}
