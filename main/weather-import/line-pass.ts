import { FileProblem } from './file-problem.ts';
import { ProblemList } from './problems.ts';
import type { Kind, Prepared, Reader, ReaderOptions } from './reader.ts';
import { ReportRows } from './report-rows.ts';

/** No line of these kinds is nearly as long; a file without line ends is not one of them. */
const longestLineBytes = 1 << 20;
const lineFeed = 10;
const carriageReturn = 13;

/** Lines given to a reader one after the other, however the pieces are cut that hold them. */
export class LinePass {
  readonly rows = new ReportRows();
  readonly problems = new ProblemList();
  readonly reader: Reader;
  lineCount = 0;
  #rest: Buffer | null = null;

  constructor(kind: Kind, head: Uint8Array, options: ReaderOptions & Prepared) {
    this.reader = kind.open(this.rows, this.problems, options, head);
  }

  /** @throws FileProblem what the reader throws, and where a line has no end */
  feed(bytes: Buffer): void {
    let from = 0;
    if (this.#rest !== null) {
      const end = bytes.indexOf(lineFeed);
      // Only the line over the joint is put together; the others are read where they lie.
      const line = Buffer.concat([this.#rest, end < 0 ? bytes : bytes.subarray(0, end)]);
      if (end < 0) {
        this.#keep(line);
        return;
      }
      this.#rest = null;
      this.#line(line, 0, line.length);
      from = end + 1;
    }
    for (;;) {
      const end = bytes.indexOf(lineFeed, from);
      if (end < 0) break;
      this.#line(bytes, from, end);
      from = end + 1;
    }
    if (from < bytes.length) this.#keep(Buffer.from(bytes.subarray(from)));
  }

  /** The last line may have no end. */
  end(): void {
    if (this.#rest !== null) this.#line(this.#rest, 0, this.#rest.length);
    this.#rest = null;
  }

  /** The beginning of a line whose end is still to come. */
  #keep(rest: Buffer): void {
    if (rest.length > longestLineBytes) throw this.#endless();
    this.#rest = rest;
  }

  #endless(): FileProblem {
    return new FileProblem(`Line ${String(this.lineCount + 1)} has no end.`);
  }

  #line(bytes: Buffer, from: number, end: number): void {
    if (end - from > longestLineBytes) throw this.#endless();
    this.rows.lineNumber = ++this.lineCount;
    const to = end > from && bytes[end - 1] === carriageReturn ? end - 1 : end;
    this.reader.line(bytes, from, to, this.lineCount);
  }
}
