import type Database from 'better-sqlite3';
import type { KeptRefits } from '../../shared-calc/fuel/kept-refits.ts';

/** Keep the curves behind an adopted band: one row a curve. */
export function appendRefits(db: Database.Database, calibrationId: string, refits: KeptRefits): void {
  const insert = db.prepare(
    `INSERT INTO calibration_refit (calibration_id, refit, volumes_l_json, container_errors_json)
     VALUES (?, ?, ?, ?)`,
  );
  refits.volumesL.forEach((volumesL, refit) => {
    const errors = Object.entries(refits.containerErrors).map(
      ([id, each]) => [id, each[refit] ?? 0] as const,
    );
    insert.run(calibrationId, refit, JSON.stringify(volumesL), JSON.stringify(Object.fromEntries(errors)));
  });
}

/** The curves behind an adopted band; null where it was adopted before they were kept. */
export function readRefits(db: Database.Database, calibrationId: string): KeptRefits | null {
  const rows = db
    .prepare<[string], { volumes: string; errors: string }>(
      `SELECT volumes_l_json AS volumes, container_errors_json AS errors
       FROM calibration_refit WHERE calibration_id = ? ORDER BY refit`,
    )
    .all(calibrationId);
  if (rows.length === 0) return null;
  const positionsRatio = db
    .prepare<[string], number>(
      'SELECT position_ratio FROM calibration_band WHERE calibration_id = ? ORDER BY position',
    )
    .pluck()
    .all(calibrationId);
  const errors = rows.map((row) => JSON.parse(row.errors) as Record<string, number>);
  return {
    positionsRatio,
    volumesL: rows.map(({ volumes }) => JSON.parse(volumes) as number[]),
    containerErrors: Object.fromEntries(
      Object.keys(errors[0] ?? {}).map((id) => [id, errors.map((each) => each[id] ?? 0)]),
    ),
  };
}
