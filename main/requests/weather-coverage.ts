import { z } from 'zod';
import { coverageOf } from '../../shared-calc/climate/coverage.ts';
import { hourReports } from '../../shared-calc/climate/hour-reports.ts';
import { loadObservations, usableAt } from '../store/load-observations.ts';
import { monthSources } from '../store/month-sources.ts';
import { flag } from '../store/observation-columns.ts';
import { finishedImports } from '../store/weather-imports.ts';
import { read } from './define.ts';
import { id } from './ranges.ts';
import { zoneOffsets } from './zone-offsets.ts';

/** A gap shorter than a day is the lot of every record. */
const leastGapHours = 24;
const mostGaps = 8;

export const weatherCoverageRequests = {
  'weather.coverage': read({
    about:
      "How much of a weather station's record is there: hours with a usable report by year and month (UTC), the longest gaps, and which file each month is from.",
    where: 'heavy',
    input: z.strictObject({ stationId: id }),
    output: z.strictObject({
      months: z.array(
        z.strictObject({
          year: z.int(),
          month: z.int(),
          hourCount: z.int(),
          possibleCount: z.int(),
          /** Places in `sources`, those with most observations first. */
          sources: z.array(z.int()),
        }),
      ),
      gaps: z.array(z.strictObject({ fromEpochS: z.number(), hourCount: z.int() })),
      sources: z.array(z.strictObject({ importId: z.int(), fileName: z.string(), kind: z.string() })),
      hourCount: z.int(),
      /** Reports with a mark, as they are kept; some have two. */
      marked: z.strictObject({ spikeCount: z.int(), stuckCount: z.int(), suspectCount: z.int() }),
    }),
    handle: ({ db }, { stationId }) => {
      const columns = loadObservations(db, stationId);
      const count = columns.epochMinute.length;
      const usable = new Uint8Array(count);
      const marked = { spikeCount: 0, stuckCount: 0, suspectCount: 0 };
      for (let i = 0; i < count; i++) {
        usable[i] = usableAt(columns, i) ? 1 : 0;
        const flags = columns.flags[i] ?? 0;
        if ((flags & flag.spike) !== 0) marked.spikeCount++;
        if ((flags & flag.stuck) !== 0) marked.stuckCount++;
        if ((flags & flag.suspectBySource) !== 0) marked.suspectCount++;
      }
      const yearOf = (minute: number) => new Date(minute * 60_000).getUTCFullYear();
      const zone = zoneOffsets(
        'UTC',
        yearOf(columns.epochMinute[0] ?? 0),
        yearOf(columns.epochMinute.at(-1) ?? 0),
      );
      const { localHour } = hourReports(columns.epochMinute, usable, zone);
      const { months, gaps } = coverageOf(localHour, leastGapHours, mostGaps);

      const sources = finishedImports(db)
        .filter((each) => each.stationId === stationId)
        .toSorted((a, b) => a.importId - b.importId);
      const placeOf = new Map(sources.map(({ importId }, place) => [importId, place]));
      const byMonth = Map.groupBy(monthSources(db, stationId), ({ monthStartEpochS }) => monthStartEpochS);
      return {
        months: months.map((month) => ({
          ...month,
          sources: (byMonth.get(Date.UTC(month.year, month.month - 1, 1) / 1000) ?? [])
            .toSorted((a, b) => b.observationCount - a.observationCount)
            .flatMap(({ importId }) => placeOf.get(importId) ?? []),
        })),
        gaps: gaps.map(({ fromHour, hourCount }) => ({ fromEpochS: fromHour * 3600, hourCount })),
        sources: sources.map(({ importId, fileName, kind }) => ({ importId, fileName, kind })),
        hourCount: localHour.length,
        marked,
      };
    },
  }),
};
