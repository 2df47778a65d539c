import { z } from 'zod';
import {
  daylightSpan,
  timesInDaylight,
  type AskedFlight,
  type DaylightRule,
  type DaylightSpan,
} from '../../shared-calc/climate/departure/daylight-span.ts';
import { asksAir, type DepartureLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import type { Stretch } from '../../shared-calc/climate/departure/departure-windows.ts';
import type { DepartureQuestion } from '../../shared-calc/climate/departure/plan-departure.ts';
import type { Steps } from '../../shared-calc/climate/departure/take-along.ts';
import type { ZoneOffsets } from '../../shared-calc/climate/zone-offsets.ts';
import { toSi } from '../../shared-calc/units/convert.ts';
import { listLoadings } from '../store/loadings.ts';
import { readSetting } from '../store/settings.ts';
import type { Context } from './define.ts';
import { fieldHours, type FieldHours } from './field-record.ts';
import { completeQuestion, flightOf, limitsOf, ruleOf, type Asked } from './planner-asked.ts';
import { headingsOf } from './planner-runway.ts';
import { plannerQuestion, plannerUnits, type PlannerUnitsInput } from './planner-schema.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';
import { zoneOffsets } from './zone-offsets.ts';

export const plannerInput = z.strictObject({
  fieldId: id,
  /** Whose current loading is taken where the question names none; left out: none is. */
  aircraftId: id.nullable().default(null),
  question: plannerQuestion.default({}),
  units: plannerUnits.default(plannerUnits.parse({})),
});
export type PlannerInput = z.output<typeof plannerInput>;

/** A question ready to be worked out. */
export interface PreparedQuestion {
  hours: FieldHours;
  asked: Asked;
  limits: DepartureLimits;
  rule: DaylightRule;
  daylight: DaylightSpan | null;
  flight: AskedFlight;
  /** What the flight leaves of the daylight; null without any. */
  times: Stretch | null;
  localDay: number;
  zone: ZoneOffsets;
  /** What planDeparture takes. */
  departure: DepartureQuestion;
}

/** @throws Refusal where the field has no record, or no limit is asked */
export function prepared(context: Pick<Context, 'db' | 'nowEpochS'>, input: PlannerInput): PreparedQuestion {
  const { db } = context;
  const hours = fieldHours(db, input.fieldId);
  const asked = completeQuestion(context, hours.field, input.question, currentLoading(db, input.aircraftId));
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
  const rule = ruleOf(asked);
  const daylight = daylightSpan(localDay, asked.field, zone, rule);
  const flight = flightOf(asked);
  const times = daylight === null ? null : timesInDaylight(daylight, flight);
  return {
    hours,
    asked,
    limits,
    rule,
    daylight,
    flight,
    times,
    localDay,
    zone,
    departure: {
      date: { month: Number(asked.day.slice(5, 7)), day: Number(asked.day.slice(8, 10)) },
      share: asked.share,
      elevationM: asked.field.elevationM,
      headingsDeg: headingsOf(asked.runway),
      limits,
      daylight,
      times,
      steps: stepsIn(input.units),
    },
  };
}

function currentLoading(db: Context['db'], aircraftId: string | null): string | null {
  if (aircraftId === null) return null;
  const loadings = listLoadings(db, aircraftId);
  const chosen = readSetting.one(db, `current.loading.${aircraftId}`);
  return (loadings.find((each) => each.id === chosen) ?? loadings[0])?.id ?? null;
}

/** Whole degrees and settings as instruments show them, in the person's units: -45 to 55 degC, 950 to 1,060 hPa. */
function stepsIn(units: PlannerUnitsInput): Steps {
  const range = (from: number, to: number, step: number) =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
  return {
    temperaturesC:
      units.temperature === 'degF' ? range(-49, 131, 1).map((each) => toSi(each, 'degF')) : range(-45, 55, 1),
    settingsHpa:
      units.altimeterSetting === 'inHg'
        ? range(2810, 3130, 2).map((each) => toSi(each / 100, 'inHg'))
        : range(950, 1060, 1),
  };
}
