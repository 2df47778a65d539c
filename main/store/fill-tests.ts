import type Database from 'better-sqlite3';
import type { GaugeReading, RunStart } from '../../shared-calc/fuel/fill-run.ts';
import type { GaugeScale, VolumeOnGauge } from '../../shared-calc/fuel/gauge-scale.ts';
import type { FillRunRecord, FillTestRecord, PinRecord, PourRecord } from '../../shared-calc/fuel/records.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

interface TestRow {
  id: string;
  tank_id: string;
  tested_on: string;
  attitude: FillTestRecord['attitude'];
  power: FillTestRecord['power'];
  supply_v: number | null;
  feeds: FillTestRecord['feeds'];
  smoothness_ratio: number | null;
  fuel_kind: string;
  fuel_temperature_c: number | null;
  scale_kind: GaugeScale['kind'];
  scale_unit: VolumeOnGauge | null;
  scale_at_empty_printed: number | null;
  scale_at_full_printed: number | null;
  scale_step_printed: number | null;
  scale_divisions: number | null;
  precautions_json: string;
  note: string;
  removed: number;
}

interface RunRow {
  id: string;
  direction: FillRunRecord['direction'];
  start_from: RunStart['from'];
  start_usable_l: number | null;
  start_sd_l: number | null;
  ends_at: FillRunRecord['endsAt'];
  container_id: string | null;
}

interface PourRow {
  id: string;
  at_epoch_s: number;
  volume_l: number;
  reading_at: GaugeReading['at'] | null;
  position_ratio: number | null;
  aside_reason: string | null;
  stick_mm: number | null;
  written_volume_l: number | null;
  written_reading_at: GaugeReading['at'] | null;
  written_position_ratio: number | null;
}

/** The fill tests of a tank, the latest first; removed ones are left out. */
export function readFillTests(db: Database.Database, tankId: string): FillTestRecord[] {
  return db
    .prepare<[string], TestRow>(
      'SELECT * FROM fill_test WHERE tank_id = ? AND removed = 0 ORDER BY tested_on DESC, rowid DESC',
    )
    .all(tankId)
    .map((row) => testOf(db, row));
}

export function readFillTest(db: Database.Database, id: string): Kept<FillTestRecord> | null {
  const row = db.prepare<[string], TestRow>('SELECT * FROM fill_test WHERE id = ?').get(id);
  return row === undefined ? null : { record: testOf(db, row), removed: row.removed === 1 };
}

/** Write a test as it is to be, its runs and pours with it. */
export function writeFillTest(db: Database.Database, { record, removed }: Kept<FillTestRecord>): void {
  putRow(db, 'fill_test', {
    id: record.id,
    tank_id: record.tankId,
    tested_on: record.testedOn,
    attitude: record.attitude,
    power: record.power,
    supply_v: record.supplyV,
    feeds: record.feeds,
    smoothness_ratio: record.smoothness,
    fuel_kind: record.fuelKind,
    fuel_temperature_c: record.fuelTemperatureC,
    ...scaleColumns(record.scale),
    precautions_json: JSON.stringify(record.precautions),
    note: record.note,
    removed: removed ? 1 : 0,
  });
  db.prepare('DELETE FROM fill_run WHERE test_id = ?').run(record.id);
  db.prepare('DELETE FROM gauge_pin WHERE test_id = ?').run(record.id);
  const insertPin = db.prepare(
    `INSERT INTO gauge_pin (id, test_id, position, position_ratio, usable_l, sd_l, note)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
  );
  record.pins.forEach(({ id, positionRatio, usableL, sdL, note }, position) =>
    insertPin.run(id, record.id, position, positionRatio, usableL, sdL, note),
  );
  const insertRun = db.prepare(
    `INSERT INTO fill_run (id, test_id, position, direction, start_from, start_usable_l, start_sd_l, container_id, ends_at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const insertPour = db.prepare(
    `INSERT INTO pour (id, run_id, position, at_epoch_s, volume_l, reading_at, position_ratio, aside_reason, stick_mm,
       written_volume_l, written_reading_at, written_position_ratio)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  record.runs.forEach((run, position) => {
    const usableL = run.start.from === 'known' ? run.start.usableL : null;
    insertRun.run(
      run.id,
      record.id,
      position,
      run.direction,
      run.start.from,
      usableL,
      run.startSdL,
      run.containerId,
      run.endsAt,
    );
    run.pours.forEach((pour, place) => {
      insertPour.run(
        pour.id,
        run.id,
        place,
        pour.atEpochS,
        pour.volumeL,
        ...readingColumns(pour.reading),
        pour.asideReason,
        pour.stickMm ?? null,
        pour.written?.volumeL ?? null,
        ...readingColumns(pour.written?.reading ?? null),
      );
    });
  });
}

function testOf(db: Database.Database, row: TestRow): FillTestRecord {
  return {
    id: row.id,
    tankId: row.tank_id,
    testedOn: row.tested_on,
    attitude: row.attitude,
    power: row.power,
    supplyV: row.supply_v,
    feeds: row.feeds,
    fuelKind: row.fuel_kind,
    fuelTemperatureC: row.fuel_temperature_c,
    scale: scaleOf(row),
    precautions: JSON.parse(row.precautions_json) as string[],
    note: row.note,
    runs: db
      .prepare<[string], RunRow>('SELECT * FROM fill_run WHERE test_id = ? ORDER BY position')
      .all(row.id)
      .map((run) => ({
        id: run.id,
        direction: run.direction,
        start: startOf(run),
        startSdL: run.start_sd_l,
        containerId: run.container_id,
        endsAt: run.ends_at,
        pours: db
          .prepare<[string], PourRow>('SELECT * FROM pour WHERE run_id = ? ORDER BY position')
          .all(run.id)
          .map(pourOf),
      })),
    pins: db
      .prepare<[string], PinRecord>(
        `SELECT id, position_ratio AS positionRatio, usable_l AS usableL, sd_l AS sdL, note
         FROM gauge_pin WHERE test_id = ? ORDER BY position`,
      )
      .all(row.id),
    smoothness: row.smoothness_ratio,
  };
}

// The table's checks hold each column where its kind needs it, so a missing one cannot be read here.
function startOf(row: RunRow): RunStart {
  return row.start_from === 'known'
    ? { from: 'known', usableL: row.start_usable_l ?? 0 }
    : { from: row.start_from };
}

function pourOf(row: PourRow): PourRecord {
  return {
    id: row.id,
    atEpochS: row.at_epoch_s,
    volumeL: row.volume_l,
    reading: readingOf(row.reading_at, row.position_ratio),
    asideReason: row.aside_reason,
    stickMm: row.stick_mm,
    written:
      row.written_volume_l === null
        ? null
        : {
            volumeL: row.written_volume_l,
            reading: readingOf(row.written_reading_at, row.written_position_ratio),
          },
  };
}

export function readingOf(at: GaugeReading['at'] | null, positionRatio: number | null): GaugeReading | null {
  if (at === 'scale') return { at, positionRatio: positionRatio ?? 0 };
  return at === null ? null : { at };
}

export function readingColumns(reading: GaugeReading | null): [GaugeReading['at'] | null, number | null] {
  return [reading?.at ?? null, reading?.at === 'scale' ? reading.positionRatio : null];
}

function scaleOf(row: TestRow): GaugeScale {
  const step = row.scale_step_printed ?? 1;
  const ends = { atEmpty: row.scale_at_empty_printed ?? 0, atFull: row.scale_at_full_printed ?? 1 };
  const divisions = row.scale_divisions ?? 2;
  switch (row.scale_kind) {
    case 'fractions':
      return { kind: 'fractions', denominator: divisions };
    case 'bars':
      return { kind: 'bars', count: divisions };
    case 'percent':
      return { kind: 'percent', step };
    case 'numbers':
      return { kind: 'numbers', ...ends, step };
    case 'volume':
      return { kind: 'volume', unit: row.scale_unit ?? 'L', ...ends, step };
  }
}

function scaleColumns(scale: GaugeScale) {
  const hasEnds = scale.kind === 'volume' || scale.kind === 'numbers';
  return {
    scale_kind: scale.kind,
    scale_unit: scale.kind === 'volume' ? scale.unit : null,
    scale_at_empty_printed: hasEnds ? scale.atEmpty : null,
    scale_at_full_printed: hasEnds ? scale.atFull : null,
    scale_step_printed: hasEnds || scale.kind === 'percent' ? scale.step : null,
    scale_divisions:
      scale.kind === 'fractions' ? scale.denominator : scale.kind === 'bars' ? scale.count : null,
  };
}
