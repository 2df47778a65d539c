import { z } from 'zod';
import { FUEL_LEAST_C, FUEL_MOST_C } from '../../shared-calc/fuel/blend-density.ts';
import type { LoadingRecord } from '../../shared-calc/loading/records.ts';
import { reading } from './fuel-schema.ts';
import { armM, flowLPerH, id, minutes, name, volumeL } from './ranges.ts';

const typed = z.strictObject({
  name,
  massKg: z.number().min(0).max(1_000),
  known: z.enum(['weighed', 'stated', 'standard']),
  sdKg: z.number().min(0).max(100),
  biasKg: z.number().min(-50).max(50),
});

const item = z.strictObject({
  id,
  stationId: id,
  seatArmM: armM.nullable(),
  personId: id.nullable(),
  typed: typed.nullable(),
});

/** A loading without its id: what `loading.put` takes (the id is given back). */
export const loadingFields = z.strictObject({
  aircraftId: id,
  name,
  category: z.string().trim().max(40),
  items: z.array(item).max(60),
  fuel: z
    .array(
      z.strictObject({
        tankId: id,
        lowL: volumeL,
        bestL: volumeL,
        highL: volumeL,
        temperatureC: z.number().min(FUEL_LEAST_C).max(FUEL_MOST_C).optional(),
        gauge: z.strictObject({ reading, calibrationId: id }).nullable().exactOptional(),
      }),
    )
    .max(8),
  burn: z.strictObject({
    kind: z.enum(['sequence', 'together', 'alternate']),
    tankIds: z.array(id).max(8),
    everyMin: z.number().min(1).max(600).nullable(),
    returnLine: z.strictObject({ intoTankId: id, pumpLPerH: flowLPerH }).nullable(),
  }),
  flight: z.strictObject({
    taxiL: volumeL,
    climbL: volumeL,
    climbMin: minutes,
    cruiseLPerH: flowLPerH,
    landingAfterS: z.number().min(0).max(172_800).nullable(),
    reserveMin: minutes,
  }),
});

export const loading = loadingFields.extend({ id }) satisfies z.ZodType<LoadingRecord>;
