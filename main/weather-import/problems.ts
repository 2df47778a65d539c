/** Why rows or values were left out, counted, with the first examples. */
export interface Skipped {
  reason: string;
  count: number;
  examples: { line: number; text: string }[];
}

/** So many examples a reason are kept; all are counted. */
const keptExamples = 3;
const longestExample = 120;

/** Collects what a reader could not use. */
export class ProblemList {
  readonly #byReason = new Map<string, Skipped>();

  /** @param text gives the example's words; only asked for while examples are kept, because rows can be many. */
  add(reason: string, line: number, text: () => string): void {
    let skipped = this.#byReason.get(reason);
    if (skipped === undefined) {
      skipped = { reason, count: 0, examples: [] };
      this.#byReason.set(reason, skipped);
    }
    skipped.count++;
    if (skipped.examples.length < keptExamples)
      skipped.examples.push({ line, text: text().slice(0, longestExample) });
  }

  /** The reasons, most frequent first. */
  list(): Skipped[] {
    return [...this.#byReason.values()].sort((a, b) => b.count - a.count);
  }
}
