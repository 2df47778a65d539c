import { AXIS_RANGES, type TableAxis } from '../../../shared-calc/performance/performance-table.ts';
import { TABLE_AXES, axesOf } from '../../../shared-calc/performance/records.ts';
import type {
  ClimbRow,
  DistanceRow,
  PerformanceUnits,
  PrintedPlace,
} from '../../../shared-calc/performance/records.ts';
import type { Quantity, UnitOf } from '../../../shared-calc/units/quantities.ts';

/** Every unit of these tables: as the manual's pages print them. */
export interface TableUnits {
  mass: UnitOf['mass'];
  altitude: UnitOf['altitude'];
  temperature: UnitOf['temperature'];
  speed: UnitOf['speed'];
  distance: UnitOf['distance'];
  climbRate: UnitOf['climbRate'];
}

export function tableUnits(mass: 'kg' | 'lb', printed: PerformanceUnits): TableUnits {
  return { mass, ...printed };
}

export type ColumnKey = TableAxis | 'groundRollM' | 'overObstacleM' | 'climbRateMs' | 'speedMs';

type ColumnQuantity = Extract<Quantity, keyof TableUnits>;

/** One column of a printed table: what is allowed is in the unit kept inside. */
export interface PrintedColumn {
  key: ColumnKey;
  head: string;
  quantity: ColumnQuantity;
  unit: UnitOf[ColumnQuantity];
  minSi: number;
  maxSi: number;
  /** Where the row stands, or what it says. */
  is: 'place' | 'figure' | 'optional figure';
}

/** A row of any of the tables, by column; what a table does not have is absent or null. */
export type PrintedRow = Partial<Record<ColumnKey, number | null>> & { asPrinted: boolean };

const AXIS_HEADS: Readonly<Record<TableAxis, { head: string; quantity: ColumnQuantity }>> = {
  massKg: { head: 'mass', quantity: 'mass' },
  pressureAltitudeM: { head: 'pressure altitude', quantity: 'altitude' },
  temperatureC: { head: 'temperature', quantity: 'temperature' },
  headwindMs: { head: 'headwind', quantity: 'speed' },
};

export type TablePart = 'takeOff' | 'landing' | 'climb';

/** Places that a manual may print or not; every row has a mass. A climb does not depend on the wind. */
export function offeredAxes(part: TablePart): TableAxis[] {
  return ['pressureAltitudeM', 'temperatureC', ...(part === 'climb' ? [] : ['headwindMs' as const])];
}

/** Every key that a row of any table may have. */
export const COLUMN_KEYS: readonly ColumnKey[] = [
  ...TABLE_AXES,
  'groundRollM',
  'overObstacleM',
  'climbRateMs',
  'speedMs',
];

/** A place as its column is headed. */
export function axisWords(axis: TableAxis): string {
  return AXIS_HEADS[axis].head;
}

/** The columns of a table that has these axes. */
export function columnsOf(part: TablePart, axes: readonly TableAxis[], units: TableUnits): PrintedColumn[] {
  const places = axes.map((axis): PrintedColumn => {
    const { head, quantity } = AXIS_HEADS[axis];
    const { min, max } = AXIS_RANGES[axis];
    return { key: axis, head, quantity, unit: units[quantity], minSi: min, maxSi: max, is: 'place' };
  });
  if (part === 'climb')
    return [
      ...places,
      {
        key: 'climbRateMs',
        head: 'rate of climb',
        quantity: 'climbRate',
        unit: units.climbRate,
        minSi: -5,
        maxSi: 30,
        is: 'figure',
      },
      {
        key: 'speedMs',
        head: 'speed',
        quantity: 'speed',
        unit: units.speed,
        minSi: 5,
        maxSi: 150,
        is: 'optional figure',
      },
    ];
  const distance = (key: ColumnKey, head: string): PrintedColumn => ({
    key,
    head,
    quantity: 'distance',
    unit: units.distance,
    minSi: 1,
    maxSi: 9_999,
    is: 'figure',
  });
  return [
    ...places,
    distance('groundRollM', 'ground roll'),
    distance('overObstacleM', part === 'takeOff' ? 'over 50 ft' : 'from 50 ft'),
  ];
}

/** The axes of a table; one without rows gets the usual three. */
export function tableAxes(rows: readonly PrintedPlace[]): TableAxis[] {
  return rows.length === 0 ? TABLE_AXES.filter((axis) => axis !== 'headwindMs') : axesOf(rows);
}

export function placeOf(row: PrintedRow): PrintedPlace {
  return {
    massKg: row.massKg ?? null,
    pressureAltitudeM: row.pressureAltitudeM ?? null,
    temperatureC: row.temperatureC ?? null,
    headwindMs: row.headwindMs ?? null,
  };
}

export function distanceRow(row: PrintedRow): DistanceRow {
  return {
    ...placeOf(row),
    groundRollM: row.groundRollM ?? null,
    overObstacleM: row.overObstacleM ?? null,
    asPrinted: row.asPrinted,
  };
}

export function climbRow(row: PrintedRow): ClimbRow {
  return {
    ...placeOf(row),
    climbRateMs: row.climbRateMs ?? null,
    speedMs: row.speedMs ?? null,
    asPrinted: row.asPrinted,
  };
}
