import { isSamePlace } from '../../../shared-calc/performance/performance-table.ts';
import { parseQuantity } from '../../../shared-calc/units/parse-quantity.ts';
import { fieldText, unitSuffix } from '../../../shared-calc/units/shown.ts';
import type { PrintedColumn, PrintedRow } from './printedRows.ts';

/** What a spreadsheet's cells came to: rows, or what stands in the way, by line and column as they were pasted. */
export interface PastedRows {
  rows: PrintedRow[];
  faults: string[];
  /** The first line held words. */
  hasHead: boolean;
}

/**
 * Read cells copied from a spreadsheet: a line a row, tabs between cells, columns in the order of the table.
 * A place left empty is that of the row above, as in merged cells; a figure left empty or dashed is a blank.
 * Nothing of it is taken while a single cell cannot be read.
 */
export function pastedRows(text: string, columns: readonly PrintedColumn[]): PastedRows {
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line, index) => ({ number: index + 1, cells: cellsOf(line) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const hasHead = isHead(lines[0]?.cells ?? []);
  const faults: string[] = [];
  const rows: PrintedRow[] = [];
  for (const { number, cells } of lines.slice(hasHead ? 1 : 0)) {
    const row: PrintedRow = { asPrinted: false };
    if (cells.length > columns.length)
      faults.push(
        `Line ${String(number)} has ${String(cells.length)} cells; the table has ${String(columns.length)} columns.`,
      );
    columns.forEach((column, place) => {
      const cell = cells[place] ?? '';
      const above = rows.at(-1)?.[column.key];
      const reading = column.is === 'place' && isBlank(cell) && above != null ? above : read(cell, column);
      if (typeof reading === 'string') faults.push(`Line ${String(number)}, ${column.head}: ${reading}`);
      else row[column.key] = reading;
    });
    rows.push(row);
  }
  if (rows.length === 0 && faults.length === 0) faults.push('There is no row in it.');
  return { rows, faults, hasHead };
}

/** Rows already there whose place is pasted again are replaced; the others stay, new ones follow. */
export function withPasted<R extends PrintedRow>(
  rows: readonly R[],
  pasted: readonly R[],
  columns: readonly PrintedColumn[],
): R[] {
  const places = columns.filter(({ is }) => is === 'place');
  const isSame = (a: PrintedRow, b: PrintedRow) =>
    places.every(({ key }) => isSamePlace(a[key] ?? NaN, b[key] ?? NaN));
  return [...rows.filter((row) => !pasted.some((each) => isSame(each, row))), ...pasted];
}

/** Mostly words; a head may be called "50 ft", and a row may hold one slip. */
function isHead(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => !isBlank(cell));
  const figures = filled.filter((cell) => /^[-+\u2212]?[.\d]/.test(cell));
  return filled.length > 0 && figures.length < filled.length / 2;
}

function cellsOf(line: string): string[] {
  const cells = line.includes('\t') ? line.split('\t') : line.split(/\s*;\s*|\s{2,}/);
  return cells.map((cell) => cell.trim());
}

function isBlank(cell: string): boolean {
  return /^[-\u2013\u2014\u2212]*$/.test(cell);
}

/** A value, null for a blank, or the sentence that says why not. */
function read(cell: string, column: PrintedColumn): number | null | string {
  const { quantity, unit, minSi, maxSi } = column;
  if (isBlank(cell)) return column.is === 'place' ? 'nothing stands here, nor in the row above.' : null;
  const parsed = parseQuantity(cell, quantity, unit);
  if (!parsed.ok) return parsed.sentence;
  if (parsed.valueSi >= minSi && parsed.valueSi <= maxSi) return parsed.valueSi;
  const words = (valueSi: number) => fieldText(valueSi, quantity, unit);
  return `${cell} is outside ${words(minSi)} to ${words(maxSi)}${unitSuffix(unit)}.`;
}
