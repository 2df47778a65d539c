import type { OutputOf } from '../../../../main/requests/table.ts';
import type { ReviewTableRecord } from '../../../../shared-calc/loading/review-table/table-record.ts';
import type { App } from '../../../app/app.svelte.ts';
import { sentenceOf } from '../../../app/client.ts';
import type { Query } from '../../../app/query.svelte.ts';

type Kept = OutputOf<'reviewTable.get'>;

/** The review table on the sheet: each change named, one after the other, on top of what the library holds by then. */
export class ReviewEdits {
  readonly #app: App;
  readonly #kept: Query<Kept>;
  #last: Promise<unknown> = Promise.resolve();
  /** What was saved and has not come back from the library yet. */
  #ahead = $state.raw<{ of: Kept; table: ReviewTableRecord } | null>(null);

  constructor(app: App, kept: Query<Kept>) {
    this.#app = app;
    this.#kept = kept;
  }

  /** null where none was begun, or it has not been read yet. */
  get table(): ReviewTableRecord | null {
    const kept = this.#kept.answer;
    return this.#ahead !== null && this.#ahead.of === kept ? this.#ahead.table : (kept?.table ?? null);
  }

  /** Keep a first table. */
  begin(table: ReviewTableRecord): void {
    void this.#app.change('reviewTable.put', {
      aircraftId: table.aircraftId,
      table,
      named: 'scenarios side by side begun',
    });
  }

  /** @returns null when saved, else the sentence that refuses */
  change(named: string, alter: (table: ReviewTableRecord) => void): Promise<string | null> {
    const run = async (): Promise<string | null> => {
      const aircraftId = this.table?.aircraftId;
      if (aircraftId === undefined) return 'The table is not read yet.';
      try {
        const { table } = await this.#app.client.ask('reviewTable.get', { aircraftId });
        if (table === null) return 'The table was taken back meanwhile. Nothing was changed.';
        const before = JSON.stringify(table);
        alter(table);
        // A field that is left while it is being saved asks twice: nothing to save, nothing to undo.
        if (JSON.stringify(table) === before) return null;
        await this.#app.client.ask('reviewTable.put', { aircraftId, table, named: named.slice(0, 120) });
        const of = this.#kept.answer;
        if (of !== undefined) this.#ahead = { of, table };
        return null;
      } catch (error) {
        return sentenceOf(error);
      }
    };
    const done = this.#last.then(run);
    this.#last = done;
    return done;
  }

  /** The same where no field shows a refusal: a notice does. */
  async act(named: string, alter: (table: ReviewTableRecord) => void): Promise<void> {
    const refusal = await this.change(named, alter);
    if (refusal !== null) this.#app.notices.say('Look at', refusal);
  }
}
