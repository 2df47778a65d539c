import type Database from 'better-sqlite3';

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

export const readSetting = {
  all(db: Database.Database): Record<string, Json> {
    const rows = db
      .prepare<[], { key: string; value_json: string }>('SELECT key, value_json FROM setting')
      .all();
    return Object.fromEntries(rows.map((row) => [row.key, JSON.parse(row.value_json) as Json]));
  },
  /** The value of one key, or null where it stands at its default. */
  one(db: Database.Database, key: string): Json {
    const row = db
      .prepare<[string], { value_json: string }>('SELECT value_json FROM setting WHERE key = ?')
      .get(key);
    return row === undefined ? null : (JSON.parse(row.value_json) as Json);
  },
};

export function writeSetting(db: Database.Database, key: string, value: Json): void {
  if (value === null) db.prepare('DELETE FROM setting WHERE key = ?').run(key);
  else
    db.prepare(
      'INSERT INTO setting (key, value_json) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value_json = excluded.value_json',
    ).run(key, JSON.stringify(value));
}
