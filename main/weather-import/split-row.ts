const quote = 34;

/**
 * Where the cells of a row begin and end, without making strings. A quoted cell may hold the delimiter and doubled
 * quotes; its quotes are left outside.
 * @param starts and ends take the places; cells beyond their length are not looked at
 * @param quotes whether the format quotes at all: in one that does not, a quote is a letter
 * @returns how many cells were found, at most starts.length; one more where the row goes on behind them
 */
export function splitRow(
  bytes: Uint8Array,
  from: number,
  to: number,
  delimiter: number,
  starts: Int32Array,
  ends: Int32Array,
  quotes = true,
): number {
  const most = starts.length;
  let at = from;
  let cell = 0;
  for (;;) {
    let start = at;
    let end: number;
    if (quotes && bytes[at] === quote && at < to) {
      start = ++at;
      while (at < to) {
        if (bytes[at] === quote) {
          if (bytes[at + 1] !== quote || at + 1 >= to) break;
          at++;
        }
        at++;
      }
      end = at;
      while (at < to && bytes[at] !== delimiter) at++;
    } else {
      while (at < to && bytes[at] !== delimiter) at++;
      end = at;
    }
    starts[cell] = start;
    ends[cell] = end;
    cell++;
    if (at >= to) return cell;
    if (cell === most) return most + 1;
    at++;
  }
}

/** The cells of a header line as names without blanks and quotes around them. */
export function headerNames(line: string, delimiter: string): string[] {
  return line
    .replace(/\r$/, '')
    .split(delimiter)
    .map((name) =>
      name
        .trim()
        .replace(/^"(.*)"$/, '$1')
        .trim(),
    );
}

/** The first line of a file's beginning, or null where it has no end in it. */
export function firstLine(head: Uint8Array): string | null {
  const end = head.indexOf(10);
  if (end < 0) return null;
  return Buffer.from(head.buffer, head.byteOffset, end).toString('utf8');
}
