import type Database from 'better-sqlite3';
import type { SeenVerdict } from '../../shared-calc/wording/verdict-changes.ts';

/** The saved loadings of an aeroplane, or the cells of its review table. */
export type SeenAbout = 'loadings' | 'scenarios';

/** How they stood when somebody looked at them last; empty where nobody has. */
export function readSeenVerdicts(db: Database.Database, aircraftId: string, about: SeenAbout): SeenVerdict[] {
  const row = db
    .prepare<[string, string], { verdicts_json: string }>(
      'SELECT verdicts_json FROM seen_verdict WHERE aircraft_id = ? AND about = ?',
    )
    .get(aircraftId, about);
  return row === undefined ? [] : (JSON.parse(row.verdicts_json) as SeenVerdict[]);
}

export function writeSeenVerdicts(
  db: Database.Database,
  aircraftId: string,
  about: SeenAbout,
  verdicts: readonly SeenVerdict[],
): void {
  db.prepare('DELETE FROM seen_verdict WHERE aircraft_id = ? AND about = ?').run(aircraftId, about);
  if (verdicts.length === 0) return;
  db.prepare('INSERT INTO seen_verdict (aircraft_id, about, verdicts_json) VALUES (?, ?, ?)').run(
    aircraftId,
    about,
    JSON.stringify(verdicts),
  );
}
