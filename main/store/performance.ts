import type Database from 'better-sqlite3';
import type { FigureSource } from '../../shared-calc/loading/records.ts';
import type {
  ClimbTableRecord,
  DistanceTableRecord,
  NoteRecord,
  PerformanceRecord,
  PerformanceUnits,
  PrintedPlace,
} from '../../shared-calc/performance/records.ts';

type Db = Database.Database;
type From = FigureSource['from'];
type TableName = 'takeOff' | 'landing' | 'climb';

interface PerformanceRow {
  printed_altitude: PerformanceUnits['altitude'];
  printed_temperature: PerformanceUnits['temperature'];
  printed_distance: PerformanceUnits['distance'];
  printed_climb_rate: PerformanceUnits['climbRate'];
  printed_speed: PerformanceUnits['speed'];
  demonstrated_crosswind_ms: number | null;
  own_crosswind_ms: number | null;
  own_tailwind_ms: number | null;
  wind_from: From;
  wind_compared_on: string | null;
  sea_level_ground_roll_m: number | null;
  sea_level_over_obstacle_m: number;
  sea_level_mass_kg: number;
  sea_level_safety_ratio: number;
  sea_level_safety_source: string;
  sea_level_reading_sd_ratio: number;
  sea_level_from: From;
  sea_level_compared_on: string | null;
}

// The table's checks promise that these are filled where the table is not for a climb.
interface TableRow {
  of: TableName;
  words: string;
  surface: DistanceTableRecord['surface'];
  wind_margin: DistanceTableRecord['windMargin'];
  speed_ms: number | null;
  safety_ratio: number;
  safety_source: string;
  fits: DistanceTableRecord['against'];
  reading_sd_ratio: number;
  figures_from: From;
  compared_on: string | null;
  entered_on: string | null;
}

interface PrintedRow {
  mass_kg: number | null;
  pressure_altitude_m: number | null;
  temperature_c: number | null;
  headwind_ms: number | null;
  ground_roll_m: number | null;
  over_obstacle_m: number | null;
  climb_rate_ms: number | null;
  speed_ms: number | null;
  as_printed: number;
}

/** What was entered of an aeroplane's performance; null where nothing was. */
export function readPerformance(db: Db, aircraftId: string): PerformanceRecord | null {
  const row = db
    .prepare<[string], PerformanceRow>('SELECT * FROM performance WHERE aircraft_id = ?')
    .get(aircraftId);
  if (row === undefined) return null;
  const tables = db
    .prepare<[string], TableRow>('SELECT * FROM performance_table WHERE aircraft_id = ?')
    .all(aircraftId);
  const distances = (of: 'takeOff' | 'landing') => {
    const table = tables.find((each) => each.of === of);
    return table === undefined ? null : readDistanceTable(db, aircraftId, table);
  };
  const climb = tables.find(({ of }) => of === 'climb');
  return {
    aircraftId,
    printed: {
      altitude: row.printed_altitude,
      temperature: row.printed_temperature,
      distance: row.printed_distance,
      climbRate: row.printed_climb_rate,
      speed: row.printed_speed,
    },
    takeOff: distances('takeOff'),
    landing: distances('landing'),
    climb: climb === undefined ? null : readClimbTable(db, aircraftId, climb),
    seaLevel:
      row.sea_level_ground_roll_m === null
        ? null
        : {
            groundRollM: row.sea_level_ground_roll_m,
            overObstacleM: row.sea_level_over_obstacle_m,
            massKg: row.sea_level_mass_kg,
            safety: { factorRatio: row.sea_level_safety_ratio, source: row.sea_level_safety_source },
            readingSdRatio: row.sea_level_reading_sd_ratio,
            source: { from: row.sea_level_from, comparedOn: row.sea_level_compared_on },
          },
    wind: {
      demonstratedCrosswindMs: row.demonstrated_crosswind_ms,
      ownCrosswindMs: row.own_crosswind_ms,
      ownTailwindMs: row.own_tailwind_ms,
      source: { from: row.wind_from, comparedOn: row.wind_compared_on },
    },
  };
}

function readDistanceTable(db: Db, aircraftId: string, table: TableRow): DistanceTableRecord {
  const notes = db
    .prepare<[string, TableName], NoteRecord>(
      `SELECT counts, per_amount AS amount, most_amount AS mostAmount, change_ratio AS changeRatio, share_of AS shareOf
       FROM performance_note WHERE aircraft_id = ? AND of = ? ORDER BY position`,
    )
    .all(aircraftId, table.of);
  return {
    words: table.words,
    surface: table.surface,
    rows: printedRows(db, aircraftId, table.of).map((row) => ({
      ...placeOf(row),
      groundRollM: row.ground_roll_m,
      overObstacleM: row.over_obstacle_m,
      asPrinted: row.as_printed === 1,
    })),
    notes,
    windMargin: table.wind_margin,
    speedMs: table.speed_ms,
    safety: { factorRatio: table.safety_ratio, source: table.safety_source },
    readingSdRatio: table.reading_sd_ratio,
    against: table.fits,
    source: { from: table.figures_from, comparedOn: table.compared_on },
    enteredOn: table.entered_on,
  };
}

function readClimbTable(db: Db, aircraftId: string, table: TableRow): ClimbTableRecord {
  return {
    words: table.words,
    rows: printedRows(db, aircraftId, 'climb').map((row) => ({
      ...placeOf(row),
      climbRateMs: row.climb_rate_ms,
      speedMs: row.speed_ms,
      asPrinted: row.as_printed === 1,
    })),
    readingSdRatio: table.reading_sd_ratio,
    source: { from: table.figures_from, comparedOn: table.compared_on },
    enteredOn: table.entered_on,
  };
}

function printedRows(db: Db, aircraftId: string, of: TableName): PrintedRow[] {
  return db
    .prepare<[string, TableName], PrintedRow>(
      'SELECT * FROM performance_row WHERE aircraft_id = ? AND of = ? ORDER BY position',
    )
    .all(aircraftId, of);
}

function placeOf(row: PrintedRow): PrintedPlace {
  return {
    massKg: row.mass_kg,
    pressureAltitudeM: row.pressure_altitude_m,
    temperatureC: row.temperature_c,
    headwindMs: row.headwind_ms,
  };
}

/** Keep the whole record as given, or none where it is null. Nothing refers to its rows, so they are written anew. */
export function writePerformance(db: Db, aircraftId: string, record: PerformanceRecord | null): void {
  db.prepare('DELETE FROM performance WHERE aircraft_id = ?').run(aircraftId);
  if (record === null) return;
  const { printed, wind, seaLevel } = record;
  insert(db, 'performance', {
    aircraft_id: aircraftId,
    printed_altitude: printed.altitude,
    printed_temperature: printed.temperature,
    printed_distance: printed.distance,
    printed_climb_rate: printed.climbRate,
    printed_speed: printed.speed,
    demonstrated_crosswind_ms: wind.demonstratedCrosswindMs,
    own_crosswind_ms: wind.ownCrosswindMs,
    own_tailwind_ms: wind.ownTailwindMs,
    wind_from: wind.source.from,
    wind_compared_on: wind.source.comparedOn,
    sea_level_ground_roll_m: seaLevel?.groundRollM ?? null,
    sea_level_over_obstacle_m: seaLevel?.overObstacleM ?? null,
    sea_level_mass_kg: seaLevel?.massKg ?? null,
    sea_level_safety_ratio: seaLevel?.safety.factorRatio ?? null,
    sea_level_safety_source: seaLevel?.safety.source ?? null,
    sea_level_reading_sd_ratio: seaLevel?.readingSdRatio ?? null,
    sea_level_from: seaLevel?.source.from ?? null,
    sea_level_compared_on: seaLevel?.source.comparedOn ?? null,
  });
  if (record.takeOff !== null) writeDistanceTable(db, aircraftId, 'takeOff', record.takeOff);
  if (record.landing !== null) writeDistanceTable(db, aircraftId, 'landing', record.landing);
  if (record.climb !== null) writeClimbTable(db, aircraftId, record.climb);
}

function writeDistanceTable(
  db: Db,
  aircraftId: string,
  of: 'takeOff' | 'landing',
  table: DistanceTableRecord,
): void {
  writeTable(db, aircraftId, of, table, {
    surface: table.surface,
    wind_margin: table.windMargin,
    speed_ms: table.speedMs,
    safety_ratio: table.safety.factorRatio,
    safety_source: table.safety.source,
    fits: table.against,
  });
  writeRows(db, aircraftId, of, table.rows, ({ groundRollM, overObstacleM }) => ({
    ground_roll_m: groundRollM,
    over_obstacle_m: overObstacleM,
  }));
  table.notes.forEach((note, position) => {
    insert(db, 'performance_note', {
      aircraft_id: aircraftId,
      of,
      position,
      counts: note.counts,
      per_amount: note.amount,
      most_amount: note.mostAmount,
      change_ratio: note.changeRatio,
      share_of: note.shareOf,
    });
  });
}

function writeClimbTable(db: Db, aircraftId: string, table: ClimbTableRecord): void {
  writeTable(db, aircraftId, 'climb', table, {});
  writeRows(db, aircraftId, 'climb', table.rows, ({ climbRateMs, speedMs }) => ({
    climb_rate_ms: climbRateMs,
    speed_ms: speedMs,
  }));
}

function writeTable(
  db: Db,
  aircraftId: string,
  of: TableName,
  { words, readingSdRatio, source, enteredOn }: DistanceTableRecord | ClimbTableRecord,
  others: Columns,
): void {
  insert(db, 'performance_table', {
    aircraft_id: aircraftId,
    of,
    words,
    reading_sd_ratio: readingSdRatio,
    figures_from: source.from,
    compared_on: source.comparedOn,
    entered_on: enteredOn,
    ...others,
  });
}

function writeRows<R extends PrintedPlace & { asPrinted: boolean }>(
  db: Db,
  aircraftId: string,
  of: TableName,
  rows: readonly R[],
  figures: (row: R) => Columns,
): void {
  rows.forEach((row, position) => {
    insert(db, 'performance_row', {
      aircraft_id: aircraftId,
      of,
      position,
      mass_kg: row.massKg,
      pressure_altitude_m: row.pressureAltitudeM,
      temperature_c: row.temperatureC,
      headwind_ms: row.headwindMs,
      as_printed: row.asPrinted ? 1 : 0,
      ...figures(row),
    });
  });
}

type Columns = Record<string, string | number | null>;

/** @param table and the row's keys are named in this file, never by input */
function insert(db: Db, table: string, row: Columns): void {
  const columns = Object.keys(row);
  db.prepare(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})`,
  ).run(row);
}
