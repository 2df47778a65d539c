import type Database from 'better-sqlite3';
import type { GaugeReading } from '../../shared-calc/fuel/fill-run.ts';
import type { LoadingItemRecord, LoadingRecord, MassKnown } from '../../shared-calc/loading/records.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

type Db = Database.Database;

interface LoadingRow {
  id: string;
  aircraft_id: string;
  name: string;
  category: string;
  burn_kind: LoadingRecord['burn']['kind'];
  burn_every_min: number | null;
  return_into_tank_id: string | null;
  return_pump_l_per_h: number | null;
  taxi_l: number;
  climb_l: number;
  climb_min: number;
  cruise_l_per_h: number;
  landing_after_s: number | null;
  reserve_min: number;
  removed: number;
}

/** The loadings of an aeroplane, the one changed last first. */
export function listLoadings(db: Db, aircraftId: string): { id: string; name: string }[] {
  return db
    .prepare<[string], { id: string; name: string }>(
      'SELECT id, name FROM loading WHERE aircraft_id = ? AND removed = 0 ORDER BY changed_epoch_s DESC, id',
    )
    .all(aircraftId);
}

/** A whole loading, also one that was removed; null where there never was one. */
export function readLoading(db: Db, id: string): Kept<LoadingRecord> | null {
  const row = db.prepare<[string], LoadingRow>('SELECT * FROM loading WHERE id = ?').get(id);
  if (row === undefined) return null;
  const record: LoadingRecord = {
    id,
    aircraftId: row.aircraft_id,
    name: row.name,
    category: row.category,
    items: readItems(db, id),
    fuel: db
      .prepare<[string], FuelRow>('SELECT * FROM loading_fuel WHERE loading_id = ? ORDER BY position')
      .all(id)
      .map(fuelOf),
    burn: {
      kind: row.burn_kind,
      tankIds: db
        .prepare<[string], string>('SELECT tank_id FROM loading_burn WHERE loading_id = ? ORDER BY position')
        .pluck()
        .all(id) as string[],
      everyMin: row.burn_every_min,
      returnLine:
        row.return_into_tank_id === null || row.return_pump_l_per_h === null
          ? null
          : { intoTankId: row.return_into_tank_id, pumpLPerH: row.return_pump_l_per_h },
    },
    flight: {
      taxiL: row.taxi_l,
      climbL: row.climb_l,
      climbMin: row.climb_min,
      cruiseLPerH: row.cruise_l_per_h,
      landingAfterS: row.landing_after_s,
      reserveMin: row.reserve_min,
    },
  };
  return { record, removed: row.removed === 1 };
}

/** Keep the whole loading as given. */
export function writeLoading(
  db: Db,
  { record: loading, removed }: Kept<LoadingRecord>,
  changedEpochS: number,
): void {
  putRow(db, 'loading', {
    id: loading.id,
    aircraft_id: loading.aircraftId,
    name: loading.name,
    category: loading.category,
    burn_kind: loading.burn.kind,
    burn_every_min: loading.burn.everyMin,
    return_into_tank_id: loading.burn.returnLine?.intoTankId ?? null,
    return_pump_l_per_h: loading.burn.returnLine?.pumpLPerH ?? null,
    taxi_l: loading.flight.taxiL,
    climb_l: loading.flight.climbL,
    climb_min: loading.flight.climbMin,
    cruise_l_per_h: loading.flight.cruiseLPerH,
    landing_after_s: loading.flight.landingAfterS,
    reserve_min: loading.flight.reserveMin,
    changed_epoch_s: changedEpochS,
    removed: removed ? 1 : 0,
  });
  writeItems(db, loading.id, loading.items);
  db.prepare('DELETE FROM loading_fuel WHERE loading_id = ?').run(loading.id);
  const fuel = db.prepare(
    `INSERT INTO loading_fuel (loading_id, tank_id, position, low_l, best_l, high_l,
       gauge_reading_at, gauge_position_ratio, calibration_id, temperature_c)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  loading.fuel.forEach((each, position) => {
    const reading = each.gauge?.reading;
    fuel.run(
      loading.id,
      each.tankId,
      position,
      each.lowL,
      each.bestL,
      each.highL,
      reading?.at ?? null,
      reading?.at === 'scale' ? reading.positionRatio : null,
      each.gauge?.calibrationId ?? null,
      each.temperatureC ?? null,
    );
  });
  db.prepare('DELETE FROM loading_burn WHERE loading_id = ?').run(loading.id);
  const burn = db.prepare('INSERT INTO loading_burn (loading_id, position, tank_id) VALUES (?, ?, ?)');
  loading.burn.tankIds.forEach((tankId, position) => burn.run(loading.id, position, tankId));
}

interface FuelRow {
  tank_id: string;
  low_l: number;
  best_l: number;
  high_l: number;
  gauge_reading_at: GaugeReading['at'] | null;
  gauge_position_ratio: number | null;
  calibration_id: string | null;
  temperature_c: number | null;
}

function fuelOf(row: FuelRow): LoadingRecord['fuel'][number] {
  const figures = {
    tankId: row.tank_id,
    lowL: row.low_l,
    bestL: row.best_l,
    highL: row.high_l,
    ...(row.temperature_c === null ? {} : { temperatureC: row.temperature_c }),
  };
  const { gauge_reading_at: at, calibration_id: calibrationId } = row;
  if (at === null || calibrationId === null) return figures;
  const reading: GaugeReading =
    at === 'scale' ? { at, positionRatio: row.gauge_position_ratio ?? 0 } : { at };
  return { ...figures, gauge: { reading, calibrationId } };
}

interface ItemRow {
  id: string;
  station_id: string;
  seat_arm_m: number | null;
  person_id: string | null;
  typed_name: string | null;
  typed_mass_kg: number | null;
  typed_known: MassKnown | null;
  typed_sd_kg: number | null;
  typed_bias_kg: number | null;
}

function readItems(db: Db, loadingId: string): LoadingItemRecord[] {
  return db
    .prepare<[string], ItemRow>('SELECT * FROM loading_item WHERE loading_id = ? ORDER BY position')
    .all(loadingId)
    .map((row) => ({
      id: row.id,
      stationId: row.station_id,
      seatArmM: row.seat_arm_m,
      personId: row.person_id,
      typed:
        row.typed_mass_kg === null
          ? null
          : {
              name: row.typed_name ?? '',
              massKg: row.typed_mass_kg,
              known: row.typed_known ?? 'stated',
              sdKg: row.typed_sd_kg ?? 0,
              biasKg: row.typed_bias_kg ?? 0,
            },
    }));
}

function writeItems(db: Db, loadingId: string, items: readonly LoadingItemRecord[]): void {
  db.prepare('DELETE FROM loading_item WHERE loading_id = ?').run(loadingId);
  const insert = db.prepare(
    `INSERT INTO loading_item (loading_id, id, position, station_id, seat_arm_m, person_id,
       typed_name, typed_mass_kg, typed_known, typed_sd_kg, typed_bias_kg)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  items.forEach((item, position) =>
    insert.run(
      loadingId,
      item.id,
      position,
      item.stationId,
      item.seatArmM,
      item.personId,
      item.typed?.name ?? null,
      item.typed?.massKg ?? null,
      item.typed?.known ?? null,
      item.typed?.sdKg ?? null,
      item.typed?.biasKg ?? null,
    ),
  );
}
