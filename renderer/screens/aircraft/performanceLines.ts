import { isSamePlace, type TableAxis } from '../../../shared-calc/performance/performance-table.ts';
import type { PrintedColumn, PrintedRow } from './printedRows.ts';

/** A printed table as lines of one figure along one of its places. */
export interface DrawnTable {
  along: PrintedColumn;
  /** What tells the lines apart; null where there is one line. */
  by: PrintedColumn | null;
  lines: { key: number | null; points: DrawnPoint[] }[];
}

/** In the units kept inside; `row` counts from 0 in the table. */
export interface DrawnPoint {
  x: number;
  y: number;
  row: number;
}

/**
 * Along temperature, a line for each pressure altitude at one mass; without temperatures along pressure altitude, a line
 * for each mass; else along the mass. A wind axis is drawn at its first value.
 */
export function linesOf(
  rows: readonly PrintedRow[],
  columns: readonly PrintedColumn[],
  figure: PrintedColumn,
  massKg: number | null,
): DrawnTable {
  const place = (key: PrintedColumn['key']) =>
    columns.find((column) => column.key === key && column.is === 'place');
  const [temperature, altitude, mass, wind] = [
    place('temperatureC'),
    place('pressureAltitudeM'),
    place('massKg'),
    place('headwindMs'),
  ];
  const along = temperature ?? altitude ?? mass ?? figure;
  const by = (temperature === undefined ? mass : (altitude ?? mass)) ?? null;
  const windMs = wind === undefined ? null : (rows.find((row) => row.headwindMs != null)?.headwindMs ?? null);
  const isDrawn = (row: PrintedRow) =>
    (windMs === null || isSamePlace(row.headwindMs ?? NaN, windMs)) &&
    (temperature === undefined ||
      massKg === null ||
      mass === undefined ||
      isSamePlace(row.massKg ?? NaN, massKg));
  const lines: DrawnTable['lines'] = [];
  rows.forEach((row, index) => {
    const [x, y] = [row[along.key], row[figure.key]];
    if (!isDrawn(row) || x == null || y == null) return;
    const key = by === null || by === along ? null : (row[by.key] ?? null);
    const line = lines.find((one) => one.key === key || isSamePlace(one.key ?? NaN, key ?? NaN));
    const point = { x, y, row: index };
    if (line === undefined) lines.push({ key, points: [point] });
    else line.points.push(point);
  });
  for (const line of lines) line.points.sort((a, b) => a.x - b.x);
  return { along, by: by === along ? null : by, lines };
}

/** The masses of a table, lightest first, each once. */
export function massesOf(rows: readonly PrintedRow[]): number[] {
  const sorted = rows.flatMap(({ massKg }) => massKg ?? []).sort((a, b) => a - b);
  return sorted.filter((massKg, i) => i === 0 || !isSamePlace(sorted[i - 1] ?? NaN, massKg));
}

/** A place to try a table at: its heaviest mass, and on the other axes half way between two printed steps. */
export function middlePlace(
  rows: readonly PrintedRow[],
  columns: readonly PrintedColumn[],
): Partial<Record<TableAxis, number>> {
  return Object.fromEntries(
    columns
      .filter(({ is }) => is === 'place')
      .map(({ key }) => {
        const steps = [...new Set(rows.flatMap((row) => row[key] ?? []))].sort((a, b) => a - b);
        const middle = steps.length >> 1;
        const at =
          key === 'massKg' || steps.length < 2
            ? steps.at(-1)
            : ((steps[middle - 1] ?? NaN) + (steps[middle] ?? NaN)) / 2;
        return [key, at];
      }),
  );
}

/** Ends of an axis with some room around the data. */
export function widened(values: readonly number[]): [number, number] {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const air = (most - least) * 0.06 || Math.max(Math.abs(most) * 0.1, 1);
  return [least - air, most + air];
}
