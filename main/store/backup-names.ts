import { basename, dirname, join } from 'node:path';

/** Why a backup was made. */
export type BackupReason = 'start' | 'migration' | 'asked';

/** What a backup's name says. */
export interface BackupName {
  madeEpochS: number;
  schemaVersion: number;
  reason: BackupReason;
}

/** Backups lie in a folder beside their library, so that they travel and are found together. */
export function backupsFolder(libraryPath: string): string {
  return join(dirname(libraryPath), `${basename(libraryPath)}-backups`);
}

/** '2026-11-25T14-56-32Z v15 start.tarewing': sorted by name is sorted by time, and no system forbids a sign of it. */
export function backupName({ madeEpochS, schemaVersion, reason }: BackupName): string {
  return `${timeForNames(madeEpochS)} v${String(schemaVersion)} ${reason}.tarewing`;
}

/** A UTC time, to the second, without the colons that some systems forbid in names. */
export function timeForNames(epochS: number): string {
  return `${new Date(Math.floor(epochS) * 1000).toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
}

const shape = /^(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z v(\d+) (start|migration|asked)\.tarewing$/;

/** null for a file that is no backup of ours. */
export function parseBackupName(name: string): BackupName | null {
  const [, day, hour, minute, second, version, reason] = shape.exec(name) ?? [];
  const madeEpochS = Date.parse(`${String(day)}T${String(hour)}:${String(minute)}:${String(second)}Z`) / 1000;
  if (version === undefined || reason === undefined || Number.isNaN(madeEpochS)) return null;
  return { madeEpochS, schemaVersion: Number(version), reason: reason as BackupReason };
}
