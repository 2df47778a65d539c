import type { NamedCells } from '../../../../shared-calc/wording/review.ts';
import { tableCsv } from '../../tableCsv.ts';

/** The table as a CSV file, a line a cell: figures in SI units, so that a spreadsheet can go on with them. */
export function reviewCsv(
  rows: readonly NamedCells[],
  columnNames: readonly string[],
  oddsOf: (row: number, column: number) => string | null,
  wasOf: (row: number, column: number) => string | null,
): string {
  const head = [
    'row',
    'column',
    'verdict',
    'said',
    'where',
    'odds of the whole flight inside',
    'limit',
    'margin_m',
    'margin_kg',
    'after_take_off_s',
    'when last looked at',
  ];
  const lines = rows.flatMap(({ name, cells }, row) =>
    cells.map((cell, column) => [
      name,
      columnNames[column] ?? '',
      cell.verdict,
      cell.lead,
      cell.where,
      oddsOf(row, column) ?? '',
      cell.limitId ?? '',
      cell.marginM,
      cell.marginKg,
      cell.afterTakeOffS,
      wasOf(row, column) ?? '',
    ]),
  );
  return tableCsv([head, ...lines]);
}
