import type Database from 'better-sqlite3';

/** A sentence about the library as a whole that the window shows until the person dismisses it. */
export interface Notice {
  seq: number;
  atEpochS: number;
  sentence: string;
}

export function addNotice(db: Database.Database, atEpochS: number, sentence: string): void {
  db.prepare('INSERT INTO notice (at_epoch_s, sentence) VALUES (?, ?)').run(atEpochS, sentence);
}

/** Those not yet dismissed, oldest first. */
export function openNotices(db: Database.Database): Notice[] {
  return db
    .prepare<[], Notice>(
      'SELECT seq, at_epoch_s AS atEpochS, sentence FROM notice WHERE dismissed = 0 ORDER BY seq',
    )
    .all();
}

/** True where there was such a notice. */
export function dismissNotice(db: Database.Database, seq: number): boolean {
  return db.prepare('UPDATE notice SET dismissed = 1 WHERE seq = ?').run(seq).changes > 0;
}
