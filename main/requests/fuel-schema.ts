import { z } from 'zod';
import type {
  CalibrationRecord,
  ContainerRecord,
  FillTestRecord,
  FuelCardRecord,
} from '../../shared-calc/fuel/records.ts';
import type { FuelCheckRecord } from '../../shared-calc/fuel/checks/check-record.ts';
import type { DipstickRecord } from '../../shared-calc/fuel/dipstick/dipstick-record.ts';
import { day, id, name, words } from './ranges.ts';

// Wide enough for every light aeroplane's tank; shared-calc refuses what the calculations cannot take.
const volumeL = z.number().min(0).max(1000);
const step = z.number().positive();

export const reading = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('scale'), positionRatio: z.number().min(0).max(1) }),
  z.strictObject({ at: z.literal('emptyStop') }),
  z.strictObject({ at: z.literal('fullStop') }),
]);

const scale = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fractions'), denominator: z.int().min(2).max(100) }),
  z.strictObject({
    kind: z.literal('volume'),
    unit: z.enum(['L', 'US gal', 'imp gal']),
    atEmpty: z.number(),
    atFull: z.number(),
    step,
  }),
  z.strictObject({ kind: z.literal('bars'), count: z.int().min(2).max(100) }),
  z.strictObject({ kind: z.literal('percent'), step }),
  z.strictObject({ kind: z.literal('numbers'), atEmpty: z.number(), atFull: z.number(), step }),
]);

const start = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('engineFeed') }),
  z.strictObject({ from: z.literal('sump') }),
  z.strictObject({ from: z.literal('known'), usableL: z.number().min(-100).max(1000) }),
]);

const pour = z.strictObject({
  id,
  volumeL,
  reading: reading.nullable(),
  asideReason: z.string().trim().min(1).max(200).nullable(),
  stickMm: z.number().min(0).max(2000).nullable().default(null),
  atEpochS: z.number().min(0),
  written: z.strictObject({ volumeL, reading: reading.nullable() }).nullable().default(null),
});

const run = z.strictObject({
  id,
  direction: z.enum(['filling', 'draining']),
  start,
  startSdL: z.number().min(0).max(50).nullable().default(null),
  containerId: id.nullable(),
  endsAt: z.enum(['brim', 'gaugeStopped']).nullable().default(null),
  pours: z.array(pour).max(200),
});

export const fillTestFields = z.strictObject({
  tankId: id,
  testedOn: day,
  attitude: z.enum(['ground', 'level flight']),
  power: z.enum(['battery', 'engine running']),
  supplyV: z.number().min(0).max(60).nullable().default(null),
  feeds: z.enum(['shut', 'open']).nullable().default(null),
  fuelKind: z.string().trim().min(1).max(80),
  fuelTemperatureC: z.number().min(-40).max(60).nullable(),
  scale,
  precautions: z.array(z.string().regex(/^[a-z][a-zA-Z]{0,39}$/)).max(40),
  note: words,
  runs: z.array(run).max(20),
  pins: z
    .array(
      z.strictObject({
        id,
        positionRatio: z.number().min(0).max(1),
        usableL: volumeL,
        sdL: z.number().min(0.01).max(100),
        note: z.string().trim().max(200),
      }),
    )
    .max(20)
    .default([]),
  smoothness: z.number().min(0.01).max(10).nullable().default(null),
});

export const fillTest = fillTestFields.extend({ id }) satisfies z.ZodType<FillTestRecord>;

const isotonicCurve = z.strictObject({
  method: z.literal('isotonicMeansMonotoneCubic'),
  knots: z.array(z.strictObject({ positionRatio: z.number(), lowL: z.number(), highL: z.number() })),
  resolutionRatio: z.number(),
  usableCapacityL: z.number(),
  offEmptyLeastL: z.number(),
  atEmptyMostL: z.number(),
  readingCount: z.int(),
});

const bandedCurve = z.strictObject({
  method: z.literal('logSlopeRefits'),
  knots: z.array(
    z.strictObject({
      positionRatio: z.number(),
      lowL: z.number(),
      bestL: z.number(),
      highL: z.number(),
      readLowL: z.number(),
      readHighL: z.number(),
    }),
  ),
  resolutionRatio: z.number(),
  usableCapacityL: z.number(),
  readingCount: z.int(),
  asideCount: z.int(),
  fewRows: z.boolean(),
});

const curve = z.discriminatedUnion('method', [isotonicCurve, bandedCurve]);

export const calibration = z.strictObject({
  id,
  tankId: id,
  testIds: z.array(id),
  checkIds: z.array(id),
  adoptedOn: day,
  methodVersion: z.int(),
  scale,
  curve,
  byHand: z.strictObject({
    correctedCount: z.int(),
    pinnedCount: z.int(),
    smoothness: z.number().nullable(),
  }),
  withdrawn: z.boolean(),
}) satisfies z.ZodType<CalibrationRecord>;

export const containerFields = z.strictObject({
  name,
  nominalL: z.number().min(0.05).max(200).nullable(),
  how: z.enum(['marked', 'weighed', 'meter']),
  scaleSdRatio: z.number().min(0).max(0.2),
  pourSdL: z.number().min(0).max(5),
  weighed: z
    .strictObject({
      densityKgPerL: z.number().min(0.653).max(0.838),
      temperatureC: z.number().min(-40).max(60),
    })
    .nullable()
    .default(null),
});

export const container = containerFields.extend({ id }) satisfies z.ZodType<ContainerRecord>;

export const serial = z.int().min(1);
export const cardReading = z.enum(['needleOnMark', 'nearestDivision']);

export const fuelCard = z.strictObject({
  serial,
  calibrationId: id,
  printedOn: day,
  reading: cardReading,
  withdrawn: z.boolean(),
}) satisfies z.ZodType<FuelCardRecord>;

const attitude = z.enum(['ground', 'level flight']);

/** A check as a person logs it. */
export const fuelCheckFields = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('refill'),
    tankId: id,
    checkedOn: day,
    attitude,
    before: reading,
    after: reading,
    flightS: z.number().min(300).max(86_400).nullable(),
    refillL: z.number().min(0.1).max(1000),
    stateSdL: z.number().min(0).max(100),
    containerId: id.nullable(),
    note: words,
  }),
  z.strictObject({ kind: z.literal('zero'), tankId: id, checkedOn: day, attitude, reading, note: words }),
]);

const kept = { id, withdrawn: z.boolean() };
export const fuelCheck = z.discriminatedUnion('kind', [
  fuelCheckFields.options[0].extend(kept),
  fuelCheckFields.options[1].extend(kept),
]) satisfies z.ZodType<FuelCheckRecord>;

export const dipstickFields = z.strictObject({
  tankId: id,
  kind: z.enum(['dipstick', 'sight tube']),
  lengthMm: z.number().min(20).max(2000),
  readToMm: z.number().min(1).max(50),
});
export const dipstick = dipstickFields.extend({ id }) satisfies z.ZodType<DipstickRecord>;
