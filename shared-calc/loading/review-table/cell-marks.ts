import type { ReviewTableRecord } from './table-record.ts';

/**
 * A mark for each cell of a review table that stays the same for as long as its own entries do: who and what is in its
 * row, the fuel of its column, and what all cells share. Names are no matter; nor is anything of the aeroplane.
 * @returns by the indexes of row and column; '' for a cell that is not there
 * @source FNV-1a, 32 bit (IETF draft-eastlake-fnv): two different texts have one mark in 4e9
 */
export function cellMarks(
  table: Pick<ReviewTableRecord, 'terms' | 'split' | 'fuelDoubtL' | 'rows' | 'columns'>,
): (row: number, column: number) => string {
  const shared = textMark([table.terms, table.split, table.fuelDoubtL]);
  const rows = table.rows.map(({ items }) =>
    textMark(
      items.map(({ stationId, seatArmM, personId, typed }) => [
        stationId,
        seatArmM,
        personId,
        typed === null ? null : [typed.massKg, typed.known, typed.sdKg, typed.biasKg],
      ]),
    ),
  );
  const columns = table.columns.map((column) => textMark({ ...column, id: undefined }));
  return (row, column) => {
    const [ofRow, ofColumn] = [rows[row], columns[column]];
    return ofRow === undefined || ofColumn === undefined ? '' : `${ofRow}${ofColumn}${shared}`;
  };
}

/** FNV-1a over the bytes of the text's UTF-16 units (those of the first half alone where the second is 0), in hex. */
function textMark(value: unknown): string {
  const text = JSON.stringify(value);
  let mark = 0x81_1c_9d_c5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    mark = Math.imul(mark ^ (unit & 0xff), 0x01_00_01_93);
    if (unit > 0xff) mark = Math.imul(mark ^ (unit >> 8), 0x01_00_01_93);
  }
  return (mark >>> 0).toString(16).padStart(8, '0');
}
