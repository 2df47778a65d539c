import { readersRevision, type ReaderOptions } from './reader.ts';

/** How a file is read, as text to be compared: what a person said about it, and the revision of the readers. */
export function readAsJson({
  stationInFile = null,
  reportMonth = null,
  standardOffsetMinutes = null,
  mapping = null,
}: {
  stationInFile?: ReaderOptions['stationInFile'] | null;
  reportMonth?: ReaderOptions['reportMonth'] | null;
  standardOffsetMinutes?: ReaderOptions['standardOffsetMinutes'] | null;
  mapping?: ReaderOptions['mapping'] | null;
}): string {
  return JSON.stringify({
    revision: readersRevision,
    stationInFile,
    reportMonth: reportMonth === null ? null : [reportMonth.year, reportMonth.month],
    standardOffsetMinutes,
    mapping,
  });
}
