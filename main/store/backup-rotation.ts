/** What the rotation looks at. */
interface Dated {
  madeEpochS: number;
  schemaVersion: number;
}

const lastCount = 5;
const weeksCount = 8;
const weekS = 7 * 86_400;
/** 1970-01-05 was a Monday. */
const firstMondayS = 4 * 86_400;

/**
 * Which backups stay: the last five, the last one of each of the last eight weeks (Monday to Sunday, UTC), and the
 * last one of each schema version, because only that version of the program may be able to read it.
 */
export function backupsToKeep<T extends Dated>(backups: readonly T[], nowEpochS: number): Set<T> {
  const newestFirst = backups.toSorted((a, b) => b.madeEpochS - a.madeEpochS);
  const keep = new Set(newestFirst.slice(0, lastCount));
  const thisWeek = weekOf(nowEpochS);
  const weeksSeen = new Set<number>();
  const versionsSeen = new Set<number>();
  for (const backup of newestFirst) {
    const week = weekOf(backup.madeEpochS);
    if (week > thisWeek - weeksCount && !weeksSeen.has(week)) keep.add(backup);
    if (!versionsSeen.has(backup.schemaVersion)) keep.add(backup);
    weeksSeen.add(week);
    versionsSeen.add(backup.schemaVersion);
  }
  return keep;
}

function weekOf(epochS: number): number {
  return Math.floor((epochS - firstMondayS) / weekS);
}
