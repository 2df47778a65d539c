import { z } from 'zod';
import { finishedImports } from '../store/weather-imports.ts';
import { stationsWithRecords } from '../store/weather-stations.ts';
import { findStations } from '../weather-import/stations/station-list.ts';
import { read } from './define.ts';
import { listed, nature, skipped } from './weather-schema.ts';
import { listedOut } from './weather-station-choice.ts';

/** So many places of the list are offered at once. */
const mostFound = 12;

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

export const weatherRequests = {
  'weather.imports': read({
    about: 'Every finished import, newest first, with what it left out and why.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.array(
      z.strictObject({
        importId: z.int(),
        batchId: z.string().nullable(),
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
