import { textOf } from './digits.ts';
import type { ProblemList } from './problems.ts';

/** Lets through the rows of one station: the one asked for, or the first. Counts those of all. */
export class OneStation {
  readonly #counts = new Map<string, { identifier: string; rowCount: number }>();
  readonly #wanted: string | undefined;
  readonly #problems: ProblemList;
  #bytes: Uint8Array | null = null;
  #taken: { identifier: string; rowCount: number } | null = null;

  constructor(wanted: string | undefined, problems: ProblemList) {
    this.#wanted = wanted;
    this.#problems = problems;
  }

  /** Whether the row's station, from..to of the bytes, is the one that is read. */
  takes(bytes: Uint8Array, from: number, to: number, line: number, example: () => string): boolean {
    if (this.#bytes !== null && this.#taken !== null && same(bytes, from, to, this.#bytes)) {
      this.#taken.rowCount++;
      return true;
    }
    const identifier = textOf(bytes, from, to).trim();
    const known = this.#counts.get(identifier) ?? { identifier, rowCount: 0 };
    // A garbled file could name a new station in each row: only so many are listed, all are left out.
    if (this.#counts.size < 1000) this.#counts.set(identifier, known);
    known.rowCount++;
    if (this.#taken === null && (this.#wanted === undefined || this.#wanted === identifier)) {
      // A copy: a Buffer's own slice would be a view of bytes that are written over.
      this.#bytes = new Uint8Array(bytes.subarray(from, to));
      this.#taken = known;
      return true;
    }
    // The same station with other blanks around it.
    if (this.#taken === known) return true;
    this.#problems.add('row of another station: left out', line, example);
    return false;
  }

  list(): { identifier: string; rowCount: number }[] {
    return [...this.#counts.values()];
  }
}

function same(bytes: Uint8Array, from: number, to: number, other: Uint8Array): boolean {
  if (to - from !== other.length) return false;
  for (let i = 0; i < other.length; i++) if (bytes[from + i] !== other[i]) return false;
  return true;
}
