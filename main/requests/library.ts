import { z } from 'zod';
import { backupsFolder } from '../store/backup-names.ts';
import { listBackups, makeBackup } from '../store/backups.ts';
import { exportLibrary } from '../store/export/write.ts';
import { dismissNotice, openNotices } from '../store/notices.ts';
import { restoreInto } from '../store/restore.ts';
import { schemaVersion } from '../store/schema-version.ts';
import { syncingCaution, syncingServiceOf } from '../store/synced-folder.ts';
import { read, work, type Area } from './define.ts';
import { Refusal } from './problem.ts';

const backup = z.strictObject({
  path: z.string(),
  madeEpochS: z.number(),
  schemaVersion: z.int(),
  reason: z.enum(['start', 'migration', 'asked']),
  sizeBytes: z.int(),
});

export const backups = z.strictObject({ folder: z.string(), backups: z.array(backup) });

export const exported = z.strictObject({
  folder: z.string(),
  files: z.array(z.strictObject({ file: z.string(), rowsCount: z.int(), stoppedBy: z.string().nullable() })),
});

const everything: Area[] = [
  'aircraft',
  'people',
  'loading',
  'fuel',
  'weather',
  'fields',
  'settings',
  'history',
  'library',
];

export const libraryRequests = {
  'library.describe': read({
    about:
      'Which library file is open, its format, what has to be told about it, and whether its folder is safe.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.strictObject({
      path: z.string(),
      schemaVersion: z.int(),
      sizeBytes: z.int(),
      /** Set where a file-syncing service keeps the folder: a library can be lost that way. */
      synced: z.strictObject({ service: z.string(), folder: z.string(), caution: z.string() }).nullable(),
      notices: z.array(z.strictObject({ seq: z.int(), atEpochS: z.number(), sentence: z.string() })),
    }),
    handle: ({ db, libraryPath }) => {
      const synced = syncingServiceOf(libraryPath);
      return {
        path: libraryPath,
        schemaVersion: schemaVersion(db),
        sizeBytes:
          (db.pragma('page_count', { simple: true }) as number) *
          (db.pragma('page_size', { simple: true }) as number),
        synced: synced === null ? null : { ...synced, caution: syncingCaution(synced) },
        notices: openNotices(db),
      };
    },
  }),
  'library.dismissNotice': work({
    about: 'Show a notice of library.describe no longer.',
    input: z.strictObject({ seq: z.int() }),
    output: z.strictObject({}),
    handle: ({ db, changed }, { seq }) => {
      if (!dismissNotice(db, seq)) throw new Refusal('not-found', `There is no notice ${String(seq)}.`);
      changed(['library']);
      return {};
    },
  }),
  'library.backups': read({
    about: 'The backups of the library, newest first, and the folder in which they lie.',
    where: 'reader',
    input: z.strictObject({}),
    output: backups,
    handle: ({ libraryPath }) => ({
      folder: backupsFolder(libraryPath),
      backups: listBackups(libraryPath),
    }),
  }),
  'library.backUp': work({
    about: 'Make a backup now.',
    input: z.strictObject({}),
    output: backup,
    handle: async ({ db, libraryPath, nowEpochS, changed }) => {
      const made = await makeBackup(db, libraryPath, 'asked', nowEpochS());
      changed(['library']);
      return made;
    },
  }),
  'library.restore': work({
    about:
      'Put a backup in the place of the library, which is kept beside it. The list of changes is the backup’s.',
    input: z.strictObject({ path: z.string().min(1) }),
    output: z.strictObject({ keptPath: z.string() }),
    handle: async ({ db, libraryPath, nowEpochS, changed }, { path }) => {
      const restored = await restoreInto(db, libraryPath, path, nowEpochS());
      changed(everything);
      return restored;
    },
  }),
  'library.export': work({
    about: 'Write everything into a new folder inside the given one: CSV and JSON with a README.txt.',
    input: z.strictObject({ into: z.string().min(1) }),
    output: exported,
    handle: async ({ libraryPath, nowEpochS, signal, progress }, { into }) => {
      const { folder, files } = await exportLibrary(libraryPath, into, {
        nowEpochS: nowEpochS(),
        signal,
        progress: (table, rowsCount) => {
          progress({ doing: `Writing ${table}.csv`, doneCount: rowsCount, totalCount: null, unit: 'rows' });
        },
      });
      return {
        folder,
        files: files.map(({ file, rowsCount, stoppedBy }) => ({ file, rowsCount, stoppedBy })),
      };
    },
  }),
};
