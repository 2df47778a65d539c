import { z } from 'zod';
import type { PerformanceRecord } from '../../shared-calc/performance/records.ts';
import { source } from './aircraft-schema.ts';
import { day, id, words } from './ranges.ts';

// The ranges of shared-calc/performance: what the tables can be read with.
const place = {
  massKg: z.number().min(50).max(5000).nullable(),
  pressureAltitudeM: z.number().min(-1500).max(7000).nullable(),
  temperatureC: z.number().min(-60).max(65).nullable(),
  headwindMs: z.number().min(-60).max(60).nullable(),
};
const distanceM = z.number().min(1).max(9_999);
const speedMs = z.number().min(5).max(150);
const safety = z.strictObject({
  factorRatio: z.number().min(1).max(3),
  source: z.string().trim().min(1).max(120),
});
/** Kept by the program: a changed figure takes the day of its change. */
const enteredOn = day.nullable().default(null);
const readingSdRatio = z.number().min(0).max(0.5);

const note = z.strictObject({
  counts: z.enum([
    'headwind',
    'tailwind',
    'aboveStandard',
    'slope',
    'dryGrass',
    'wetGrass',
    'wetPaved',
    'softGround',
  ]),
  amount: z.number().min(1e-4).max(100).nullable(),
  mostAmount: z.number().min(1e-4).max(100).nullable(),
  changeRatio: z.number().min(-0.5).max(2),
  shareOf: z.enum(['each', 'groundRoll', 'overObstacle']),
});

const distanceTable = z.strictObject({
  words,
  surface: z.enum(['paved', 'dryGrass']),
  rows: z
    .array(
      z.strictObject({
        ...place,
        groundRollM: distanceM.nullable(),
        overObstacleM: distanceM.nullable(),
        asPrinted: z.boolean(),
      }),
    )
    .max(400),
  notes: z.array(note).max(12),
  windMargin: z.enum(['none', 'included']),
  speedMs: speedMs.nullable(),
  safety,
  readingSdRatio,
  against: z.enum(['overObstacle', 'groundRoll']),
  source,
  enteredOn,
});

const climbTable = z.strictObject({
  words,
  rows: z
    .array(
      z.strictObject({
        ...place,
        climbRateMs: z.number().min(-5).max(30).nullable(),
        speedMs: speedMs.nullable(),
        asPrinted: z.boolean(),
      }),
    )
    .max(400),
  readingSdRatio,
  source,
  enteredOn,
});

const windLimitMs = z.number().min(0).max(40).nullable();

export const performance = z.strictObject({
  aircraftId: id,
  printed: z.strictObject({
    altitude: z.enum(['ft', 'm']),
    temperature: z.enum(['degC', 'degF']),
    distance: z.enum(['m', 'ft']),
    climbRate: z.enum(['ft/min', 'm/s']),
    speed: z.enum(['kt', 'mph', 'km/h']),
  }),
  takeOff: distanceTable.nullable(),
  landing: distanceTable.nullable(),
  climb: climbTable.nullable(),
  seaLevel: z
    .strictObject({
      groundRollM: distanceM,
      overObstacleM: distanceM.min(2),
      massKg: z.number().min(50).max(5000),
      safety,
      readingSdRatio,
      source,
    })
    .nullable(),
  wind: z.strictObject({
    demonstratedCrosswindMs: windLimitMs,
    ownCrosswindMs: windLimitMs,
    ownTailwindMs: windLimitMs,
    source,
  }),
}) satisfies z.ZodType<PerformanceRecord>;
