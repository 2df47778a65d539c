import { z } from 'zod';
import { schemaVersion } from '../store/schema-version.ts';
import { read } from './define.ts';

export const libraryRequests = {
  'library.describe': read({
    about: 'Which library file is open, and its version.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.strictObject({
      path: z.string(),
      schemaVersion: z.int(),
      sizeBytes: z.int(),
    }),
    handle: ({ db, libraryPath }) => ({
      path: libraryPath,
      schemaVersion: schemaVersion(db),
      sizeBytes:
        (db.pragma('page_count', { simple: true }) as number) *
        (db.pragma('page_size', { simple: true }) as number),
    }),
  }),
};
