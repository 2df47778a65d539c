import type { FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';

/**
 * A fill test while it is typed: each figure shows at once and is saved in turn, so that quick fingers on the apron
 * never wait for the library and never overtake it.
 */
export class TestKeeper {
  readonly #app: App;
  readonly #kept: () => FillTestRecord | null;
  #ahead = $state.raw<FillTestRecord | null>(null);
  #tried = $state.raw<FillTestRecord | null>(null);
  #queue: Promise<unknown> = Promise.resolve();
  #waitingCount = 0;
  /** The library was asked once all that was typed had been saved: only then its answer holds all of it. */
  #isAskedSince = false;

  readonly #beforeEdit: (now: FillTestRecord, next: FillTestRecord) => void;

  /**
   * @param kept the test as the library has it
   * @param beforeEdit called before an edit or a drag begins, while everything still stands as it was
   */
  constructor(
    app: App,
    kept: () => FillTestRecord | null,
    beforeEdit: (now: FillTestRecord, next: FillTestRecord) => void,
  ) {
    this.#app = app;
    this.#kept = kept;
    this.#beforeEdit = beforeEdit;
  }

  /** The test as it stands for the person: with what is still on its way into the library. */
  get test(): FillTestRecord | null {
    const saved = this.#saved;
    return this.#tried !== null && this.#tried.id === saved?.id ? this.#tried : saved;
  }

  /** The same without what is only tried by a drag. */
  get #saved(): FillTestRecord | null {
    const kept = this.#kept();
    return this.#ahead !== null && this.#ahead.id === kept?.id ? this.#ahead : kept;
  }

  /** Show the test as a drag would leave it, without saving. */
  attempt(edit: (test: FillTestRecord) => FillTestRecord): void {
    const saved = this.#saved;
    if (saved === null) return;
    const next = edit(saved);
    if (this.#tried === null) this.#beforeEdit(saved, next);
    this.#tried = next;
  }

  /**
   * Change the test and save it.
   * @param named completes 'Undo ...'
   * @returns the library's sentence where it refuses; the change is then taken back here as well
   */
  change(edit: (test: FillTestRecord) => FillTestRecord, named: string): Promise<string | null> {
    const now = this.#saved;
    if (now === null) return Promise.resolve('There is no fill test to change.');
    const next = edit(now);
    if (this.#tried === null) this.#beforeEdit(now, next);
    this.#tried = null;
    this.#ahead = next;
    this.#waitingCount += 1;
    this.#isAskedSince = false;
    const saved = this.#queue.then(() => this.#save(next, named));
    this.#queue = saved;
    return saved;
  }

  async #save(test: FillTestRecord, named: string): Promise<string | null> {
    try {
      await this.#app.client.ask('fillTest.put', { test, named });
      this.#waitingCount -= 1;
      return null;
    } catch (error) {
      this.#waitingCount -= 1;
      this.#ahead = null;
      return sentenceOf(error);
    }
  }

  /** The library is being asked anew. */
  asks(): void {
    this.#isAskedSince = this.#waitingCount === 0;
  }

  /**
   * The library has answered: its own version is the test again, unless it was asked before the last figure was saved.
   * Such an answer can come after that figure's reply; going back to it would take the row from under the hand.
   */
  catchUp(): void {
    if (this.#isAskedSince) this.#ahead = null;
  }
}
