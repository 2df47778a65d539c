import { textOf } from './digits.ts';
import type { ProblemList } from './problems.ts';
import type { Carried, Seen } from './reader.ts';

/** A garbled file could name a new station in each row: only so many are listed, all are left out. */
const mostListed = 1000;

/** Lets through the rows of one station: the one asked for, or the first. Counts those of all. */
export class OneStation {
  readonly #counts = new Map<string, { identifier: string; rowCount: number }>();
  readonly #wanted: string | undefined;
  readonly #problems: ProblemList;
  #bytes: Uint8Array | null = null;
  #taken: { identifier: string; rowCount: number } | null = null;

  /** @param carried the one that is read, where the lines before have told */
  constructor(wanted: string | undefined, problems: ProblemList, carried?: Carried['station']) {
    this.#wanted = wanted;
    this.#problems = problems;
    if (carried === undefined) return;
    this.#bytes = carried.bytes;
    this.#taken = { identifier: carried.identifier, rowCount: 0 };
    this.#counts.set(carried.identifier, this.#taken);
  }

  /** Whether the row's station, from..to of the bytes, is the one that is read. */
  takes(bytes: Uint8Array, from: number, to: number, line: number, example: () => string): boolean {
    if (this.#bytes !== null && this.#taken !== null && same(bytes, from, to, this.#bytes)) {
      this.#taken.rowCount++;
      return true;
    }
    const identifier = textOf(bytes, from, to).trim();
    const known = this.#counts.get(identifier) ?? { identifier, rowCount: 0 };
    if (this.#counts.size < mostListed) this.#counts.set(identifier, known);
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

  /** A row whose station is, byte for byte, that of one that was let through before. */
  takeAgain(): void {
    if (this.#taken !== null) this.#taken.rowCount++;
  }

  /** The one that is read; null while none is, or while it is not among those that are listed. */
  carried(): Carried['station'] | null {
    if (this.#taken === null || this.#bytes === null) return null;
    const { identifier } = this.#taken;
    return this.#counts.get(identifier) === this.#taken ? { identifier, bytes: this.#bytes } : null;
  }

  /** Whether those seen in the next stretch can be added without reaching the end of the list. */
  canTake({ stations }: Seen): boolean {
    const unknown = stations.filter(({ identifier }) => !this.#counts.has(identifier));
    return stations.length < mostListed && this.#counts.size + unknown.length <= mostListed;
  }

  take({ stations }: Seen): void {
    for (const { identifier, rowCount } of stations) {
      const known = this.#counts.get(identifier);
      if (known === undefined) this.#counts.set(identifier, { identifier, rowCount });
      else known.rowCount += rowCount;
    }
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
