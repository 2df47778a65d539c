import { z } from 'zod';
import {
  asIs,
  fromFahrenheit,
  fromInchOfMercury,
  fromKelvin,
  fromKilometrePerHour,
  fromKilopascal,
  fromKnot,
  fromMilePerHour,
  fromMillimetreOfMercury,
  fromPascal,
  toWhole,
  type Convert,
} from '../units.ts';

/** Every unit that a mapped column may have, by what is measured. */
export const unitsOf = {
  temperature: { degC: asIs, degF: fromFahrenheit, K: fromKelvin },
  humidity: { percent: asIs },
  pressure: {
    hPa: asIs,
    inHg: fromInchOfMercury,
    Pa: fromPascal,
    kPa: fromKilopascal,
    mmHg: fromMillimetreOfMercury,
  },
  direction: { deg: toWhole },
  speed: { 'm/s': asIs, kt: fromKnot, mph: fromMilePerHour, 'km/h': fromKilometrePerHour },
} satisfies Record<string, Record<string, Convert>>;

/** What a column can be, and how it is measured. */
export const quantities = {
  temperature: 'temperature',
  'dew point': 'temperature',
  humidity: 'humidity',
  'station pressure': 'pressure',
  'altimeter setting': 'pressure',
  'sea-level pressure': 'pressure',
  'wind direction': 'direction',
  'wind speed': 'speed',
  gust: 'speed',
} as const;
export type Quantity = keyof typeof quantities;

const column = z.string().min(1).max(200);

const value = z
  .strictObject({
    quantity: z.enum(Object.keys(quantities) as [Quantity, ...Quantity[]]),
    column,
    unit: z.string(),
  })
  .refine(
    ({ quantity, unit }) => unit in unitsOf[quantities[quantity]],
    'the unit does not measure this quantity',
  );

/**
 * How a table that no reader knows is to be read, as a person confirms it. Columns go by name.
 * A stamp that carries its own zone (Z, -05:00) counts with that; `zone` is for those without.
 */
export const mappingSchema = z
  .strictObject({
    delimiter: z.enum([',', ';', '\t', '|']),
    /** Lines before the header: the export's own head. */
    linesBefore: z.int().min(0).max(100),
    time: z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('stamp'),
        column,
        order: z.enum(['year first', 'month first', 'day first']),
      }),
      z.strictObject({
        kind: z.literal('parts'),
        year: column,
        month: column,
        day: column,
        hour: column,
        minute: column.nullable(),
      }),
    ]),
    zone: z.discriminatedUnion('kind', [
      /** The same all year. */
      z.strictObject({ kind: z.literal('offset'), minutes: z.int().min(-840).max(840) }),
      /** The clock on the wall, with its changes. */
      z.strictObject({ kind: z.literal('clock'), timeZone: z.string().min(1).max(60) }),
    ]),
    station: column.nullable(),
    values: z.array(value).min(1).max(20),
    nature: z.enum(['observed', 'typical year', 'averages', 'model']),
  })
  .refine(
    ({ values }) => new Set(values.map(({ quantity }) => quantity)).size === values.length,
    'a quantity comes from one column only',
  );
export type Mapping = z.output<typeof mappingSchema>;

/** What two files of one shape have in common: the names in their header, in order. */
export function shapeOfHeader(names: readonly string[]): string {
  return names.map((name) => name.trim().toLowerCase()).join('\u001f');
}
