import type Database from 'better-sqlite3';
import { Refusal } from '../requests/problem.ts';
import { troubleOf, wordsOf } from './files.ts';
import { clearHistory } from './history.ts';
import type { Migration } from './migrations/define.ts';
import { schemaVersion } from './schema-version.ts';

/** What a migration did, for the notice to the person. */
export interface MigrationReport {
  fromVersion: number;
  toVersion: number;
  brought: string[];
  /** Changes that can no longer be undone, because a migration may have altered what they mean. */
  forgottenChangesCount: number;
}

/** The newest version among the steps; 0 without any. */
export function newestVersion(steps: readonly Migration[]): number {
  return steps.at(-1)?.version ?? 0;
}

/**
 * Run the steps that a file lacks, each in its own transaction together with its version stamp, so that a stop
 * in between leaves a file that is whole at some version. The order is checked before anything runs.
 *
 * @returns null where nothing was to be done
 * @throws Refusal naming the step that failed and the version at which the file stands
 */
export function migrate(db: Database.Database, steps: readonly Migration[]): MigrationReport | null {
  requireOrder(steps);
  const fromVersion = schemaVersion(db);
  const missing = steps.filter((step) => step.version > fromVersion);
  if (missing.length === 0) return null;

  // SQLite's recipe for changing tables wants the keys off, which only works outside of a transaction;
  // they are checked before each commit instead.
  const hadForeignKeys = db.pragma('foreign_keys', { simple: true }) === 1;
  db.pragma('foreign_keys = OFF');
  let forgottenChangesCount = 0;
  try {
    for (const step of missing)
      db.transaction(() => {
        step.up(db);
        const broken = db.pragma('foreign_key_check') as unknown[];
        if (broken.length > 0)
          throw new Error(`${String(broken.length)} rows point at rows that are missing`);
        if (fromVersion > 0) forgottenChangesCount += clearHistory(db);
        db.pragma(`user_version = ${String(step.version)}`);
      }).immediate();
  } catch (error) {
    throw new Refusal(
      troubleOf(error),
      `The library could not be brought from format ${String(fromVersion)} to ${String(newestVersion(steps))}: ${wordsOf(error)}. It stands whole at format ${String(schemaVersion(db))}, and a backup was made before. Make room on the disk if it is full; else restore that backup with the version that you used until now, and report this.`,
    );
  } finally {
    if (hadForeignKeys) db.pragma('foreign_keys = ON');
  }
  return {
    fromVersion,
    toVersion: newestVersion(steps),
    brought: missing.map((step) => step.brings),
    forgottenChangesCount,
  };
}

/** @throws Error where the steps do not rise: that is a mistake in the program, found before a file is touched. */
export function requireOrder(steps: readonly Migration[]): void {
  let before = 0;
  for (const step of steps) {
    if (!Number.isInteger(step.version) || step.version <= before)
      throw new Error(
        `Migration ${String(step.version)} comes after ${String(before)}: the numbers must rise.`,
      );
    before = step.version;
  }
}
