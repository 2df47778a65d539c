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

/**
 * The same, four bytes at a time, for rows without quotes.
 * @param view over the same bytes
 * @returns as splitRow, or -1 where there may be a quote, or no room to read four bytes at the end
 */
export function splitUnquoted(
  view: DataView,
  from: number,
  to: number,
  delimiter: number,
  starts: Int32Array,
  ends: Int32Array,
): number {
  if (to + 3 > view.byteLength) return -1;
  const delimiters = delimiter * 0x01010101;
  const most = starts.length;
  let cell = 0;
  let start = from;
  for (let wordAt = from; wordAt < to; wordAt += 4) {
    const word = view.getInt32(wordAt, true);
    const unlikeQuote = word ^ 0x22222222;
    if (((unlikeQuote - 0x01010101) & ~unlikeQuote & 0x80808080) !== 0) return -1;
    // The upper bit of each byte that is a delimiter, and of no other.
    const unlike = word ^ delimiters;
    let marks = ~(((unlike & 0x7f7f7f7f) + 0x7f7f7f7f) | unlike | 0x7f7f7f7f);
    for (; marks !== 0; marks &= marks - 1) {
      const at = wordAt + ((31 - Math.clz32(marks & -marks)) >> 3);
      if (at >= to) break;
      starts[cell] = start;
      ends[cell] = at;
      cell++;
      if (cell === most) return most + 1;
      start = at + 1;
    }
  }
  starts[cell] = start;
  ends[cell] = to;
  return cell + 1;
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
