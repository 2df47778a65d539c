import { basename, isAbsolute } from 'node:path';
import { z } from 'zod';
import {
  addBlocks,
  beginImport,
  finishedImports,
  finishImport,
  removeImport,
} from '../store/weather-imports.ts';
import {
  insertWeatherStation,
  stationsWithRecords,
  weatherStation,
  weatherStationOfList,
  weatherStationOfRecords,
  type WeatherStation,
} from '../store/weather-stations.ts';
import { rememberMapping } from '../store/weather-mappings.ts';
import { mappingSchema } from '../weather-import/mapped/mapping.ts';
import { runScan } from '../weather-import/run-scan.ts';
import {
  findStations,
  listedStation,
  stationOfFileName,
  stationOfIdentifier,
  type ListedStation,
} from '../weather-import/stations/station-list.ts';
import type { ReaderOptions } from '../weather-import/reader.ts';
import type { ScanSummary } from '../weather-import/scan.ts';
import { read, work, type Context, type WorkContext } from './define.ts';
import { latitudeDeg, longitudeDeg, elevationM } from './places.ts';
import { Refusal } from './problem.ts';
import { shapeOfFile } from './weather-mapping.ts';
import { proposeStation } from './weather-station-proposal.ts';

/** So many places of the list are offered at once. */
const mostFound = 12;

const path = z
  .string()
  .min(1)
  .max(4000)
  .refine((text) => isAbsolute(text), 'the whole path of the file is needed');
/** What a person may have to say about a file. */
const readingChoices = {
  stationInFile: z.string().min(1).max(40).optional(),
  reportMonth: z
    .strictObject({ year: z.int().min(1930).max(2100), month: z.int().min(1).max(12) })
    .optional(),
  mapping: mappingSchema.optional(),
  standardOffsetMinutes: z.int().min(-840).max(840).optional(),
};
const nature = z.enum(['observed', 'typical year', 'averages', 'model']);
const skipped = z.array(
  z.strictObject({
    reason: z.string(),
    count: z.int(),
    examples: z.array(z.strictObject({ line: z.int(), text: z.string() })),
  }),
);

/** Where the records of a file put their station, as most of them say it. */
const placeInFile = z.strictObject({
  name: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number().nullable(),
  rowCount: z.int(),
  placedRowCount: z.int(),
});

const listed = z.strictObject({
  key: z.string(),
  name: z.string(),
  state: z.string(),
  identifier: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number(),
});

const station = z.strictObject({
  id: z.string(),
  listKey: z.string().nullable(),
  name: z.string(),
  identifier: z.string().nullable(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number(),
  placeFrom: z.enum(['station list', 'typed', 'file']),
});

/** Where the file's station lies: an entry of the bundled list, one that the library has, or a place given by hand. */
const stationChoice = z.union([
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

export const weatherRequests = {
  'weather.preview': work({
    about:
      'Look through a weather file: kind, station, span, rows, and what would be left out and why. Keeps nothing.',
    input: z.strictObject({ path, ...readingChoices }),
    output: preview,
    handle: async (context, input) => {
      const summary = await runScan(context, input.path, input, null);
      const guess = guessStation(basename(input.path), summary);
      return {
        ...summary,
        fileName: basename(input.path),
        stationGuess: guess.station,
        guessedFrom: guess.from,
        ...proposeStation(summary, guess.station),
        sameImport: sameImport(context, summary, guess.station?.key ?? null),
      };
    },
  }),

  'weather.import': work({
    about:
      'Import a weather file for a station, whole or not at all. What the library has already is not added a second time.',
    input: z.strictObject({ path, ...readingChoices, station: stationChoice }),
    output: z.strictObject({
      /** null where the file added nothing and so left nothing to take back. */
      importId: z.int().nullable(),
      stationId: z.string(),
      observationCount: z.int(),
      newCount: z.int(),
      skipped,
    }),
    handle: importFile,
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

  'weather.imports': read({
    about: 'Every finished import, newest first, with what it left out and why.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.array(
      z.strictObject({
        importId: z.int(),
        stationId: z.string(),
        stationName: z.string(),
        kind: z.string(),
        nature,
        fileName: z.string(),
        finishedEpochS: z.number(),
        observationCount: z.int(),
        newCount: z.int(),
        firstEpochS: z.number().nullable(),
        lastEpochS: z.number().nullable(),
        skipped,
      }),
    ),
    handle: ({ db }) => finishedImports(db),
  }),

  'weather.stations': read({
    about: 'Weather stations that have observations, with their span.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.array(
      station.extend({ observationCount: z.int(), firstEpochS: z.number(), lastEpochS: z.number() }),
    ),
    handle: ({ db }) => stationsWithRecords(db),
  }),

  'weather.findStations': read({
    about:
      "Search the bundled station list (NOAA's station history of the United States) by identifier, number or name.",
    where: 'reader',
    input: z.strictObject({ text: z.string().max(60) }),
    output: z.array(listed),
    handle: (_context, { text }) => findStations(text, mostFound).map(listedOut),
  }),
};

async function importFile(
  context: WorkContext,
  input: ReaderOptions & { path: string; station: z.output<typeof stationChoice> },
) {
  const { db } = context;
  refuseWhileImporting(context);
  const place = resolveStation(context, input.station);
  importing.add(db);
  let importId: number | null = null;
  let newCount = 0;
  try {
    const shape = input.mapping === undefined ? null : await shapeOfFile(input.path).catch(() => null);
    const summary = await runScan(context, input.path, input, (blocks) => {
      importId ??= begin();
      newCount += addBlocks(db, importId, place.id, blocks);
    });
    if (importId === null)
      throw new Refusal(
        'file-refused',
        `${basename(input.path)} has no observation that can be kept${firstReason(summary)}. Nothing was changed.`,
      );
    if (summary.usableCount === 0)
      throw new Refusal(
        'file-refused',
        `${basename(input.path)} has ${String(summary.observationCount)} observations, but density altitude cannot be had from any of them: ${summary.unusable.map(({ reason, count }) => `${reason} (${String(count)})`).join(', ')}. Nothing was changed.`,
      );
    if (newCount === 0) {
      removeImport(db, importId);
      return {
        importId: null,
        stationId: place.id,
        observationCount: summary.observationCount,
        newCount,
        skipped: summary.skipped,
      };
    }
    if (input.mapping !== undefined && shape !== null)
      rememberMapping(db, shape, input.mapping, context.nowEpochS());
    finishImport(db, importId, {
      finishedEpochS: context.nowEpochS(),
      kind: summary.kind,
      nature: summary.nature,
      observationCount: summary.observationCount,
      newCount,
      firstEpochS: summary.firstEpochS,
      lastEpochS: summary.lastEpochS,
      skippedJson: JSON.stringify(summary.skipped),
    });
    context.changed(['weather']);
    return {
      importId,
      stationId: place.id,
      observationCount: summary.observationCount,
      newCount,
      skipped: summary.skipped,
    };
  } catch (error) {
    if (importId !== null) removeImport(db, importId);
    throw error;
  } finally {
    importing.delete(db);
  }

  function begin(): number {
    return db.transaction(() => {
      if (weatherStation(db, place.id) === null) insertWeatherStation(db, place);
      return beginImport(db, {
        stationId: place.id,
        fileName: basename(input.path),
        begunEpochS: context.nowEpochS(),
      });
    })();
  }
}

/** Libraries into which an import is running: what is new is counted against what is there, so one at a time. */
const importing = new WeakSet<Context['db']>();

function refuseWhileImporting({ db }: Context): void {
  if (importing.has(db))
    throw new Refusal(
      'in-use',
      'Another weather file is being imported. Nothing was changed; do it again after it.',
    );
}

function resolveStation({ db, newId }: Context, choice: z.output<typeof stationChoice>): WeatherStation {
  if ('stationId' in choice) {
    const known = weatherStation(db, choice.stationId);
    if (known === null)
      throw new Refusal(
        'not-found',
        `There is no weather station '${choice.stationId}'. Nothing was changed.`,
      );
    return known;
  }
  if ('listKey' in choice) {
    const found = listedStation(choice.listKey);
    if (found === undefined)
      throw new Refusal(
        'not-found',
        `There is no station ${choice.listKey} in the bundled list. Give its place and elevation instead. Nothing was changed.`,
      );
    const { key, name, latitudeDeg, longitudeDeg, elevationM } = listedOut(found);
    const fromRecords = choice.elevationM;
    return (
      weatherStationOfList(db, key) ?? {
        id: newId(),
        listKey: key,
        name,
        identifier: found.icao === '' ? null : found.icao,
        latitudeDeg,
        longitudeDeg,
        elevationM: fromRecords ?? elevationM,
        placeFrom: fromRecords === undefined ? 'station list' : 'file',
      }
    );
  }
  const { place } = choice;
  // A second file of the same records must not make a second station of it.
  const again =
    place.placeFrom === 'file' && place.identifier !== null
      ? weatherStationOfRecords(db, place.identifier)
      : null;
  return again ?? { id: newId(), listKey: null, ...place };
}

function guessStation(fileName: string, summary: ScanSummary) {
  if (summary.firstEpochS === null || summary.lastEpochS === null) return { station: null, from: null };
  const span = { firstDay: dayNumber(summary.firstEpochS), lastDay: dayNumber(summary.lastEpochS) };
  const [first] = summary.stationsInFile;
  if (first !== undefined) {
    const found = stationOfIdentifier(first.identifier, span);
    if (found !== null) return { station: listedOut(found), from: 'identifier in the file' as const };
  }
  const found = stationOfFileName(fileName, span);
  return found === null
    ? { station: null, from: null }
    : { station: listedOut(found), from: 'file name' as const };
}

function dayNumber(epochS: number): number {
  return Number(new Date(epochS * 1000).toISOString().slice(0, 10).replaceAll('-', ''));
}

function listedOut(found: ListedStation): z.output<typeof listed> {
  return {
    key: found.key,
    name: found.name,
    state: found.state,
    identifier: found.icao === '' ? null : found.icao,
    latitudeDeg: found.latitudeDeg,
    longitudeDeg: found.longitudeDeg,
    elevationM: found.elevationM,
  };
}

function firstReason(summary: ScanSummary): string {
  const [first] = summary.skipped;
  return first === undefined ? '' : ` (${first.reason}, ${String(first.count)} times)`;
}

/** A finished import of the same kind, station, span and number of observations. */
function sameImport({ db }: Context, summary: ScanSummary, listKey: string | null) {
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
