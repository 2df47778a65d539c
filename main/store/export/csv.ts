/** What SQLite gives for a column. */
export type Value = string | number | bigint | Buffer | null;

/**
 * One line of CSV after RFC 4180: fields with a comma, a quote or a line break in quotes, lines ended by CR LF.
 * A missing value is nothing at all, an empty text is "" in quotes, bytes are base64.
 */
export function csvLine(values: readonly Value[]): string {
  return `${values.map(field).join(',')}\r\n`;
}

function field(value: Value): string {
  if (value === null) return '';
  if (typeof value !== 'string') return Buffer.isBuffer(value) ? value.toString('base64') : String(value);
  return value === '' || /[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
}
