import { Temporal } from 'temporal-polyfill/implementation';
import {
  climbGradientRows,
  climbRows,
  distanceRows,
} from '../../shared-calc/climate/departure/aeroplane-rows.ts';
import type { AskedFlight, DaylightRule } from '../../shared-calc/climate/departure/daylight-span.ts';
import type { DepartureLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import { M_PER_FT } from '../../shared-calc/units/constants.ts';
import type { FieldRecord } from '../store/fields.ts';
import { readLoading } from '../store/loadings.ts';
import type { Context } from './define.ts';
import {
  answersDistance,
  answersGradient,
  answersLanding,
  askedAeroplane,
  askedLoading,
  type AskedAeroplane,
  type AskedLoading,
} from './planner-aeroplane.ts';
import {
  askedRunway,
  availableM,
  runwayCases,
  runwayWords,
  slopesOf,
  type AskedRunway,
} from './planner-runway.ts';
import type { PlannerQuestion } from './planner-schema.ts';

/** A first limit where there is no take-off table, for the pilot to change: no source. */
const usualAboveFieldM = 2500 * M_PER_FT;
const usualStepM = 100 * M_PER_FT;
const usualFlightMin = 60;
/** 14 CFR 91.151: by day half an hour. */
const usualReserveMin = 30;

type Filled<Part extends keyof PlannerQuestion> = {
  [part in Part]-?: Exclude<PlannerQuestion[part], undefined>;
};

/** The question with every part filled in, and what stands behind it. */
export interface Asked extends Filled<
  | 'phase'
  | 'lighterKg'
  | 'day'
  | 'share'
  | 'takeOffMostM'
  | 'runwayShareMost'
  | 'climbLeastMs'
  | 'climbGradientLeast'
  | 'densityAltitudeMostM'
  | 'crosswindMostMs'
  | 'tailwindMostMs'
  | 'gustMostMs'
  | 'daylight'
  | 'beforeSunriseMin'
  | 'afterSunsetMin'
  | 'flightMin'
  | 'reserveMin'
> {
  field: FieldRecord;
  loading: AskedLoading | null;
  runway: AskedRunway | null;
  isFlightAssumed: boolean;
  /** What the aeroplane's manual answers here; null where it has no table, or there is nothing to enter it with. */
  aeroplane: AskedAeroplane | null;
}

/** The question with its usual values where nothing was chosen. What is not there any more counts as not chosen. */
export function completeQuestion(
  context: Pick<Context, 'db' | 'nowEpochS'>,
  field: FieldRecord,
  question: PlannerQuestion,
  currentLoadingId: string | null,
): Asked {
  const { db } = context;
  const wanted = question.loadingId === undefined ? currentLoadingId : question.loadingId;
  const kept = wanted === null ? null : readLoading(db, wanted);
  const record = kept === null || kept.removed ? null : kept.record;
  const planned = record?.flight.landingAfterS ?? null;
  const loading = record === null ? null : askedLoading(db, record.id);
  const runway = askedRunway(field, question);
  const lighterKg = question.lighterKg ?? 0;
  const wantedPhase = question.phase ?? 'take-off';
  const wantedAeroplane =
    loading === null ? null : askedAeroplane(db, loading, runway, lighterKg, wantedPhase);
  // Without a table of landings there is none to ask.
  const phase = wantedAeroplane !== null && answersLanding(wantedAeroplane) ? wantedPhase : 'take-off';
  const aeroplane =
    loading === null || phase === wantedPhase
      ? wantedAeroplane
      : askedAeroplane(db, loading, runway, lighterKg, phase);
  const isTakeOff = phase === 'take-off';
  const hasDistance =
    aeroplane !== null && (isTakeOff ? answersDistance(aeroplane) : answersLanding(aeroplane));
  return {
    field,
    loading,
    runway,
    aeroplane,
    phase,
    lighterKg,
    day:
      question.day ??
      Temporal.Instant.fromEpochMilliseconds(context.nowEpochS() * 1000)
        .toZonedDateTimeISO(field.timeZone)
        .toPlainDate()
        .toString(),
    share: question.share ?? 0.9,
    ...(hasDistance && runway !== null
      ? distanceLimit(question, availableM(runway, phase))
      : { takeOffMostM: null, runwayShareMost: null }),
    climbLeastMs: aeroplane?.book.climb != null && isTakeOff ? (question.climbLeastMs ?? null) : null,
    climbGradientLeast:
      aeroplane !== null && isTakeOff && answersGradient(aeroplane, runway)
        ? (question.climbGradientLeast ?? null)
        : null,
    densityAltitudeMostM:
      question.densityAltitudeMostM === undefined
        ? hasDistance
          ? null
          : usualStepM * Math.floor((field.elevationM + usualAboveFieldM) / usualStepM)
        : question.densityAltitudeMostM,
    crosswindMostMs:
      question.crosswindMostMs === undefined ? usualCrosswindMs(runway, aeroplane) : question.crosswindMostMs,
    tailwindMostMs:
      question.tailwindMostMs === undefined ? usualTailwindMs(runway, aeroplane) : question.tailwindMostMs,
    gustMostMs: question.gustMostMs ?? null,
    daylight: question.daylight ?? 'sunset',
    beforeSunriseMin: question.beforeSunriseMin ?? 30,
    afterSunsetMin: question.afterSunsetMin ?? 30,
    flightMin: question.flightMin ?? (planned === null ? usualFlightMin : Math.ceil(planned / 60)),
    reserveMin: question.reserveMin ?? record?.flight.reserveMin ?? usualReserveMin,
    isFlightAssumed: question.flightMin === undefined && planned === null,
  };
}

/** A share of the runway stands before metres; more metres than there are were asked of another runway. */
function distanceLimit(
  question: PlannerQuestion,
  lengthM: number,
): { takeOffMostM: number | null; runwayShareMost: number | null } {
  const shareMost = question.runwayShareMost ?? null;
  if (shareMost !== null) return { takeOffMostM: shareMost * lengthM, runwayShareMost: shareMost };
  const wantedM = question.takeOffMostM;
  return {
    takeOffMostM: wantedM === undefined ? lengthM : wantedM === null ? null : Math.min(wantedM, lengthM),
    runwayShareMost: null,
  };
}

/** The pilot's own limit, else what the maker demonstrated; without a runway there is no crosswind. */
function usualCrosswindMs(runway: AskedRunway | null, aeroplane: AskedAeroplane | null): number | null {
  if (runway === null || aeroplane === null) return null;
  return aeroplane.wind.ownCrosswindMs ?? aeroplane.wind.demonstratedCrosswindMs;
}

function usualTailwindMs(runway: AskedRunway | null, aeroplane: AskedAeroplane | null): number | null {
  return runway === null ? null : (aeroplane?.wind.ownTailwindMs ?? null);
}

/** Whether anything that is asked depends on the load. */
export function dependsOnLoad(
  asked: Pick<Asked, 'aeroplane' | 'takeOffMostM' | 'climbLeastMs' | 'climbGradientLeast'>,
): boolean {
  return (
    asked.aeroplane !== null &&
    (asked.takeOffMostM !== null || asked.climbLeastMs !== null || asked.climbGradientLeast !== null)
  );
}

/** @param massKg another mass than that of the loading asked: for questions asked backwards */
export function limitsOf(asked: Asked, massKg = asked.aeroplane?.massKg): DepartureLimits {
  const { aeroplane, runway, phase, takeOffMostM, climbLeastMs, climbGradientLeast, field } = asked;
  const entered =
    aeroplane === null || massKg === undefined
      ? null
      : { book: aeroplane.book, massKg, elevationM: field.elevationM };
  const surface = aeroplane?.surface ?? null;
  const distance =
    takeOffMostM === null || entered === null || runway === null || surface === null
      ? null
      : {
          mostM: takeOffMostM,
          distanceM: distanceRows(
            entered,
            phase === 'landing' ? 'landing' : 'takeOff',
            runwayCases(runway, phase, surface),
          ),
        };
  return {
    densityAltitudeMostM: asked.densityAltitudeMostM,
    takeOff: phase === 'take-off' ? distance : null,
    landing: phase === 'landing' ? distance : null,
    climbRate:
      climbLeastMs === null || entered === null
        ? null
        : { leastMs: climbLeastMs, rateMs: climbRows(entered) },
    climbGradient:
      climbGradientLeast === null || entered === null
        ? null
        : { leastRatio: climbGradientLeast, gradientRatio: climbGradientRows(entered) },
    crosswindMostMs: asked.crosswindMostMs,
    tailwindMostMs: asked.tailwindMostMs,
    gustMostMs: asked.gustMostMs,
  };
}

export function ruleOf({ daylight, beforeSunriseMin, afterSunsetMin }: Asked): DaylightRule {
  return daylight === 'local'
    ? { rule: 'local', beforeSunriseS: beforeSunriseMin * 60, afterSunsetS: afterSunsetMin * 60 }
    : { rule: daylight };
}

export function flightOf({ phase, flightMin, reserveMin }: Asked): AskedFlight {
  return { phase, flightS: flightMin * 60, reserveS: reserveMin * 60 };
}

/** As the answer names it. */
export function askedOutput(asked: Asked) {
  const { field, runway, loading, aeroplane, ...rest } = asked;
  return {
    ...rest,
    hasTakeOff: aeroplane !== null && answersDistance(aeroplane),
    hasClimb: aeroplane !== null && aeroplane.book.climb !== null,
    hasClimbGradient: aeroplane !== null && answersGradient(aeroplane, runway),
    hasLanding: aeroplane !== null && answersLanding(aeroplane),
    availableM: runway === null ? null : availableM(runway, asked.phase),
    field: { id: field.id, name: field.name, elevationM: field.elevationM, timeZone: field.timeZone },
    loading,
    runway:
      runway === null
        ? null
        : {
            id: runway.record.id,
            words: runwayWords(runway),
            end: runway.end,
            lengthM: runway.record.lengthM,
            surface: runway.record.surface,
            slopes: slopesOf(runway),
          },
  };
}
