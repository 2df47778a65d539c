import { sentenceOf } from '../../app/client.ts';
import type { Query } from '../../app/query.svelte.ts';

/** How a record of the library is read out of an answer, asked for afresh, and saved as a whole. */
export interface RecordWays<Answer, R> {
  of(answer: Answer): R;
  /** null where there is none to change yet. */
  ask(): Promise<R> | null;
  put(record: R, named: string): Promise<unknown>;
}

/**
 * A record on the sheet, and the one way to change it: name the change, alter a copy, save the whole.
 * Changes are saved one after the other, each on top of what the library holds by then, so that two quick ones
 * never undo each other.
 */
export class RecordEdits<Answer, R> {
  readonly #kept: Query<Answer>;
  readonly #ways: RecordWays<Answer, R>;
  #last: Promise<unknown> = Promise.resolve();
  /** What was saved and has not come back from the library yet. */
  #ahead = $state.raw<{ of: Answer; record: R } | null>(null);

  constructor(kept: Query<Answer>, ways: RecordWays<Answer, R>) {
    this.#kept = kept;
    this.#ways = ways;
  }

  get record(): R | null {
    const kept = this.#kept.answer;
    if (kept === undefined) return null;
    return this.#ahead?.of === kept ? this.#ahead.record : this.#ways.of(kept);
  }

  /** @returns null when saved, else the sentence that refuses */
  change(named: string, alter: (record: R) => void): Promise<string | null> {
    const run = async (): Promise<string | null> => {
      const asked = this.#ways.ask();
      if (asked === null) return 'The aeroplane is not read yet.';
      try {
        const record = await asked;
        const before = JSON.stringify(record);
        alter(record);
        // A field that is left while it is being saved asks twice: nothing to save, nothing to undo.
        if (JSON.stringify(record) === before) return null;
        await this.#ways.put(record, named);
        const of = this.#kept.answer;
        if (of !== undefined) this.#ahead = { of, record };
        return null;
      } catch (error) {
        return sentenceOf(error);
      }
    };
    const done = this.#last.then(run);
    this.#last = done;
    return done;
  }
}
