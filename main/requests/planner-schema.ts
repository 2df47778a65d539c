import { z } from 'zod';
import { LIMIT_NAMES } from '../../shared-calc/climate/departure/judge.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { day, id, minutes } from './ranges.ts';

/** Shares of days that can be asked, from one in two to 19 in 20. */
export const PLANNER_SHARES = [0.5, 0.75, 0.9, 0.95] as const;

/** As far as the sun is worked out. */
const FIRST_YEAR = 1902;
const LAST_YEAR = 2099;
const plannedDay = day.refine(
  (text) => Number(text.slice(0, 4)) >= FIRST_YEAR && Number(text.slice(0, 4)) <= LAST_YEAR,
  `daylight is worked out for the years ${String(FIRST_YEAR)} to ${String(LAST_YEAR)}`,
);
const windMs = z.number().min(0).max(30).nullable();

/**
 * What is asked of a departure; each part left out takes its usual value, null means that this limit is not asked.
 * The window keeps exactly this for each field.
 */
export const plannerQuestion = z.strictObject({
  /** Left out: the current loading of the aeroplane. */
  loadingId: id.nullable().optional(),
  /** Left out: a take-off. */
  phase: z.enum(['take-off', 'landing']).optional(),
  /** Left behind of that loading at take-off. */
  lighterKg: z.number().min(0).max(500).optional(),
  /** Left out: the longest runway. */
  runwayId: id.nullable().optional(),
  end: z.enum(['first', 'second', 'into the wind']).optional(),
  /** Left out: today by the field's clock. */
  day: plannedDay.optional(),
  share: z.union(PLANNER_SHARES.map((each) => z.literal(each))).optional(),
  /** Of the take-off, or of the landing. Left out: all of the runway where the aeroplane has a table. */
  takeOffMostM: z.number().min(30).max(8000).nullable().optional(),
  /** The same as a share of what there is of the runway; stands before the metres. Left out or null: not asked. */
  runwayShareMost: z.number().min(0.1).max(1).nullable().optional(),
  climbLeastMs: z.number().min(0).max(20).nullable().optional(),
  /** Over the ground, as a ratio. */
  climbGradientLeast: z.number().min(0).max(0.5).nullable().optional(),
  /** Left out: 2,500 ft above the field where there is no take-off table, else not asked. */
  densityAltitudeMostM: z.number().min(-1000).max(6000).nullable().optional(),
  crosswindMostMs: windMs.optional(),
  tailwindMostMs: windMs.optional(),
  gustMostMs: z.number().min(0).max(60).nullable().optional(),
  daylight: z.enum(['sunset', 'civil twilight', 'local']).optional(),
  /** For the local rule. */
  beforeSunriseMin: z.number().min(0).max(180).optional(),
  afterSunsetMin: z.number().min(0).max(180).optional(),
  /** After the take-off, or before the landing. Left out: as the loading plans it. */
  flightMin: minutes.optional(),
  reserveMin: minutes.optional(),
});
export type PlannerQuestion = z.output<typeof plannerQuestion>;

const metric = UNIT_PRESETS.metric;
/** The units in which the answer speaks, and whose steps the rule to take along is rounded to. */
export const plannerUnits = z.strictObject({
  altitude: z.enum(['m', 'ft']).default(metric.altitude),
  temperature: z.enum(['degC', 'degF', 'K']).default(metric.temperature),
  altimeterSetting: z.enum(['hPa', 'inHg']).default(metric.altimeterSetting),
  distance: z.enum(['m', 'ft']).default(metric.distance),
  speed: z.enum(['kt', 'km/h', 'mph', 'm/s']).default(metric.speed),
  climbRate: z.enum(['ft/min', 'm/s']).default(metric.climbRate),
  mass: z.enum(['kg', 'lb']).default('kg'),
});

export type PlannerUnitsInput = z.output<typeof plannerUnits>;

export const limitName = z.enum(LIMIT_NAMES);
export const stretch = z.strictObject({ fromH: z.number(), toH: z.number() });
const shareOrNull = z.number().nullable();

export const plannedHour = z.strictObject({
  hour: z.int(),
  dayCount: z.int(),
  metCount: z.int(),
  /** Days that each limit fails, in the order of limitNames. */
  failCounts: z.array(z.int()),
  share: shareOrNull,
  shareLow: shareOrNull,
  shareHigh: shareOrNull,
  failsMost: limitName.nullable(),
  densityAltitudeM: z.number().nullable(),
  takeOffM: z.number().nullable(),
  climbRateMs: z.number().nullable(),
  climbGradientRatio: z.number().nullable(),
  temperatureC: z.number().nullable(),
});

export const departurePlan = z.strictObject({
  limitNames: z.array(limitName),
  hours: z.array(plannedHour),
  halfDays: z.int(),
  daysNeeded: z.int(),
  yearCount: z.int(),
  isFewYears: z.boolean(),
  answeredHours: z.array(z.int()),
  windows: z.array(
    z.strictObject({
      weather: stretch,
      takeOff: stretch.nullable(),
      leastShare: shareOrNull,
      shareLow: shareOrNull,
      shareHigh: shareOrNull,
      endsBy: limitName.nullable(),
      beginsBy: limitName.nullable(),
      halfAtH: z.number().nullable(),
    }),
  ),
  resampled: z.strictObject({ of: z.enum(['years', 'blocks of five days']), groupCount: z.int() }),
  takeAlong: z
    .strictObject({
      temperatureMostC: z.number(),
      settingLeastHpa: z.number(),
      dewPointMostC: z.number(),
      temperatureBinds: z.boolean(),
      settingBinds: z.boolean(),
      goesCount: z.int(),
      dayCount: z.int(),
    })
    .nullable(),
});

/** The question with every part filled in: what was answered. */
export const plannerAsked = z.strictObject({
  field: z.strictObject({ id, name: z.string(), elevationM: z.number(), timeZone: z.string() }),
  loading: z
    .strictObject({
      id,
      name: z.string(),
      aircraftId: id,
      aeroplane: z.string(),
      /** As entered, and its upper figure (95 times in 100); null where the loading gives no take-off mass yet. */
      massKg: z.number().nullable(),
      massHighKg: z.number().nullable(),
      /** At the planned landing; at take-off where none is planned. */
      landingKg: z.number().nullable(),
      landingHighKg: z.number().nullable(),
      verdict: z.enum(['inside', 'outside', 'not checked']),
    })
    .nullable(),
  runway: z
    .strictObject({
      id,
      words: z.string(),
      end: z.enum(['first', 'second', 'into the wind']),
      lengthM: z.number(),
      surface: z.string(),
      /** Uphill from each end in use; null where the slope is not known. */
      slopes: z.array(z.number()).nullable(),
    })
    .nullable(),
  phase: z.enum(['take-off', 'landing']),
  lighterKg: z.number(),
  day: z.string(),
  share: z.number(),
  takeOffMostM: z.number().nullable(),
  runwayShareMost: z.number().nullable(),
  climbLeastMs: z.number().nullable(),
  climbGradientLeast: z.number().nullable(),
  densityAltitudeMostM: z.number().nullable(),
  crosswindMostMs: windMs,
  tailwindMostMs: windMs,
  gustMostMs: z.number().nullable(),
  daylight: z.enum(['sunset', 'civil twilight', 'local']),
  beforeSunriseMin: z.number(),
  afterSunsetMin: z.number(),
  flightMin: z.number(),
  reserveMin: z.number(),
  /** Where no landing is planned in Loading the hour that stands in for it is said. */
  isFlightAssumed: z.boolean(),
  /** Whether a take-off distance, a climb or its gradient can be asked of this aeroplane here. */
  hasTakeOff: z.boolean(),
  hasClimb: z.boolean(),
  hasClimbGradient: z.boolean(),
  hasLanding: z.boolean(),
  /** What there is of the runway for it: a landing begins behind a displaced threshold. */
  availableM: z.number().nullable(),
});
