import { z } from 'zod';
import { finishedImports, removeBatch, removeImport } from '../store/weather-imports.ts';
import { contentsOf } from '../weather-import/content.ts';
import { work } from './define.ts';
import { Refusal } from './problem.ts';
import { fileForStation, imported, importFiles, refuseWhileImporting } from './weather-import-files.ts';
import { fileProblem } from './weather-schema.ts';

const mostFiles = 2000;

export const weatherImportRequests = {
  'weather.import': work({
    about:
      'Import a weather file for a station, whole or not at all. What the library has already is not added a second time.',
    input: fileForStation,
    output: imported.omit({ fileName: true }),
    handle: async (context, input) => {
      const contents = input.entry === undefined ? await contentsOf(input.path) : [];
      if (contents.length > 1)
        throw new Refusal(
          'file-refused',
          `There are ${String(contents.length)} files in it: say which one is meant, or import them by one act. Nothing was changed.`,
        );
      const [only] = (await importFiles(context, [input])).files;
      if (only === undefined) throw new Error('the reading ended without a word');
      if ('refusal' in only) throw only.refusal;
      const { importId, stationId, observationCount, newCount, skipped: leftOut } = only;
      return { importId, stationId, observationCount, newCount, skipped: leftOut };
    },
  }),

  'weather.importFiles': work({
    about:
      'Import many weather files by one act. Files that cannot be read are told of and the others are kept; cancelled, nothing of any of them is kept.',
    input: z.strictObject({ files: z.array(fileForStation).min(1).max(mostFiles) }),
    output: z.strictObject({
      /** By which the whole act can be taken back; null where no file added anything. */
      batchId: z.string().nullable(),
      files: z.array(
        z.strictObject({
          fileName: z.string(),
          imported: imported.nullable(),
          problem: fileProblem.nullable(),
        }),
      ),
    }),
    handle: async (context, { files }) => {
      const { batchId, files: done } = await importFiles(context, files);
      return {
        batchId: done.some((each) => 'importId' in each && each.importId !== null) ? batchId : null,
        files: done.map((each) =>
          'refusal' in each
            ? {
                fileName: each.fileName,
                imported: null,
                problem: { code: each.refusal.problem.code, sentence: each.refusal.problem.sentence },
              }
            : { fileName: each.fileName, imported: each, problem: null },
        ),
      };
    },
  }),

  'weather.takeBack': work({
    about: 'Take an import away whole. Nothing of other imports goes with it, even where they overlapped.',
    input: z.strictObject({ importId: z.int() }),
    output: z.strictObject({ fileName: z.string(), observationCount: z.int() }),
    handle: (context, { importId }) => {
      refuseWhileImporting(context);
      const found = finishedImports(context.db).find((each) => each.importId === importId);
      if (found === undefined)
        throw new Refusal('not-found', `There is no import ${String(importId)}. Nothing was changed.`);
      removeImport(context.db, importId);
      context.changed(['weather']);
      return { fileName: found.fileName, observationCount: found.observationCount };
    },
  }),

  'weather.takeBackBatch': work({
    about: 'Take away all files that were imported by one act.',
    input: z.strictObject({ batchId: z.string() }),
    output: z.strictObject({ fileCount: z.int(), observationCount: z.int() }),
    handle: (context, { batchId }) => {
      refuseWhileImporting(context);
      const found = finishedImports(context.db).filter((each) => each.batchId === batchId);
      if (found.length === 0)
        throw new Refusal('not-found', 'There is no such import any more. Nothing was changed.');
      removeBatch(context.db, batchId);
      context.changed(['weather']);
      return {
        fileCount: found.length,
        observationCount: found.reduce((sum, each) => sum + each.observationCount, 0),
      };
    },
  }),
};
