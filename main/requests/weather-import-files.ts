import { z } from 'zod';
import {
  addBlocks,
  beginImport,
  finishImports,
  hasImportOfSize,
  importsOfContent,
  removeBatch,
  removeImport,
  type ImportEnd,
} from '../store/weather-imports.ts';
import { rememberMapping } from '../store/weather-mappings.ts';
import { insertWeatherStation, weatherStation, type WeatherStation } from '../store/weather-stations.ts';
import { nameOf, sumOf } from '../weather-import/content.ts';
import { readAsJson } from '../weather-import/read-as.ts';
import { runScans, type Scanned, type ScanTakers, type ToScan } from '../weather-import/run-scans.ts';
import type { ScanSummary } from '../weather-import/scan.ts';
import type { Context, WorkContext } from './define.ts';
import { Refusal } from './problem.ts';
import { shapeOfFile } from './weather-mapping.ts';
import { everyFile } from './weather-preview.ts';
import { fileToRead, skipped, stationChoice, type StationChoice } from './weather-schema.ts';
import { resolveStation } from './weather-station-choice.ts';

/** A file and the station that it is of. */
export const fileForStation = fileToRead.extend({ station: stationChoice });
type FileForStation = z.output<typeof fileForStation>;

/** What came of a file that was read. */
export const imported = z.strictObject({
  fileName: z.string(),
  /** null where the file added nothing and so left nothing to take back. */
  importId: z.int().nullable(),
  stationId: z.string(),
  observationCount: z.int(),
  newCount: z.int(),
  skipped,
});
type Imported = z.output<typeof imported>;

export type Done = Imported | { fileName: string; refusal: Refusal };

/** A file on its way in. Its import begins with its first months. */
interface UnderWay {
  /** Its place among all files of the act. */
  at: number;
  file: FileForStation;
  place: WeatherStation;
  sizeBytes: number;
  /** Under which its mapping is remembered. */
  shape: string | null;
  importId: number | null;
  newCount: number;
}

/**
 * Import files by one act: they become visible all together, or, cancelled, none of them.
 * @throws Refusal where another import is running, a station is not there, or it was cancelled
 */
export async function importFiles(
  context: WorkContext,
  input: readonly FileForStation[],
): Promise<{ batchId: string; files: Done[] }> {
  const { db } = context;
  refuseWhileImporting(context);
  importing.add(db);
  try {
    const { done, unread } = await lookUp(context, input);
    const batchId = context.newId();
    try {
      await readAndKeep(context, batchId, unread, done);
    } catch (error) {
      removeBatch(db, batchId);
      throw error;
    }
    return { batchId, files: done.filter((each) => each !== null) };
  } finally {
    importing.delete(db);
  }
}

/** Tell apart what is in the library already, by its bytes, and what has to be read; in the order of the files. */
async function lookUp(
  context: WorkContext,
  input: readonly FileForStation[],
): Promise<{ done: (Done | null)[]; unread: UnderWay[] }> {
  const stationOf = onePlaceEach(context);
  const done: (Done | null)[] = [];
  const unread: UnderWay[] = [];
  for (const { file, content } of await everyFile(input)) {
    const place = stationOf(file.station);
    const same = await knownImport(context, file, content.sizeBytes, place.id);
    if (same === null)
      unread.push({
        at: done.length,
        file,
        place,
        sizeBytes: content.sizeBytes,
        shape: file.mapping === undefined ? null : await shapeOfFile(file).catch(() => null),
        importId: null,
        newCount: 0,
      });
    done.push(same);
    if (context.signal.aborted)
      throw new Refusal('cancelled', 'The import was cancelled. The library is as it was.');
  }
  return { done, unread };
}

async function readAndKeep(
  context: WorkContext,
  batchId: string,
  unread: readonly UnderWay[],
  done: (Done | null)[],
): Promise<void> {
  const { db } = context;
  const ends: { place: number; importId: number; end: Omit<ImportEnd, 'contentSha256'> }[] = [];
  const takers: ScanTakers = {
    blocks: (place, blocks) => {
      const each = unread[place];
      if (each === undefined) return;
      each.importId ??= begin(context, each, batchId);
      each.newCount += addBlocks(db, each.importId, each.place.id, blocks);
    },
    finished: (place, scanned) => {
      const each = unread[place];
      if (each === undefined) return;
      const kept = keptOf(each, scanned);
      done[each.at] = kept;
      if (each.importId === null) return;
      if ('refusal' in kept || kept.importId === null) removeImport(db, each.importId);
      else if ('summary' in scanned)
        ends.push({ place, importId: each.importId, end: endOf(context, each, scanned.summary) });
    },
  };
  // The files' sums are taken on this thread, which mostly waits, while the other one reads.
  const stop = new AbortController();
  const sums = sumsOf(unread, stop.signal);
  try {
    await runScans(context, 'Reading', unread.map(toScan), takers);
    const contentSha256 = await sums;
    finishImports(
      db,
      ends.map(({ place, importId, end }) => ({
        importId,
        end: { ...end, contentSha256: contentSha256[place] ?? null },
      })),
    );
  } finally {
    stop.abort();
  }
  for (const { file, shape, importId } of unread)
    if (file.mapping !== undefined && shape !== null && ends.some((each) => each.importId === importId))
      rememberMapping(db, shape, file.mapping, context.nowEpochS());
  if (ends.length > 0) context.changed(['weather']);
}

async function sumsOf(unread: readonly UnderWay[], signal: AbortSignal): Promise<(string | null)[]> {
  const sums: (string | null)[] = [];
  for (const { file } of unread) sums.push(signal.aborted ? null : await sumOf(file, signal));
  return sums;
}

function toScan({ file, sizeBytes }: UnderWay): ToScan {
  const { path, entry, stationInFile, reportMonth, standardOffsetMinutes, mapping } = file;
  return { path, entry, options: { stationInFile, reportMonth, standardOffsetMinutes, mapping }, sizeBytes };
}

/** Said for several files, a station is one, also where the elevation in their records moved over the years. */
function onePlaceEach(context: Context): (choice: StationChoice) => WeatherStation {
  const places = new Map<string, WeatherStation>();
  return (choice) => {
    const key =
      'listKey' in choice
        ? `list ${choice.listKey}`
        : 'place' in choice && choice.place.placeFrom === 'file' && choice.place.identifier !== null
          ? `records ${choice.place.identifier}`
          : JSON.stringify(choice);
    const place = places.get(key) ?? resolveStation(context, choice);
    places.set(key, place);
    return place;
  };
}

/** The answer for a file whose very bytes were imported for this station and read in the same way. */
async function knownImport(
  { db, signal }: WorkContext,
  file: FileForStation,
  sizeBytes: number,
  stationId: string,
): Promise<Imported | null> {
  if (!hasImportOfSize(db, sizeBytes)) return null;
  const sum = await sumOf(file, signal);
  if (sum === null) return null;
  const readAs = readAsJson(file);
  const same = importsOfContent(db, sum).find(
    (each) => each.stationId === stationId && each.readAsJson === readAs,
  );
  if (same === undefined) return null;
  const { observationCount } = same;
  return { fileName: nameOf(file), importId: null, stationId, observationCount, newCount: 0, skipped: [] };
}

function begin({ db, nowEpochS }: Context, { file, place }: UnderWay, batchId: string): number {
  return db.transaction(() => {
    if (weatherStation(db, place.id) === null) insertWeatherStation(db, place);
    return beginImport(db, {
      stationId: place.id,
      fileName: nameOf(file),
      begunEpochS: nowEpochS(),
      batchId,
    });
  })();
}

/** What a file that was read to its end comes to: kept, known to the last observation, or refused with its reasons. */
function keptOf({ file, place, importId, newCount }: UnderWay, scanned: Scanned): Done {
  const fileName = nameOf(file);
  if ('refusal' in scanned) return { fileName, refusal: scanned.refusal };
  const { summary } = scanned;
  if (importId === null)
    return {
      fileName,
      refusal: new Refusal(
        'file-refused',
        `${fileName} has no observation that can be kept${firstReason(summary)}. Nothing was changed.`,
      ),
    };
  if (summary.usableCount === 0)
    return {
      fileName,
      refusal: new Refusal(
        'file-refused',
        `${fileName} has ${String(summary.observationCount)} observations, but density altitude cannot be had from any of them: ${summary.unusable.map(({ reason, count }) => `${reason} (${String(count)})`).join(', ')}. Nothing was changed.`,
      ),
    };
  return {
    fileName,
    importId: newCount === 0 ? null : importId,
    stationId: place.id,
    observationCount: summary.observationCount,
    newCount,
    skipped: summary.skipped,
  };
}

function endOf(
  { nowEpochS }: Context,
  { file, sizeBytes, newCount }: UnderWay,
  summary: ScanSummary,
): Omit<ImportEnd, 'contentSha256'> {
  return {
    finishedEpochS: nowEpochS(),
    kind: summary.kind,
    nature: summary.nature,
    observationCount: summary.observationCount,
    newCount,
    firstEpochS: summary.firstEpochS,
    lastEpochS: summary.lastEpochS,
    skippedJson: JSON.stringify(summary.skipped),
    contentBytes: sizeBytes,
    readAsJson: readAsJson(file),
    stationsInFile: summary.stationsInFile.length,
  };
}

function firstReason(summary: ScanSummary): string {
  const [first] = summary.skipped;
  return first === undefined ? '' : ` (${first.reason}, ${String(first.count)} times)`;
}

/** Libraries into which an import is running: what is new is counted against what is there, so one at a time. */
const importing = new WeakSet<Context['db']>();

/** @throws Refusal while files are being imported into the library */
export function refuseWhileImporting({ db }: Context): void {
  if (importing.has(db))
    throw new Refusal(
      'in-use',
      'Another weather file is being imported. Nothing was changed; do it again after it.',
    );
}
