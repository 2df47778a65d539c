/** The cells of one line, with the number of the line on which it begins. */
export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * Rows of a small CSV after RFC 4180, lines ended in any way, a byte order mark and empty lines left out. What parts
 * the cells (comma, semicolon or tab) is what the first line has most of.
 */
export function csvRows(text: string): CsvRow[] {
  const plain = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  const separator = separatorOf(plain.split('\n', 1)[0] ?? '');
  const rows: CsvRow[] = [];
  let line = 1;
  let began = 1;
  let cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  const endRow = () => {
    cells.push(cell.trim());
    if (cells.some((each) => each !== '')) rows.push({ line: began, cells });
    cells = [];
    cell = '';
  };
  for (let at = 0; at < plain.length; at++) {
    const letter = plain.charAt(at);
    if (letter === '\n') line += 1;
    if (isQuoted) {
      if (letter !== '"') cell += letter;
      else if (plain.charAt(at + 1) === '"') {
        cell += '"';
        at += 1;
      } else isQuoted = false;
    } else if (letter === '"' && cell.trim() === '') {
      isQuoted = true;
      cell = '';
    } else if (letter === separator) {
      cells.push(cell.trim());
      cell = '';
    } else if (letter === '\n') {
      endRow();
      began = line;
    } else cell += letter;
  }
  endRow();
  return rows;
}

function separatorOf(header: string): string {
  const count = (separator: string) => header.split(separator).length;
  return [',', ';', '\t'].reduce((most, each) => (count(each) > count(most) ? each : most));
}
