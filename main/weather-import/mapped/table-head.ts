import { headerNames } from '../split-row.ts';

/** The beginning of a table of unknown kind: its header and first rows as cells. */
export interface TableHead {
  delimiter: ',' | ';' | '\t' | '|';
  linesBefore: number;
  names: string[];
  rows: string[][];
}

const delimiters = [',', ';', '\t', '|'] as const;
/** Lines that an export may put before its header. */
const mostLinesBefore = 30;
const leastColumns = 2;

/**
 * Find header and rows: the first line with names, none of them a number, that the lines behind follow in their count
 * of cells. Null where nothing is like that.
 * @param head the file's beginning, as UTF-8; a last line without end is not taken
 */
export function tableHead(head: Uint8Array): TableHead | null {
  const lines = Buffer.from(head.buffer, head.byteOffset, head.length)
    .toString('utf8')
    .split(/\r?\n/)
    .slice(0, -1);
  for (let at = 0; at < Math.min(lines.length - 1, mostLinesBefore); at++)
    for (const delimiter of delimiters) {
      const names = headerNames(lines[at] ?? '', delimiter);
      if (names.length < leastColumns || names.some((name) => name === '' || /^[-+\d.]+$/.test(name)))
        continue;
      const rows = lines
        .slice(at + 1)
        .filter((line) => line !== '' && line !== lines[at])
        .map((line) => headerNames(line, delimiter));
      const alike = rows.filter((row) => row.length === names.length).length;
      const numeric = rows.filter((row) => row.some((cell) => /^-?[\d.]+$/.test(cell))).length;
      if (rows.length > 0 && alike >= rows.length * 0.8 && numeric >= rows.length * 0.5)
        return { delimiter, linesBefore: at, names, rows };
    }
  return null;
}

export function looksLikeTable(head: Uint8Array): boolean {
  return tableHead(head) !== null;
}
