import { Temporal } from 'temporal-polyfill/implementation';
import type { DaylightRule } from '../../shared-calc/climate/departure/daylight-span.ts';
import { climbRows, distanceRows } from '../../shared-calc/climate/departure/aeroplane-rows.ts';
import type { DepartureLimits } from '../../shared-calc/climate/departure/departure-limits.ts';
import { spreadAfterL, Z_95 } from '../../shared-calc/loading/spread.ts';
import { performanceBook, type PerformanceBook } from '../../shared-calc/performance/departure-book.ts';
import type { WindLimitsRecord } from '../../shared-calc/performance/records.ts';
import { availableLengthM } from '../../shared-calc/performance/departure-figures.ts';
import type { RunwayPhase } from '../../shared-calc/performance/published-factors.ts';
import { surfaceKindOf, type SurfaceKind } from '../../shared-calc/performance/surface.ts';
import { M_PER_FT } from '../../shared-calc/units/constants.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { loadingReview } from '../../shared-calc/wording/loading-review.ts';
import type { FieldRecord, RunwayRecord } from '../store/fields.ts';
import { readLoading } from '../store/loadings.ts';
import { readPerformance } from '../store/performance.ts';
import { readWeighings } from '../store/weighings.ts';
import { requireAircraft } from './aircraft.ts';
import type { Context } from './define.ts';
import { loadingInputs } from './loading-review.ts';
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

export interface Asked extends Filled<
  | 'phase'
  | 'lighterKg'
  | 'day'
  | 'share'
  | 'takeOffMostM'
  | 'climbLeastMs'
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
  runway: { record: RunwayRecord; end: 'first' | 'second' | 'into the wind' } | null;
  isFlightAssumed: boolean;
  /** What the aeroplane's manual answers here; null where it has no table, or there is nothing to enter it with. */
  aeroplane: AskedAeroplane | null;
}

interface AskedAeroplane {
  book: PerformanceBook;
  wind: WindLimitsRecord;
  /** The upper figure, what is left behind taken off. */
  massKg: number;
  /** Between these a load is looked for: the empty aeroplane and its largest take-off mass. */
  leastKg: number;
  mostKg: number;
  fuelKinds: string[];
  /** null where the surface is not known: then no distance is answered. */
  surface: SurfaceKind | null;
}

export interface AskedLoading {
  id: string;
  name: string;
  aeroplane: string;
  massKg: number | null;
  massHighKg: number | null;
  landingHighKg: number | null;
  verdict: 'inside' | 'outside' | 'not checked';
}

/** Less than any aeroplane of the class weighs: what a table can be entered with. */
const LEAST_MASS_KG = 50;

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
  const wantedPhase = question.phase ?? 'take-off';
  const aeroplane =
    record === null || loading === null
      ? null
      : askedAeroplane(db, record.aircraftId, loading, runway, question.lighterKg ?? 0, wantedPhase);
  // Without a table of landings there is none to ask.
  const phase = aeroplane !== null && answersLanding(aeroplane) ? wantedPhase : 'take-off';
  const hasDistance =
    aeroplane !== null && (phase === 'landing' ? answersLanding(aeroplane) : answersDistance(aeroplane));
  const lengthM = runway === null ? 0 : availableM(runway, phase);
  return {
    field,
    loading,
    runway,
    aeroplane,
    phase,
    lighterKg: question.lighterKg ?? 0,
    day:
      question.day ??
      Temporal.Instant.fromEpochMilliseconds(context.nowEpochS() * 1000)
        .toZonedDateTimeISO(field.timeZone)
        .toPlainDate()
        .toString(),
    share: question.share ?? 0.9,
    // More than the whole runway was asked of another one.
    takeOffMostM: !hasDistance
      ? null
      : question.takeOffMostM === undefined
        ? lengthM
        : question.takeOffMostM === null
          ? null
          : Math.min(question.takeOffMostM, lengthM),
    climbLeastMs:
      aeroplane?.book.climb == null || phase === 'landing' ? null : (question.climbLeastMs ?? null),
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
    flightMin:
      phase === 'landing'
        ? 0
        : (question.flightMin ?? (planned === null ? usualFlightMin : Math.ceil(planned / 60))),
    reserveMin: question.reserveMin ?? record?.flight.reserveMin ?? usualReserveMin,
    isFlightAssumed: phase === 'take-off' && question.flightMin === undefined && planned === null,
  };
}

/** The take-off mass of a loading with its upper figure: what an aeroplane that weighs more than said would need. */
function askedLoading(db: Context['db'], loadingId: string): AskedLoading {
  const inputs = loadingInputs(db, loadingId);
  const { result, verdict } = loadingReview(inputs, UNIT_PRESETS.metric);
  const named = { id: loadingId, name: inputs.loading.name, aeroplane: inputs.aircraft.name, verdict };
  if (result === null) return { ...named, massKg: null, massHighKg: null, landingHighKg: null };
  const highAfter = (burnedL: number) => {
    const { massKg, massSdKg } = spreadAfterL(result.model, result.path, burnedL);
    return { massKg, highKg: massKg + Z_95 * massSdKg };
  };
  const { massKg, highKg } = highAfter(result.takeOff.burnedL);
  const landing = result.landing === null ? null : highAfter(result.landing.burnedL);
  return { ...named, massKg, massHighKg: highKg, landingHighKg: landing?.highKg ?? highKg };
}

function askedAeroplane(
  db: Context['db'],
  aircraftId: string,
  { massHighKg, landingHighKg }: AskedLoading,
  runway: Asked['runway'],
  lighterKg: number,
  phase: 'take-off' | 'landing',
): AskedAeroplane | null {
  const record = readPerformance(db, aircraftId);
  const highKg = phase === 'landing' ? landingHighKg : massHighKg;
  if (record === null || massHighKg === null || highKg === null) return null;
  const { performance, maxMasses, tanks } = requireAircraft(db, aircraftId);
  const { bestGlideMs, bestGlideRatio } = performance;
  const emptyKg = readWeighings(db, aircraftId).find(({ withdrawn }) => !withdrawn)?.emptyMassKg;
  const leastKg = Math.max(LEAST_MASS_KG, emptyKg ?? LEAST_MASS_KG);
  return {
    book: performanceBook(record, { bestGlideMs, bestGlideRatio }),
    wind: record.wind,
    leastKg,
    mostKg: Math.max(leastKg, maxMasses.takeOffKg ?? massHighKg),
    fuelKinds: tanks.map(({ fuelKind }) => fuelKind),
    massKg: Math.max(LEAST_MASS_KG, highKg - lighterKg),
    surface: runway === null ? null : surfaceKindOf(runway.record.surface),
  };
}

/** The pilot's own limit, else what the maker demonstrated; without a runway there is no crosswind. */
function usualCrosswindMs(runway: Asked['runway'], aeroplane: AskedAeroplane | null): number | null {
  if (runway === null || aeroplane === null) return null;
  return aeroplane.wind.ownCrosswindMs ?? aeroplane.wind.demonstratedCrosswindMs;
}

function usualTailwindMs(runway: Asked['runway'], aeroplane: AskedAeroplane | null): number | null {
  return runway === null ? null : (aeroplane?.wind.ownTailwindMs ?? null);
}

function answersDistance({ book, surface }: AskedAeroplane): boolean {
  return surface !== null && (book.takeOff !== null || book.seaLevel !== null);
}

function answersLanding({ book, surface }: AskedAeroplane): boolean {
  return surface !== null && book.landing !== null;
}

/** Into the wind either end may be used: the shorter one counts. */
function availableM({ record, end }: NonNullable<Asked['runway']>, phase: 'take-off' | 'landing'): number {
  const ends = record.ends.filter(
    (_, index) => end === 'into the wind' || (end === 'first') === (index === 0),
  );
  return Math.min(
    ...ends.map(({ displacedThresholdM }) =>
      availableLengthM(phase === 'landing' ? 'landing' : 'takeOff', record.lengthM, displacedThresholdM),
    ),
  );
}

function askedRunway(field: FieldRecord, question: PlannerQuestion): Asked['runway'] {
  if (question.runwayId === null) return null;
  const longest = field.runways.reduce<RunwayRecord | null>(
    (found, runway) => (found === null || runway.lengthM > found.lengthM ? runway : found),
    null,
  );
  const record = field.runways.find(({ id }) => id === question.runwayId) ?? longest;
  return record === null ? null : { record, end: question.end ?? 'into the wind' };
}

/** True headings of the take-off: both where it is into the wind. */
export function headingsOf(runway: Asked['runway']): number[] {
  if (runway === null) return [];
  const [first, second] = runway.record.ends;
  if (runway.end === 'first') return [first.trueHeadingDeg];
  if (runway.end === 'second') return [second.trueHeadingDeg];
  return [first.trueHeadingDeg, second.trueHeadingDeg];
}

/** @param massKg another mass than that of the loading asked: for questions asked backwards */
export function limitsOf(asked: Asked, massKg = asked.aeroplane?.massKg): DepartureLimits {
  const { aeroplane, runway, phase, takeOffMostM, climbLeastMs, field } = asked;
  const entered =
    aeroplane === null || massKg === undefined
      ? null
      : { book: aeroplane.book, massKg, elevationM: field.elevationM };
  const surface = aeroplane?.surface ?? null;
  const distance = (of: RunwayPhase) =>
    takeOffMostM === null || entered === null || runway === null || surface === null
      ? null
      : {
          mostM: takeOffMostM,
          distanceM: distanceRows(entered, of, {
            surface,
            slopeRatio: 0,
            availableM: availableM(runway, phase),
          }),
        };
  return {
    densityAltitudeMostM: asked.densityAltitudeMostM,
    takeOff: phase === 'take-off' ? distance('takeOff') : null,
    landing: phase === 'landing' ? distance('landing') : null,
    climbRate:
      climbLeastMs === null || entered === null
        ? null
        : { leastMs: climbLeastMs, rateMs: climbRows(entered) },
    climbGradient: null,
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

/** "06 or 24, into the wind"; "24". */
export function runwayWords({ record, end }: NonNullable<Asked['runway']>): string {
  const [first, second] = record.ends;
  if (end === 'first') return first.ident;
  if (end === 'second') return second.ident;
  return `${first.ident} or ${second.ident}, into the wind`;
}

/** As the answer names it. */
export function askedOutput(asked: Asked) {
  const { field, runway, loading, aeroplane, ...rest } = asked;
  return {
    ...rest,
    hasTakeOff: aeroplane !== null && answersDistance(aeroplane),
    hasClimb: aeroplane !== null && aeroplane.book.climb !== null,
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
          },
  };
}
