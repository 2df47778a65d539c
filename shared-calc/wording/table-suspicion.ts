import type { TableAxis } from '../performance/performance-table.ts';
import type { ClimbRow, DistanceRow } from '../performance/records.ts';
import type { FigureColumn, TableSuspicion } from '../performance/table-suspicions.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { fieldText, unitSuffix } from '../units/shown.ts';
import { axisText } from './performance.ts';

type PrintedUnits = Pick<
  UnitPreferences,
  'mass' | 'altitude' | 'temperature' | 'speed' | 'distance' | 'climbRate'
>;

/**
 * What is suspected about a printed row, as a question to the manual.
 * @param rows those that the suspicion was found in; they are counted from 1
 * @example "Row 7: over 50 ft 310 m, less than the 330 m of row 6 although it is hotter. Does the manual print it so?"
 */
export function suspicionSentence(
  suspicion: TableSuspicion,
  rows: readonly (DistanceRow | ClimbRow)[],
  units: PrintedUnits,
): string {
  const value = (row: number, column: FigureColumn | TableAxis) => figureText(rows[row], column, units);
  const { row, column } = suspicion;
  const what = `Row ${String(row + 1)}: ${COLUMN_WORDS[column]} ${value(row, column)}`;
  switch (suspicion.kind) {
    case 'order': {
      const { easierRow, axis } = suspicion;
      const compared = column === 'climbRateMs' ? 'more' : 'less';
      return `${what}, ${compared} than the ${value(easierRow, column)} of row ${String(easierRow + 1)} although ${HARDER[axis]}. Does the manual print it so?`;
    }
    case 'feetOrMetres':
      return `${what} does not fit the figures around it; feet and metres may be mixed up. Does the manual print it so?`;
    case 'unit':
      return `${what} is unusual for an aeroplane of this class: compare the unit at the head of the column. Does the manual print it so?`;
  }
}

const COLUMN_WORDS: Readonly<Record<FigureColumn | TableAxis, string>> = {
  groundRollM: 'ground roll',
  overObstacleM: 'over 50 ft',
  climbRateMs: 'climb rate',
  massKg: 'mass',
  pressureAltitudeM: 'pressure altitude',
  temperatureC: 'temperature',
  headwindMs: 'headwind',
};

const HARDER: Readonly<Record<TableAxis, string>> = {
  massKg: 'it is heavier',
  pressureAltitudeM: 'it is higher',
  temperatureC: 'it is hotter',
  headwindMs: 'there is less headwind',
};

function figureText(
  row: DistanceRow | ClimbRow | undefined,
  column: FigureColumn | TableAxis,
  units: PrintedUnits,
): string {
  const value =
    row === undefined || !(column in row) ? null : (row as unknown as Record<string, number | null>)[column];
  if (value == null) return 'nothing';
  switch (column) {
    case 'groundRollM':
    case 'overObstacleM':
      return fieldText(value, 'distance', units.distance) + unitSuffix(units.distance);
    case 'climbRateMs':
      return fieldText(value, 'climbRate', units.climbRate) + unitSuffix(units.climbRate);
    default:
      return axisText(column, value, units);
  }
}
