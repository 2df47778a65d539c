import { textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import type { ProblemList } from './problems.ts';
import { firstLine, headerNames, splitRow } from './split-row.ts';

/**
 * A table whose header names its columns: finds the header, repeated headers and the cells of the columns that are
 * read, by name. Names are compared in lower case; of two columns of one name the first counts.
 */
export class NamedColumns {
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  readonly names: readonly string[];
  readonly #delimiter: number;
  readonly #quotes: boolean;
  readonly #lastNeeded: number;
  readonly #problems: ProblemList;
  readonly #header: Uint8Array;
  #seen = false;

  /**
   * @param head the file's beginning, with the header as its first line
   * @param wanted names of the columns that are read where they are there
   * @throws FileProblem where the header is missing
   */
  constructor(
    head: Uint8Array,
    delimiter: string,
    quotes: boolean,
    wanted: readonly string[],
    problems: ProblemList,
  ) {
    const line = firstLine(head);
    if (line === null) throw new FileProblem('The header with the names of the columns is missing.');
    this.names = headerNames(line, delimiter).map((name) => name.toLowerCase());
    this.#delimiter = delimiter.charCodeAt(0);
    this.#quotes = quotes;
    this.#problems = problems;
    this.#header = Buffer.from(line.replace(/\r$/, ''), 'utf8');
    this.#lastNeeded = Math.max(0, ...wanted.map((name) => this.at(name)));
    this.starts = new Int32Array(this.#lastNeeded + 1);
    this.ends = new Int32Array(this.#lastNeeded + 1);
  }

  /** Place of a column, -1 where there is none. */
  at(name: string): number {
    return this.names.indexOf(name.toLowerCase());
  }

  /** Split one line; false where it is the header, a repeated one, empty or cut short, which is counted. */
  row(bytes: Uint8Array, from: number, to: number, lineNumber: number): boolean {
    if (to === from) return false;
    if (this.#isHeader(bytes, from, to)) {
      if (this.#seen)
        this.#problems.add('header again: line left out', lineNumber, () => textOf(bytes, from, to));
      this.#seen = true;
      return false;
    }
    const needed = this.#lastNeeded + 1;
    const found = splitRow(bytes, from, to, this.#delimiter, this.starts, this.ends, this.#quotes);
    // A last column that touches the end of a cut row may have lost digits.
    if (found < needed || (found === needed && needed < this.names.length)) {
      this.#problems.add('row cut short: left out', lineNumber, () => textOf(bytes, from, to));
      return false;
    }
    return true;
  }

  text(bytes: Uint8Array, column: number): string {
    return column < 0 ? '' : textOf(bytes, this.starts[column] ?? 0, this.ends[column] ?? 0);
  }

  #isHeader(bytes: Uint8Array, from: number, to: number): boolean {
    if (!this.#seen) return true;
    if (to - from !== this.#header.length) return false;
    for (let i = 0; i < this.#header.length; i++) if (bytes[from + i] !== this.#header[i]) return false;
    return true;
  }
}
