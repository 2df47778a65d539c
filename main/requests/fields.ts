import timeZoneAt from '@photostructure/tz-lookup';
import { z } from 'zod';
import { readField, readFields, writeField, type FieldRecord } from '../store/fields.ts';
import { weatherStation } from '../store/weather-stations.ts';
import { listedAirport } from './airports.ts';
import { change, read, type Context } from './define.ts';
import { elevationM, latitudeDeg, longitudeDeg } from './places.ts';
import { Refusal } from './problem.ts';
import { id, name, named } from './ranges.ts';

const runwayEnd = z.strictObject({
  ident: z.string().trim().min(1).max(6),
  trueHeadingDeg: z.number().min(0).lt(360),
  displacedThresholdM: z.number().min(0).max(5000).default(0),
});

// The longest paved runways have some 5 500 m; strips shorter than 30 m are no runways for an aeroplane.
const runwayFields = z
  .strictObject({
    lengthM: z.number().min(30).max(8000),
    widthM: z.number().min(1).max(500).nullable().default(null),
    surface: z.string().trim().min(1).max(60),
    /** Uphill when rolled from the first end; null where not known. Steeper than one in ten no published factor covers. */
    slopeRatio: z.number().min(-0.1).max(0.1).nullable().default(null),
    ends: z.tuple([runwayEnd, runwayEnd]),
    /** Its number among the runways of `listed`; null for one by hand. */
    listedId: z.int().nullable().default(null),
  })
  .refine(({ ends: [first, second] }) => oppositeWithin(first.trueHeadingDeg, second.trueHeadingDeg, 5), {
    path: ['ends'],
    message: 'the two true headings are not opposite to each other within 5 degrees',
  })
  .refine(
    ({ ends: [first, second], lengthM }) => first.displacedThresholdM + second.displacedThresholdM < lengthM,
    { path: ['ends'], message: 'the displaced thresholds leave nothing of the length' },
  );

const fieldFields = z.strictObject({
  name,
  identifier: z.string().trim().min(1).max(12).nullable().default(null),
  latitudeDeg,
  longitudeDeg,
  elevationM,
  /** Left out, it is found from the place. */
  timeZone: z
    .string()
    .refine(isTimeZone, 'a name of the IANA time zone list is needed, as America/Denver')
    .optional(),
  weatherStationId: z.string().nullable().default(null),
  /** The figures of the list of airports from which the field was taken; what differs from them was corrected. */
  listed: listedAirport.nullable().default(null),
});

const runway = z.strictObject({
  id,
  lengthM: z.number(),
  widthM: z.number().nullable(),
  surface: z.string(),
  slopeRatio: z.number().nullable(),
  ends: z.tuple([
    z.strictObject({ ident: z.string(), trueHeadingDeg: z.number(), displacedThresholdM: z.number() }),
    z.strictObject({ ident: z.string(), trueHeadingDeg: z.number(), displacedThresholdM: z.number() }),
  ]),
  listedId: z.int().nullable(),
});
const field = z.strictObject({
  id,
  name: z.string(),
  identifier: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number(),
  timeZone: z.string(),
  weatherStationId: z.string().nullable(),
  listed: listedAirport.nullable(),
  runways: z.array(runway),
}) satisfies z.ZodType<FieldRecord>;

const areas: ('fields' | 'weather')[] = ['fields', 'weather'];

export const fieldRequests = {
  'fields.list': read({
    about: 'The fields with their runways, time zone and weather station.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.array(field),
    handle: ({ db }) => readFields(db),
  }),

  'fields.put': change({
    about: 'Add a field (without id) or change one, with all its runways. Gives the id.',
    input: z.strictObject({
      field: fieldFields.extend({
        id: id.optional(),
        runways: z.array(runwayFields.safeExtend({ id: id.optional() })).max(20),
      }),
      named,
    }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after = complete(context, input.field);
      const before = readField(context.db, after.id);
      writeField(context.db, { record: after, removed: false });
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named: input.named ?? (old === null ? `${after.name} added` : `figures of ${after.name}`),
        screen: 'weather' as const,
        areas,
        inverse:
          old === null
            ? { request: 'fields.remove', input: { id: after.id } }
            : { request: 'fields.put', input: { field: old, named: input.named } },
        forward: { request: 'fields.put', input: { field: after, named: input.named } },
      };
    },
  }),

  'fields.remove': change({
    about: 'Take a field off the list. Its weather station keeps its observations.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = readField(db, input.id);
      if (before === null || before.removed)
        throw new Refusal('not-found', `There is no field '${input.id}'. Nothing was changed.`);
      writeField(db, { ...before, removed: true });
      return {
        output: {},
        named: `${before.record.name} removed`,
        screen: 'weather' as const,
        areas,
        inverse: { request: 'fields.put', input: { field: before.record } },
      };
    },
  }),
};

type FieldInput = z.output<(typeof fieldRequests)['fields.put']['input']>['field'];

function complete({ db, newId }: Context, input: FieldInput): FieldRecord {
  // A station whose imports were all taken back is gone; a change that is done again must not fail for it.
  const stationId = input.weatherStationId;
  const station = stationId === null ? null : weatherStation(db, stationId);
  return {
    ...input,
    id: input.id ?? newId(),
    timeZone: input.timeZone ?? timeZoneAt(input.latitudeDeg, input.longitudeDeg),
    weatherStationId: station?.id ?? null,
    runways: input.runways.map((each) => ({ ...each, id: each.id ?? newId() })),
  };
}

function oppositeWithin(firstDeg: number, secondDeg: number, toleranceDeg: number): boolean {
  const apartDeg = Math.abs(firstDeg - secondDeg);
  return Math.abs(apartDeg - 180) <= toleranceDeg;
}

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
