import type Database from 'better-sqlite3';
import type { FuelBlend } from '../../shared-calc/fuel/blend-density.ts';
import type { FigureSource, TankArmRecord, TankRecord } from '../../shared-calc/loading/records.ts';
import { putRow } from './put-row.ts';

type Db = Database.Database;

interface TankRow {
  id: string;
  name: string;
  side: TankRecord['side'];
  capacity_l: number;
  unusable_l: number;
  arm_kind: TankArmRecord['kind'];
  fixed_arm_m: number | null;
  table_counts: 'usable' | 'total' | null;
  table_density_kg_per_l: number | null;
  fuel_kind: string;
  density_kg_per_l: number;
  lateral_arm_m: number | null;
  blend_kind: FuelBlend['kind'] | null;
  blend_ethanol_percent: number | null;
  blend_at_15c_kg_per_l: number | null;
  figures_from: FigureSource['from'];
  compared_on: string | null;
}

export function readTanks(db: Db, aircraftId: string): TankRecord[] {
  const knotsOf = db.prepare<
    [string],
    { volume_l: number; arm_m: number | null; moment_kg_m: number | null }
  >('SELECT volume_l, arm_m, moment_kg_m FROM tank_knot WHERE tank_id = ? ORDER BY position');
  return db
    .prepare<[string], TankRow>('SELECT * FROM tank WHERE aircraft_id = ? AND removed = 0 ORDER BY position')
    .all(aircraftId)
    .map((row) => ({
      id: row.id,
      name: row.name,
      side: row.side,
      capacityL: row.capacity_l,
      unusableL: row.unusable_l,
      arm: tankArm(row, knotsOf.all(row.id)),
      fuelKind: row.fuel_kind,
      densityKgPerL: row.density_kg_per_l,
      ...(row.lateral_arm_m === null ? {} : { lateralArmM: row.lateral_arm_m }),
      ...(row.blend_kind === null ? {} : { blend: blendOf(row, row.blend_kind) }),
      source: { from: row.figures_from, comparedOn: row.compared_on },
    }));
}

function blendOf(row: TankRow, kind: FuelBlend['kind']): FuelBlend {
  if (kind === 'motor gasoline') return { kind, ethanolPercent: row.blend_ethanol_percent ?? 0 };
  return kind === 'own' ? { kind, at15KgPerL: row.blend_at_15c_kg_per_l ?? 0 } : { kind };
}

// The table's own checks promise which columns are filled for which kind of arm; `?? 0` only satisfies the types.
function tankArm(
  row: TankRow,
  knots: { volume_l: number; arm_m: number | null; moment_kg_m: number | null }[],
): TankArmRecord {
  const counts = row.table_counts ?? 'usable';
  if (row.arm_kind === 'fixed') return { kind: 'fixed', armM: row.fixed_arm_m ?? 0 };
  if (row.arm_kind === 'armTable')
    return {
      kind: 'armTable',
      counts,
      knots: knots.map((k) => ({ volumeL: k.volume_l, armM: k.arm_m ?? 0 })),
    };
  return {
    kind: 'momentTable',
    counts,
    tableDensityKgPerL: row.table_density_kg_per_l ?? 0,
    knots: knots.map((k) => ({ volumeL: k.volume_l, momentKgM: k.moment_kg_m ?? 0 })),
  };
}

export function writeTanks(db: Db, aircraftId: string, tanks: readonly TankRecord[]): void {
  db.prepare('UPDATE tank SET removed = 1 WHERE aircraft_id = ?').run(aircraftId);
  tanks.forEach((tank, position) => {
    const { arm } = tank;
    putRow(db, 'tank', {
      id: tank.id,
      aircraft_id: aircraftId,
      position,
      name: tank.name,
      side: tank.side,
      capacity_l: tank.capacityL,
      unusable_l: tank.unusableL,
      arm_kind: arm.kind,
      fixed_arm_m: arm.kind === 'fixed' ? arm.armM : null,
      table_counts: arm.kind === 'fixed' ? null : arm.counts,
      table_density_kg_per_l: arm.kind === 'momentTable' ? arm.tableDensityKgPerL : null,
      fuel_kind: tank.fuelKind,
      density_kg_per_l: tank.densityKgPerL,
      lateral_arm_m: tank.lateralArmM ?? null,
      blend_kind: tank.blend?.kind ?? null,
      blend_ethanol_percent: tank.blend?.kind === 'motor gasoline' ? tank.blend.ethanolPercent : null,
      blend_at_15c_kg_per_l: tank.blend?.kind === 'own' ? tank.blend.at15KgPerL : null,
      figures_from: tank.source.from,
      compared_on: tank.source.comparedOn,
      removed: 0,
    });
    db.prepare('DELETE FROM tank_knot WHERE tank_id = ?').run(tank.id);
    if (arm.kind === 'fixed') return;
    const insert = db.prepare(
      'INSERT INTO tank_knot (tank_id, position, volume_l, arm_m, moment_kg_m) VALUES (?, ?, ?, ?, ?)',
    );
    arm.knots.forEach((knot, index) =>
      insert.run(
        tank.id,
        index,
        knot.volumeL,
        'armM' in knot ? knot.armM : null,
        'momentKgM' in knot ? knot.momentKgM : null,
      ),
    );
  });
}
