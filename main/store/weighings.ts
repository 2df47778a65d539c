import type Database from 'better-sqlite3';
import type { ScaleReading, WeighingRecord } from '../../shared-calc/loading/records.ts';

interface WeighingRow {
  id: string;
  aircraft_id: string;
  weighed_on: string;
  how: WeighingRecord['how'];
  empty_mass_kg: number;
  empty_arm_m: number;
  mass_sd_kg: number;
  arm_sd_m: number;
  lateral_arm_m: number | null;
  lateral_arm_sd_m: number | null;
  unusable_fuel_included: number;
  oil_included: number;
  note: string;
  withdrawn: number;
}

/** Every weighing of an aeroplane, the latest first, withdrawn ones among them. */
export function readWeighings(db: Database.Database, aircraftId: string): WeighingRecord[] {
  const readings = db.prepare<[string], Omit<ScaleReading, 'lateralArmM'> & { lateralArmM: number | null }>(
    `SELECT wheel, arm_m AS armM, reading_kg AS readingKg, tare_kg AS tareKg, lateral_arm_m AS lateralArmM
     FROM weighing_scale WHERE weighing_id = ? ORDER BY position`,
  );
  return db
    .prepare<[string], WeighingRow>(
      'SELECT * FROM weighing WHERE aircraft_id = ? ORDER BY weighed_on DESC, recorded_epoch_s DESC',
    )
    .all(aircraftId)
    .map((row) => ({
      id: row.id,
      aircraftId: row.aircraft_id,
      weighedOn: row.weighed_on,
      how: row.how,
      emptyMassKg: row.empty_mass_kg,
      emptyArmM: row.empty_arm_m,
      massSdKg: row.mass_sd_kg,
      armSdM: row.arm_sd_m,
      ...(row.lateral_arm_m === null ? {} : { lateralArmM: row.lateral_arm_m }),
      ...(row.lateral_arm_sd_m === null ? {} : { lateralArmSdM: row.lateral_arm_sd_m }),
      unusableFuelIncluded: row.unusable_fuel_included === 1,
      oilIncluded: row.oil_included === 1,
      note: row.note,
      readings: readings
        .all(row.id)
        .map(({ lateralArmM, ...reading }) => (lateralArmM === null ? reading : { ...reading, lateralArmM })),
      withdrawn: row.withdrawn === 1,
    }));
}

/** Append a weighing; none is ever overwritten. */
export function appendWeighing(
  db: Database.Database,
  weighing: Omit<WeighingRecord, 'withdrawn'>,
  recordedEpochS: number,
): void {
  db.prepare(
    `INSERT INTO weighing (id, aircraft_id, recorded_epoch_s, weighed_on, how, empty_mass_kg, empty_arm_m, mass_sd_kg,
       arm_sd_m, lateral_arm_m, lateral_arm_sd_m, unusable_fuel_included, oil_included, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ).run(
    weighing.id,
    weighing.aircraftId,
    recordedEpochS,
    weighing.weighedOn,
    weighing.how,
    weighing.emptyMassKg,
    weighing.emptyArmM,
    weighing.massSdKg,
    weighing.armSdM,
    weighing.lateralArmM ?? null,
    weighing.lateralArmSdM ?? null,
    weighing.unusableFuelIncluded ? 1 : 0,
    weighing.oilIncluded ? 1 : 0,
    weighing.note,
  );
  const insert = db.prepare(
    `INSERT INTO weighing_scale (weighing_id, position, wheel, arm_m, reading_kg, tare_kg, lateral_arm_m)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
  );
  weighing.readings.forEach(({ wheel, armM, readingKg, tareKg, lateralArmM }, position) =>
    insert.run(weighing.id, position, wheel, armM, readingKg, tareKg, lateralArmM ?? null),
  );
}

/** Withdraw a weighing or let it count again. Gives the aeroplane's id and day, or null where there is none. */
export function setWithdrawn(
  db: Database.Database,
  id: string,
  withdrawn: boolean,
): { weighedOn: string; before: boolean } | null {
  const row = db
    .prepare<[string], { weighed_on: string; withdrawn: number }>(
      'SELECT weighed_on, withdrawn FROM weighing WHERE id = ?',
    )
    .get(id);
  if (row === undefined) return null;
  db.prepare('UPDATE weighing SET withdrawn = ? WHERE id = ?').run(withdrawn ? 1 : 0, id);
  return { weighedOn: row.weighed_on, before: row.withdrawn === 1 };
}
