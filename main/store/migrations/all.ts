import type { Migration } from './define.ts';
import { settingsAndChanges } from './0010-settings-and-changes.ts';

/** Every migration in order. */
export const migrations: readonly Migration[] = [settingsAndChanges];
