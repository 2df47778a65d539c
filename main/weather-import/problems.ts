/** Why rows or values were left out, counted, with the first examples. */
export interface Skipped {
  reason: string;
  count: number;
  examples: { line: number; text: string }[];
}

/** The same with the line at which the reason first came up, which for a month's own checks lies behind the examples. */
export interface NoticedProblem extends Skipped {
  noticedAtLine: number;
}

/** So many examples a reason are kept; all are counted. */
const keptExamples = 3;
const longestExample = 120;

/** Collects what a reader could not use. */
export class ProblemList {
  readonly #byReason = new Map<string, NoticedProblem>();

  /**
   * @param text gives the example's words; only asked for while examples are kept, because rows can be many
   * @param noticedAtLine where the reading is, if that is not the example's own line
   */
  add(reason: string, line: number, text: () => string, noticedAtLine = line): void {
    let skipped = this.#byReason.get(reason);
    if (skipped === undefined) {
      skipped = { reason, count: 0, examples: [], noticedAtLine };
      this.#byReason.set(reason, skipped);
    }
    skipped.count++;
    if (skipped.examples.length < keptExamples)
      skipped.examples.push({ line, text: text().slice(0, longestExample) });
  }

  /** Those of the next stretch of the file, whose own lines begin after so many. */
  addAll(problems: readonly NoticedProblem[], linesBefore: number): void {
    for (const { reason, count, examples, noticedAtLine } of problems) {
      const moved = examples.map(({ line, text }) => ({ line: line + linesBefore, text }));
      const known = this.#byReason.get(reason);
      if (known === undefined)
        this.#byReason.set(reason, {
          reason,
          count,
          examples: moved,
          noticedAtLine: noticedAtLine + linesBefore,
        });
      else {
        known.count += count;
        known.examples.push(...moved.slice(0, keptExamples - known.examples.length));
      }
    }
  }

  /** In the order in which they came. */
  all(): NoticedProblem[] {
    return [...this.#byReason.values()];
  }

  /** The reasons, most frequent first; of equals, the one that came up first. */
  list(): Skipped[] {
    return this.all()
      .sort((a, b) => b.count - a.count || inTurn(a.noticedAtLine, b.noticedAtLine))
      .map(({ reason, count, examples }) => ({ reason, count, examples }));
  }
}

function inTurn(a: number, b: number): number {
  // Not their difference: both can be the end of the file, which is infinitely far away.
  return a < b ? -1 : a > b ? 1 : 0;
}
