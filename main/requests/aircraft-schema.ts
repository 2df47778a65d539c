import { z } from 'zod';
import type { AircraftRecord, WeighingRecord } from '../../shared-calc/loading/records.ts';
import {
  armM,
  day,
  densityKgPerL,
  flowLPerH,
  id,
  lateralArmM,
  macPercent,
  massKg,
  minutes,
  momentKgM,
  name,
  volumeL,
  words,
} from './ranges.ts';

export const source = z.strictObject({
  from: z.enum(['manual', 'measured', 'estimated']),
  comparedOn: day.nullable(),
});

const station = z.strictObject({
  id,
  name,
  kind: z.enum(['seat', 'baggage', 'ballast', 'other']),
  arm: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('fixed'), armM }),
    z.strictObject({ kind: z.literal('adjustable'), foremostM: armM, aftmostM: armM }),
  ]),
  lateralArmM: lateralArmM.optional(),
  leastKg: massKg.nullable(),
  mostKg: massKg.nullable(),
  source,
});

const group = z.strictObject({
  id,
  name,
  stationIds: z.array(id).min(1).max(24),
  emptyPartKg: massKg,
  mostKg: massKg,
});

const counts = z.enum(['usable', 'total']);
const tankArm = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fixed'), armM }),
  z.strictObject({
    kind: z.literal('armTable'),
    counts,
    knots: z.array(z.strictObject({ volumeL, armM })).min(2).max(100),
  }),
  z.strictObject({
    kind: z.literal('momentTable'),
    counts,
    tableDensityKgPerL: densityKgPerL,
    knots: z.array(z.strictObject({ volumeL, momentKgM })).min(2).max(100),
  }),
]);

/** The fuel by its kind, from which its density follows. */
const blend = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('avgas') }),
  z.strictObject({ kind: z.literal('motor gasoline'), ethanolPercent: z.number().min(0).max(100) }),
  z.strictObject({ kind: z.literal('own'), at15KgPerL: z.number().min(0.653).max(0.838) }),
]);

const tank = z.strictObject({
  id,
  name,
  side: z.enum(['left', 'right', 'centre']),
  capacityL: volumeL,
  unusableL: volumeL,
  arm: tankArm,
  lateralArmM: lateralArmM.optional(),
  fuelKind: name,
  densityKgPerL,
  blend: blend.optional(),
  source,
});

/** The range of `across` depends on what it is. */
const envelopeOf = <A extends 'arm' | 'moment' | 'mac'>(across: A, range: z.ZodNumber) =>
  z.strictObject({
    id,
    name,
    category: z.string().trim().max(40),
    phase: z.enum(['ramp', 'take-off', 'flight', 'landing', 'zero-fuel']),
    across: z.literal(across),
    vertices: z
      .array(z.strictObject({ across: range, massKg }))
      .min(3)
      .max(60),
    lowestIsLimit: z.boolean().optional(),
    source,
  });
const envelope = z.discriminatedUnion('across', [
  envelopeOf('arm', armM),
  envelopeOf('moment', momentKgM),
  envelopeOf('mac', macPercent),
]);

const limitsOf = (limit: z.ZodNumber) => ({
  left: limit.nullable(),
  right: limit.nullable(),
  oilArmM: lateralArmM.nullable(),
});
const lateral = z.discriminatedUnion('across', [
  z.strictObject({ across: z.literal('arm'), ...limitsOf(lateralArmM) }),
  z.strictObject({ across: z.literal('moment'), ...limitsOf(momentKgM) }),
]);

/** An aeroplane without its id: what `aircraft.put` takes (the id is given back). */
export const aircraftFields = z.strictObject({
  name,
  identification: z.string().trim().max(40),
  datumWords: words,
  printed: z.strictObject({
    mass: z.enum(['kg', 'lb']),
    arm: z.enum(['m', 'cm', 'mm', 'in']),
    volume: z.enum(['L', 'US gal', 'imp gal']),
    momentPer: z.union([z.literal(100), z.literal(1000)]).optional(),
  }),
  mac: z.strictObject({ leadingEdgeArmM: armM, lengthM: z.number().min(0.1).max(10) }).nullable(),
  gear: z.strictObject({
    kind: z.enum(['nose wheel', 'tail wheel']),
    noseOrTailArmM: armM.nullable(),
    mainArmM: armM.nullable(),
  }),
  tailEndArmM: armM.nullable(),
  maxMasses: z.strictObject({
    rampKg: massKg.nullable(),
    takeOffKg: massKg.nullable(),
    landingKg: massKg.nullable(),
    zeroFuelKg: massKg.nullable(),
  }),
  leftRightMostKg: massKg.nullable(),
  lateral: lateral.optional(),
  oil: z.strictObject({ massKg: z.number().min(0).max(100), armM }).nullable(),
  stations: z.array(station).max(24),
  groups: z.array(group).max(12),
  tanks: z.array(tank).max(8),
  envelopes: z.array(envelope).max(12),
  performance: z.strictObject({
    bestGlideMs: z.number().min(5).max(150).nullable(),
    bestGlideRatio: z.number().min(1).max(80).nullable(),
    fuelFlowLPerH: flowLPerH.nullable(),
    taxiFuelL: volumeL,
    legalReserveMin: minutes,
    ownReserveMin: minutes,
  }),
  limitsSource: source,
  performanceSource: source,
});

export const aircraft = aircraftFields.extend({ id }) satisfies z.ZodType<AircraftRecord>;

const scaleReading = z.strictObject({
  wheel: name,
  armM,
  readingKg: massKg,
  tareKg: massKg,
  lateralArmM: lateralArmM.optional(),
});

/** What `weighing.add` takes; the record gains an id and can only be withdrawn afterwards. */
export const weighingFields = z.strictObject({
  aircraftId: id,
  weighedOn: day,
  how: z.enum(['scales', 'maker', 'equipment change', 'other']),
  emptyMassKg: massKg.min(1),
  emptyArmM: armM,
  massSdKg: z.number().min(0).max(500),
  armSdM: z.number().min(0).max(1),
  lateralArmM: lateralArmM.optional(),
  lateralArmSdM: z.number().min(0).max(1).optional(),
  unusableFuelIncluded: z.boolean(),
  oilIncluded: z.boolean(),
  note: words,
  /** The scales as read, kept beside the result; none where the weighing was somebody else's. */
  readings: z.array(scaleReading).max(8),
});

export const weighing = weighingFields.extend({
  id,
  withdrawn: z.boolean(),
}) satisfies z.ZodType<WeighingRecord>;
