import { isAbsolute } from 'node:path';
import { z } from 'zod';
import type { RecordNature } from '../../shared-calc/wording/share-words.ts';
import { mappingSchema } from '../weather-import/mapped/mapping.ts';
import { elevationM, latitudeDeg, longitudeDeg } from './places.ts';

// The shapes that the requests about weather files share.

export const path = z
  .string()
  .min(1)
  .max(4000)
  .refine((text) => isAbsolute(text), 'the whole path of the file is needed');

/** Which file, and what a person may have to say about it. */
export const fileToRead = z.strictObject({
  path,
  /** Of an archive with several files, the one that is meant. */
  entry: z.string().min(1).max(1000).optional(),
  stationInFile: z.string().min(1).max(40).optional(),
  reportMonth: z
    .strictObject({ year: z.int().min(1930).max(2100), month: z.int().min(1).max(12) })
    .optional(),
  mapping: mappingSchema.optional(),
  standardOffsetMinutes: z.int().min(-840).max(840).optional(),
});
export type FileToRead = z.output<typeof fileToRead>;

export const nature = z.enum(['observed', 'typical year', 'averages', 'model']);

export const skipped = z.array(
  z.strictObject({
    reason: z.string(),
    count: z.int(),
    examples: z.array(z.strictObject({ line: z.int(), text: z.string() })),
  }),
);

export const listed = z.strictObject({
  key: z.string(),
  name: z.string(),
  state: z.string(),
  identifier: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number(),
});

/** Where the file's station lies: an entry of the bundled list, one that the library has, or a place given by hand. */
export const stationChoice = z.union([
  /** An elevation beside the key is that of the file's own records, which is nearer to its barometer. */
  z.strictObject({ listKey: z.string(), elevationM: elevationM.optional() }),
  z.strictObject({ stationId: z.string() }),
  z.strictObject({
    place: z.strictObject({
      name: z.string().trim().min(1).max(100),
      identifier: z.string().trim().max(20).nullable().default(null),
      latitudeDeg,
      longitudeDeg,
      elevationM,
      placeFrom: z.enum(['typed', 'file']).default('typed'),
    }),
  }),
]);
export type StationChoice = z.output<typeof stationChoice>;

/** Why a file was not read, in a code for programs and a sentence for people. */
export const fileProblem = z.strictObject({ code: z.string(), sentence: z.string() });

/** What a record's files are: only observations can be counted as days. */
export const recordNature = z.enum([
  'observed',
  'typical year',
  'averages',
  'model',
  'mixed',
]) satisfies z.ZodType<RecordNature>;
