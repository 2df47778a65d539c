import type Database from 'better-sqlite3';
import type { AircraftRecord, FigureSource, LateralRecord } from '../../shared-calc/loading/records.ts';
import { readEnvelopes, writeEnvelopes } from './envelopes.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';
import { readGroups, readStations, writeGroups, writeStations } from './stations.ts';
import { readTanks, writeTanks } from './tanks.ts';

type Db = Database.Database;
type From = FigureSource['from'];

interface AircraftRow {
  id: string;
  name: string;
  identification: string;
  datum_words: string;
  printed_mass: AircraftRecord['printed']['mass'];
  printed_arm: AircraftRecord['printed']['arm'];
  printed_volume: AircraftRecord['printed']['volume'];
  printed_moment_per: 100 | 1000 | null;
  mac_leading_edge_arm_m: number | null;
  mac_length_m: number | null;
  gear: AircraftRecord['gear']['kind'];
  nose_or_tail_arm_m: number | null;
  main_wheels_arm_m: number | null;
  tail_end_arm_m: number | null;
  max_ramp_kg: number | null;
  max_take_off_kg: number | null;
  max_landing_kg: number | null;
  max_zero_fuel_kg: number | null;
  left_right_most_kg: number | null;
  lateral_across: 'arm' | 'moment' | null;
  lateral_left_arm_m: number | null;
  lateral_right_arm_m: number | null;
  lateral_left_moment_kg_m: number | null;
  lateral_right_moment_kg_m: number | null;
  oil_lateral_arm_m: number | null;
  oil_mass_kg: number | null;
  oil_arm_m: number | null;
  best_glide_ms: number | null;
  best_glide_ratio: number | null;
  fuel_flow_l_per_h: number | null;
  taxi_fuel_l: number;
  legal_reserve_min: number;
  own_reserve_min: number;
  limits_from: From;
  limits_compared_on: string | null;
  performance_from: From;
  performance_compared_on: string | null;
}

/** Every aeroplane that was not removed, by name. */
export function listAircraft(db: Db): { id: string; name: string; identification: string }[] {
  return db
    .prepare<[], { id: string; name: string; identification: string }>(
      'SELECT id, name, identification FROM aircraft WHERE removed = 0 ORDER BY name COLLATE NOCASE, id',
    )
    .all();
}

/** The whole aeroplane, also one that was removed; null where there never was one. */
export function readAircraft(db: Db, id: string): Kept<AircraftRecord> | null {
  const row = db
    .prepare<[string], AircraftRow & { removed: number }>('SELECT * FROM aircraft WHERE id = ?')
    .get(id);
  if (row === undefined) return null;
  const record: AircraftRecord = {
    id,
    name: row.name,
    identification: row.identification,
    datumWords: row.datum_words,
    printed: {
      mass: row.printed_mass,
      arm: row.printed_arm,
      volume: row.printed_volume,
      ...(row.printed_moment_per === null ? {} : { momentPer: row.printed_moment_per }),
    },
    mac:
      row.mac_leading_edge_arm_m === null || row.mac_length_m === null
        ? null
        : { leadingEdgeArmM: row.mac_leading_edge_arm_m, lengthM: row.mac_length_m },
    gear: { kind: row.gear, noseOrTailArmM: row.nose_or_tail_arm_m, mainArmM: row.main_wheels_arm_m },
    tailEndArmM: row.tail_end_arm_m,
    maxMasses: {
      rampKg: row.max_ramp_kg,
      takeOffKg: row.max_take_off_kg,
      landingKg: row.max_landing_kg,
      zeroFuelKg: row.max_zero_fuel_kg,
    },
    leftRightMostKg: row.left_right_most_kg,
    ...(row.lateral_across === null ? {} : { lateral: lateralOf(row, row.lateral_across) }),
    oil:
      row.oil_mass_kg === null || row.oil_arm_m === null
        ? null
        : { massKg: row.oil_mass_kg, armM: row.oil_arm_m },
    stations: readStations(db, id),
    groups: readGroups(db, id),
    tanks: readTanks(db, id),
    envelopes: readEnvelopes(db, id),
    performance: {
      bestGlideMs: row.best_glide_ms,
      bestGlideRatio: row.best_glide_ratio,
      fuelFlowLPerH: row.fuel_flow_l_per_h,
      taxiFuelL: row.taxi_fuel_l,
      legalReserveMin: row.legal_reserve_min,
      ownReserveMin: row.own_reserve_min,
    },
    limitsSource: { from: row.limits_from, comparedOn: row.limits_compared_on },
    performanceSource: { from: row.performance_from, comparedOn: row.performance_compared_on },
  };
  return { record, removed: row.removed === 1 };
}

function lateralOf(row: AircraftRow, across: LateralRecord['across']): LateralRecord {
  const isArm = across === 'arm';
  return {
    across,
    left: isArm ? row.lateral_left_arm_m : row.lateral_left_moment_kg_m,
    right: isArm ? row.lateral_right_arm_m : row.lateral_right_moment_kg_m,
    oilArmM: row.oil_lateral_arm_m,
  };
}

function lateralColumns(lateral: LateralRecord | undefined) {
  const isArm = lateral?.across === 'arm';
  const [left, right] = [lateral?.left ?? null, lateral?.right ?? null];
  return {
    lateral_across: lateral?.across ?? null,
    lateral_left_arm_m: isArm ? left : null,
    lateral_right_arm_m: isArm ? right : null,
    lateral_left_moment_kg_m: isArm ? null : left,
    lateral_right_moment_kg_m: isArm ? null : right,
    oil_lateral_arm_m: lateral?.oilArmM ?? null,
  };
}

/** Keep the whole aeroplane as given; stations and tanks that it no longer has stay as removed. */
export function writeAircraft(db: Db, aircraft: AircraftRecord): void {
  putRow(db, 'aircraft', {
    id: aircraft.id,
    name: aircraft.name,
    identification: aircraft.identification,
    datum_words: aircraft.datumWords,
    printed_mass: aircraft.printed.mass,
    printed_arm: aircraft.printed.arm,
    printed_volume: aircraft.printed.volume,
    printed_moment_per: aircraft.printed.momentPer ?? null,
    mac_leading_edge_arm_m: aircraft.mac?.leadingEdgeArmM ?? null,
    mac_length_m: aircraft.mac?.lengthM ?? null,
    gear: aircraft.gear.kind,
    nose_or_tail_arm_m: aircraft.gear.noseOrTailArmM,
    main_wheels_arm_m: aircraft.gear.mainArmM,
    tail_end_arm_m: aircraft.tailEndArmM,
    max_ramp_kg: aircraft.maxMasses.rampKg,
    max_take_off_kg: aircraft.maxMasses.takeOffKg,
    max_landing_kg: aircraft.maxMasses.landingKg,
    max_zero_fuel_kg: aircraft.maxMasses.zeroFuelKg,
    left_right_most_kg: aircraft.leftRightMostKg,
    ...lateralColumns(aircraft.lateral),
    oil_mass_kg: aircraft.oil?.massKg ?? null,
    oil_arm_m: aircraft.oil?.armM ?? null,
    best_glide_ms: aircraft.performance.bestGlideMs,
    best_glide_ratio: aircraft.performance.bestGlideRatio,
    fuel_flow_l_per_h: aircraft.performance.fuelFlowLPerH,
    taxi_fuel_l: aircraft.performance.taxiFuelL,
    legal_reserve_min: aircraft.performance.legalReserveMin,
    own_reserve_min: aircraft.performance.ownReserveMin,
    limits_from: aircraft.limitsSource.from,
    limits_compared_on: aircraft.limitsSource.comparedOn,
    performance_from: aircraft.performanceSource.from,
    performance_compared_on: aircraft.performanceSource.comparedOn,
    removed: 0,
  });
  writeStations(db, aircraft.id, aircraft.stations);
  writeTanks(db, aircraft.id, aircraft.tanks);
  writeGroups(db, aircraft.id, aircraft.groups);
  writeEnvelopes(db, aircraft.id, aircraft.envelopes);
}

export function markAircraftRemoved(db: Db, id: string): void {
  db.prepare('UPDATE aircraft SET removed = 1 WHERE id = ?').run(id);
}

/** The aeroplane (removed or not) to which a station, tank, group or envelope of that id belongs. */
export function ownerOfPart(db: Db, partId: string): string | null {
  const row = db
    .prepare<{ id: string }, { aircraft_id: string }>(
      `SELECT aircraft_id FROM station WHERE id = @id UNION ALL SELECT aircraft_id FROM tank WHERE id = @id
       UNION ALL SELECT aircraft_id FROM station_group WHERE id = @id
       UNION ALL SELECT aircraft_id FROM envelope WHERE id = @id`,
    )
    .get({ id: partId });
  return row?.aircraft_id ?? null;
}
