/** A table as a CSV file after RFC 4180. Spaces and signs of the screen become those that every program reads. */
export function tableCsv(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: string | number | null): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(Number(cell.toPrecision(9)));
  const plain = cell
    .replaceAll('\u2060', '')
    .replaceAll(/[\u00a0\u2009]/g, ' ')
    .replaceAll('\u2212', '-');
  // A spreadsheet would take a text that begins like a formula for one.
  const safe = /^[=+@]|^-(?!\d)/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
