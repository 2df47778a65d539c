import type Database from 'better-sqlite3';
import type { Call, Screen } from '../requests/define.ts';

/** One change that a person made, with the calls that take it back and do it again. */
export interface ChangeRecord {
  atEpochS: number;
  named: string;
  screen: Screen;
  forward: Call;
  inverse: Call;
}

export interface StoredChange extends ChangeRecord {
  seq: number;
  undone: boolean;
}

interface Row {
  seq: number;
  at_epoch_s: number;
  named: string;
  screen: string;
  forward_json: string;
  inverse_json: string;
  undone: number;
}

/** How many changes can be taken back; older ones are forgotten, the data stays. */
export const keptChangesCount = 500;

/** Add a change to the list. What had been undone before it can no longer be done again. */
export function recordChange(db: Database.Database, change: ChangeRecord): void {
  db.prepare('DELETE FROM change_record WHERE undone = 1').run();
  db.prepare(
    'INSERT INTO change_record (at_epoch_s, named, screen, forward_json, inverse_json, undone) VALUES (?, ?, ?, ?, ?, 0)',
  ).run(
    change.atEpochS,
    change.named,
    change.screen,
    JSON.stringify(change.forward),
    JSON.stringify(change.inverse),
  );
  db.prepare('DELETE FROM change_record WHERE seq <= (SELECT MAX(seq) FROM change_record) - ?').run(
    keptChangesCount,
  );
}

/** The change that undo would take back next, or null. */
export function nextUndo(db: Database.Database): StoredChange | null {
  return stored(
    db.prepare<[], Row>('SELECT * FROM change_record WHERE undone = 0 ORDER BY seq DESC LIMIT 1').get(),
  );
}

/** The change that redo would do again next, or null. */
export function nextRedo(db: Database.Database): StoredChange | null {
  return stored(
    db.prepare<[], Row>('SELECT * FROM change_record WHERE undone = 1 ORDER BY seq ASC LIMIT 1').get(),
  );
}

/** The last changes, newest first, the undone ones among them. */
export function lastChanges(db: Database.Database, mostCount: number): StoredChange[] {
  return db
    .prepare<[number], Row>('SELECT * FROM change_record ORDER BY seq DESC LIMIT ?')
    .all(mostCount)
    .map(change);
}

/** Note that a change was undone (or done again), with the call that now leads back the other way. */
export function markUndone(db: Database.Database, seq: number, forward: Call): void {
  db.prepare('UPDATE change_record SET undone = 1, forward_json = ? WHERE seq = ?').run(
    JSON.stringify(forward),
    seq,
  );
}

export function markRedone(db: Database.Database, seq: number, inverse: Call): void {
  db.prepare('UPDATE change_record SET undone = 0, inverse_json = ? WHERE seq = ?').run(
    JSON.stringify(inverse),
    seq,
  );
}

/** Forget every change (a migration may have altered what they mean). Gives how many were forgotten. */
export function clearHistory(db: Database.Database): number {
  return db.prepare('DELETE FROM change_record').run().changes;
}

function stored(row: Row | undefined): StoredChange | null {
  return row === undefined ? null : change(row);
}

function change(row: Row): StoredChange {
  return {
    seq: row.seq,
    atEpochS: row.at_epoch_s,
    named: row.named,
    screen: row.screen as Screen,
    forward: JSON.parse(row.forward_json) as Call,
    inverse: JSON.parse(row.inverse_json) as Call,
    undone: row.undone === 1,
  };
}
