import type Database from 'better-sqlite3';

/** One numbered step of the schema. Never edited once it has shipped; the next change is a new file. */
export interface Migration {
  /** Numbered in tens, so that a branch's step can be put between. */
  version: number;
  /** What it brings, for the log and for the person whose file is migrated. */
  brings: string;
  up(db: Database.Database): void;
}
