import type { NamedCells } from '../../../../shared-calc/wording/review.ts';

/** The table as a CSV file, a line a cell: figures in SI units, so that a spreadsheet can go on with them. */
export function reviewCsv(
  rows: readonly NamedCells[],
  columnNames: readonly string[],
  oddsOf: (row: number, column: number) => string | null,
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
      figure(cell.marginM),
      figure(cell.marginKg),
      figure(cell.afterTakeOffS),
    ]),
  );
  return [head, ...lines].map((line) => `${line.map(quoted).join(',')}\r\n`).join('');
}

/** Quoted after RFC 4180. Spaces and signs of the screen become those that every program reads. */
function quoted(text: string): string {
  const plain = text
    .replaceAll('\u2060', '')
    .replaceAll(/[\u00a0\u2009]/g, ' ')
    .replaceAll('\u2212', '-');
  // A spreadsheet would take a name that begins like a formula for one.
  const safe = /^[=+@]|^-(?!\d)/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function figure(value: number | null): string {
  return value === null ? '' : String(Number(value.toPrecision(6)));
}
