import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import type { FigureSource } from '../../shared-calc/loading/records.ts';
import { performanceFaults } from '../../shared-calc/performance/performance-faults.ts';
import { emptyPerformance, type PerformanceRecord } from '../../shared-calc/performance/records.ts';
import { readPerformance, writePerformance } from '../store/performance.ts';
import { requireAircraft } from './aircraft.ts';
import { honest } from './comparisons.ts';
import { change, read } from './define.ts';
import { faultsRefused } from './faults-refused.ts';
import { performance as performanceSchema } from './performance-schema.ts';
import { id, named } from './ranges.ts';

export const performanceRequests = {
  'performance.get': read({
    about: "The manual's take-off, landing and climb tables of an aeroplane; empty where none were entered.",
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: performanceSchema,
    handle: ({ db }, { aircraftId }) => {
      const { printed } = requireAircraft(db, aircraftId);
      return readPerformance(db, aircraftId) ?? emptyPerformance(aircraftId, printed.mass);
    },
  }),
  'performance.put': change({
    about: "Keep an aeroplane's take-off, landing and climb tables: the whole record as it is to be.",
    input: z.strictObject({ performance: performanceSchema, named }),
    output: z.strictObject({}),
    handle: ({ db, nowEpochS }, input) => {
      const given = input.performance;
      const { name, printed } = requireAircraft(db, given.aircraftId);
      const empty = emptyPerformance(given.aircraftId, printed.mass);
      const faults = performanceFaults(given);
      if (faults.length > 0) throw faultsRefused(faults, 'performance.');
      const before = readPerformance(db, given.aircraftId) ?? empty;
      const today = dayHere(nowEpochS());
      const after = withEntryDays(before, withHonestDays(before, given), today);
      // An empty record is kept as none, so that undo of the first entry leaves no trace.
      writePerformance(db, given.aircraftId, isDeepStrictEqual(after, empty) ? null : after);
      return {
        output: {},
        named: input.named ?? `performance tables of ${name}`,
        screen: 'aircraft' as const,
        areas: ['aircraft' as const],
        inverse: { request: 'performance.put', input: { performance: before, named: input.named } },
        forward: { request: 'performance.put', input: { performance: given, named: input.named } },
      };
    },
  }),
};

/** Take back 'compared with the manual' from each part whose printed figures changed and whose day did not. */
function withHonestDays(before: PerformanceRecord, after: PerformanceRecord): PerformanceRecord {
  const part = <P extends { source: FigureSource }>(was: P | null, is: P | null) =>
    was === null || is === null
      ? is
      : { ...is, source: honest(was.source, is.source, printedFigures(was), printedFigures(is)) };
  return {
    ...after,
    takeOff: part(before.takeOff, after.takeOff),
    landing: part(before.landing, after.landing),
    climb: part(before.climb, after.climb),
    seaLevel: part(before.seaLevel, after.seaLevel),
    wind: part(before.wind, after.wind) ?? after.wind,
  };
}

/**
 * A table whose printed figures changed was entered today, unless another day came with it: then an undo brings the day
 * of the figures that it brings back.
 */
function withEntryDays(
  before: PerformanceRecord,
  after: PerformanceRecord,
  today: string,
): PerformanceRecord {
  const table = <T extends { enteredOn: string | null }>(was: T | null, is: T | null): T | null => {
    if (is === null || is.enteredOn !== (was?.enteredOn ?? null)) return is;
    const isSame = was !== null && isDeepStrictEqual(printedFigures(was), printedFigures(is));
    return isSame ? is : { ...is, enteredOn: today };
  };
  return {
    ...after,
    takeOff: table(before.takeOff, after.takeOff),
    landing: table(before.landing, after.landing),
    climb: table(before.climb, after.climb),
  };
}

/** What stands in the manual: not what the pilot chose on top of it, nor that a suspicion was answered. */
function printedFigures(part: object): unknown {
  const entries = Object.entries(part as Record<string, unknown>);
  return Object.fromEntries(
    entries
      .filter(([key]) => !CHOSEN.has(key))
      .map(([key, value]) => [
        key,
        key === 'rows' ? (value as object[]).map((row) => ({ ...row, asPrinted: null })) : value,
      ]),
  );
}

const CHOSEN: ReadonlySet<string> = new Set([
  'source',
  'enteredOn',
  'words',
  'safety',
  'readingSdRatio',
  'against',
  'ownCrosswindMs',
  'ownTailwindMs',
]);

/** The day on this computer's calendar, as a person would write it down. */
function dayHere(epochS: number): string {
  const at = new Date(epochS * 1000);
  return [at.getFullYear(), at.getMonth() + 1, at.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
}
