/** A place in a grid with heads: row 0 is the head of the columns, column 0 the names of the rows. */
export interface GridPlace {
  row: number;
  column: number;
}

/**
 * Where a key leads in a grid; null where it means nothing there.
 * @param rowCount, columnCount with the heads
 * @source WAI-ARIA Authoring Practices Guide, grid pattern: arrows, Home and End in the row, with Ctrl in the grid
 */
export function gridMove(
  key: string,
  withControl: boolean,
  { row, column }: GridPlace,
  rowCount: number,
  columnCount: number,
): GridPlace | null {
  const pageRows = 10;
  const to = (nextRow: number, nextColumn: number): GridPlace => ({
    row: Math.min(rowCount - 1, Math.max(0, nextRow)),
    column: Math.min(columnCount - 1, Math.max(0, nextColumn)),
  });
  switch (key) {
    case 'ArrowUp':
      return to(row - 1, column);
    case 'ArrowDown':
      return to(row + 1, column);
    case 'ArrowLeft':
      return to(row, column - 1);
    case 'ArrowRight':
      return to(row, column + 1);
    case 'PageUp':
      return to(Math.max(Math.min(row, 1), row - pageRows), column);
    case 'PageDown':
      return to(row + pageRows, column);
    case 'Home':
      return to(withControl ? 0 : row, 0);
    case 'End':
      return to(withControl ? rowCount - 1 : row, columnCount - 1);
    default:
      return null;
  }
}
