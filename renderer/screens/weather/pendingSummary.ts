import type { PendingFile, Preview, StationChoice } from './pendingFile.ts';

/** Files for one station, as one line of the summary. */
export interface PendingGroup {
  key: string;
  /** null for the files whose station nobody knows yet. */
  station: StationChoice | null;
  stationWords: string;
  files: (PendingFile & { preview: Preview })[];
  kindsInWords: string[];
  natures: Preview['nature'][];
  firstEpochS: number | null;
  lastEpochS: number | null;
  observationCount: number;
  unusable: { reason: string; count: number }[];
  /** What is left out or marked, over all files, most frequent first, with the first examples. */
  skipped: SkippedInFiles[];
  /** What a person has to know, each said once. */
  remarks: string[];
}

export interface SkippedInFiles {
  reason: string;
  count: number;
  examples: { fileName: string; line: number; text: string }[];
}

const keptExamples = 3;

/**
 * Files that can be imported, by station: one station however the elevation in its records moved over the years.
 * Those without a station come last.
 */
export function groupByStation(files: readonly PendingFile[]): PendingGroup[] {
  const groups = new Map<string, PendingGroup['files']>();
  for (const file of files) {
    if (!hasPreview(file)) continue;
    const key = stationKey(file.station);
    groups.set(key, [...(groups.get(key) ?? []), file]);
  }
  return [...groups]
    .map(([key, of]) => groupOf(key, of))
    .toSorted((a, b) => Number(a.station === null) - Number(b.station === null));
}

/** Two choices with the same key are one station, as the import takes them. */
function stationKey(station: StationChoice | null): string {
  if (station === null) return '';
  if ('listKey' in station) return `list ${station.listKey}`;
  if ('stationId' in station) return `own ${station.stationId}`;
  const { place } = station;
  return place.placeFrom === 'file' && place.identifier != null
    ? `records ${place.identifier}`
    : `place ${JSON.stringify(place)}`;
}

function hasPreview(file: PendingFile): file is PendingFile & { preview: Preview } {
  return file.preview !== null;
}

function groupOf(key: string, files: PendingGroup['files']): PendingGroup {
  const previews = files.map(({ preview }) => preview);
  const moments = previews.flatMap(({ firstEpochS, lastEpochS }) =>
    firstEpochS === null || lastEpochS === null ? [] : [firstEpochS, lastEpochS],
  );
  const unusable = new Map<string, number>();
  for (const preview of previews)
    for (const { reason, count } of preview.unusable)
      unusable.set(reason, (unusable.get(reason) ?? 0) + count);
  return {
    key,
    station: files[0]?.station ?? null,
    stationWords: files[0]?.stationWords ?? '',
    files,
    kindsInWords: unique(previews.map(({ kindInWords }) => kindInWords)),
    natures: unique(previews.map(({ nature }) => nature)),
    firstEpochS: moments.length === 0 ? null : Math.min(...moments),
    lastEpochS: moments.length === 0 ? null : Math.max(...moments),
    observationCount: previews.reduce((sum, { observationCount }) => sum + observationCount, 0),
    unusable: [...unusable]
      .map(([reason, count]) => ({ reason, count }))
      .toSorted((a, b) => b.count - a.count),
    skipped: skippedOf(files),
    remarks: unique(previews.flatMap(({ remarks, stationRemarks }) => [...remarks, ...stationRemarks])),
  };
}

function skippedOf(files: PendingGroup['files']): SkippedInFiles[] {
  const byReason = new Map<string, SkippedInFiles>();
  for (const { fileName, preview } of files)
    for (const { reason, count, examples } of preview.skipped) {
      const found = byReason.get(reason) ?? { reason, count: 0, examples: [] };
      byReason.set(reason, found);
      found.count += count;
      found.examples.push(
        ...examples.slice(0, keptExamples - found.examples.length).map((each) => ({ fileName, ...each })),
      );
    }
  return [...byReason.values()].toSorted((a, b) => b.count - a.count);
}

function unique<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}
