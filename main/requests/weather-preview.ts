import { z } from 'zod';
import {
  finishedImports,
  hasImportOfSize,
  importsOfContent,
  type KnownContent,
} from '../store/weather-imports.ts';
import { weatherStationOfList } from '../store/weather-stations.ts';
import { contentsOf, nameOf, sumOf, type Content, type ListedContent } from '../weather-import/content.ts';
import { readAsJson } from '../weather-import/read-as.ts';
import { runScans, type ToScan } from '../weather-import/run-scans.ts';
import type { ScanSummary } from '../weather-import/scan.ts';
import { work, type Context, type WorkContext } from './define.ts';
import { Refusal, type ProblemCode } from './problem.ts';
import {
  fileProblem,
  fileToRead,
  listed,
  nature,
  skipped,
  stationChoice,
  type FileToRead,
} from './weather-schema.ts';
import { guessStation } from './weather-station-choice.ts';
import { proposeStation } from './weather-station-proposal.ts';

/** Where the records of a file put their station, as most of them say it. */
const placeInFile = z.strictObject({
  name: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number().nullable(),
  rowCount: z.int(),
  placedRowCount: z.int(),
});

const preview = z.strictObject({
  fileName: z.string(),
  sizeBytes: z.int(),
  kind: z.string(),
  kindInWords: z.string(),
  nature,
  remarks: z.array(z.string()),
  lineCount: z.int(),
  observationCount: z.int(),
  usableCount: z.int(),
  unusable: z.array(z.strictObject({ reason: z.string(), count: z.int() })),
  pressureFrom: z.strictObject({
    stationCount: z.int(),
    altimeterSettingCount: z.int(),
    seaLevelCount: z.int(),
  }),
  firstEpochS: z.number().nullable(),
  lastEpochS: z.number().nullable(),
  stationsInFile: z.array(z.strictObject({ identifier: z.string(), rowCount: z.int() })),
  /** The one of them whose rows are read. */
  stationRead: z.string().nullable(),
  placeInFile: placeInFile.nullable(),
  skipped,
  stationGuess: listed.nullable(),
  /** The choice of station that the file and the list together suggest: the list's place, the records' elevation. */
  stationProposal: stationChoice.nullable(),
  /** What does not agree between file and list. */
  stationRemarks: z.array(z.string()),
  guessedFrom: z.enum(['file name', 'identifier in the file']).nullable(),
  /** An import of the library that looks the same: repeating it would add nothing. */
  sameImport: z.strictObject({ importId: z.int(), fileName: z.string(), atEpochS: z.number() }).nullable(),
});
type Preview = z.output<typeof preview>;

/** A file whose very bytes are in the library already. */
const known = z.strictObject({
  importId: z.int(),
  fileName: z.string(),
  stationName: z.string(),
  atEpochS: z.number(),
  observationCount: z.int(),
});

const lookedThrough = z.strictObject({
  path: z.string(),
  /** The file inside an archive of several. */
  entry: z.string().nullable(),
  fileName: z.string(),
  sizeBytes: z.int(),
  /** One of the three is there. */
  preview: preview.nullable(),
  known: known.nullable(),
  problem: fileProblem.nullable(),
});
type LookedThrough = z.output<typeof lookedThrough>;

/** So many files are taken at once. */
const mostFiles = 2000;

export const weatherPreviewRequests = {
  'weather.preview': work({
    about:
      'Look through a weather file: kind, station, span, rows, and what would be left out and why. Keeps nothing.',
    input: fileToRead,
    output: preview,
    handle: async (context, input) => {
      const [content] = await contentsOf(input.path);
      let found: Preview | null = null;
      await runScans(context, 'Looking through', [toScan(input, content)], {
        finished: (_at, scanned) => {
          if ('refusal' in scanned) throw scanned.refusal;
          found = previewOf(context, input, scanned.summary);
        },
      });
      // Assigned in the taker above, which the checker does not follow.
      const looked = found as Preview | null;
      if (looked === null) throw new Error('the reading ended without a word');
      return looked;
    },
  }),

  'weather.previewFiles': work({
    about:
      'Look through many weather files at once, archives of several and folders of them too. What is in the library already is told by its bytes and not read again. Keeps nothing.',
    input: z.strictObject({ files: z.array(fileToRead).min(1).max(mostFiles) }),
    output: z.strictObject({ files: z.array(lookedThrough) }),
    handle: async (context, input) => {
      const files = await everyFile(input.files);
      const looked: LookedThrough[] = files.map(({ content }) => ({
        path: content.path,
        entry: content.entry,
        fileName: content.fileName,
        sizeBytes: content.sizeBytes,
        preview: null,
        known: null,
        problem: null,
      }));
      const unread: { at: number; scan: ToScan }[] = [];
      for (const [at, { file, content }] of files.entries()) {
        if (context.signal.aborted)
          throw new Refusal('cancelled', 'Looking through was cancelled. Nothing was kept.');
        const same = await knownContent(context, file, content);
        const own = looked[at];
        if (own !== undefined && same !== null)
          own.known = {
            importId: same.importId,
            fileName: same.fileName,
            stationName: same.stationName,
            atEpochS: same.finishedEpochS,
            observationCount: same.observationCount,
          };
        else unread.push({ at, scan: toScan(file, content) });
      }
      await runScans(
        context,
        'Looking through',
        unread.map(({ scan }) => scan),
        {
          finished: (place, scanned) => {
            const { at, scan } = unread[place] ?? {};
            const own = looked[at ?? -1];
            if (own === undefined || scan === undefined) return;
            if ('refusal' in scanned) {
              const { code, sentence } = scanned.refusal.problem;
              own.problem = { code, sentence };
            } else if (scanned.summary.observationCount === 0)
              own.problem = nothingIn(own.fileName, scanned.summary);
            else own.preview = previewOf(context, scan, scanned.summary);
          },
        },
      );
      return { files: looked };
    },
  }),
};

function nothingIn(fileName: string, summary: ScanSummary): { code: ProblemCode; sentence: string } {
  const [first] = summary.skipped;
  return {
    code: 'file-refused',
    sentence: `${fileName} has no observation that can be kept${first === undefined ? '' : ` (${first.reason}, ${String(first.count)} times)`}.`,
  };
}

/** The files that were meant, those of archives and folders one by one. */
export async function everyFile<File extends FileToRead>(
  files: readonly File[],
): Promise<{ file: File; content: ListedContent }[]> {
  const every: { file: File; content: ListedContent }[] = [];
  for (const file of files) {
    const contents = await contentsOf(file.path);
    for (const content of contents)
      if (file.entry === undefined || file.entry === content.entry)
        every.push({
          file: { ...file, path: content.path, ...(content.entry === null ? {} : { entry: content.entry }) },
          content,
        });
    // An entry that is not there: its own reading says so.
    if (file.entry !== undefined && !contents.some(({ entry }) => entry === file.entry))
      every.push({
        file,
        content: { path: file.path, entry: file.entry, fileName: nameOf(file), sizeBytes: 0 },
      });
  }
  return every;
}

function toScan({ path, entry, ...options }: FileToRead, content: ListedContent | undefined): ToScan {
  return { path, entry, options, sizeBytes: content?.sizeBytes ?? 0 };
}

/**
 * The import of the very bytes of a file, read in the same way; null where there is none. A file with rows of several
 * stations is always read again, because one import takes those of one.
 */
async function knownContent(
  context: WorkContext,
  file: FileToRead,
  content: ListedContent,
): Promise<KnownContent | null> {
  const { db } = context;
  if (!hasImportOfSize(db, content.sizeBytes)) return null;
  const sum = await sumOf(file, context.signal);
  if (sum === null) return null;
  const readAs = readAsJson(file);
  return (
    importsOfContent(db, sum).find((each) => each.stationsInFile <= 1 && each.readAsJson === readAs) ?? null
  );
}

function previewOf(context: Context, content: Content, summary: ScanSummary): Preview {
  const fileName = nameOf(content);
  const guess = guessStation(fileName.split(/[/\\]|: /).at(-1) ?? fileName, summary);
  return {
    ...summary,
    fileName,
    stationGuess: guess.station,
    guessedFrom: guess.from,
    ...proposeStation(summary, guess.station),
    sameImport: sameImport(context, summary, guess.station?.key ?? null),
  };
}

/** A finished import of the same kind, station, span and number of observations. */
function sameImport({ db }: Context, summary: ScanSummary, listKey: string | null): Preview['sameImport'] {
  const stationId = listKey === null ? undefined : weatherStationOfList(db, listKey)?.id;
  const found = finishedImports(db).find(
    (each) =>
      each.kind === summary.kind &&
      each.observationCount === summary.observationCount &&
      each.firstEpochS === summary.firstEpochS &&
      each.lastEpochS === summary.lastEpochS &&
      (stationId === undefined || each.stationId === stationId),
  );
  return found === undefined
    ? null
    : { importId: found.importId, fileName: found.fileName, atEpochS: found.finishedEpochS };
}
