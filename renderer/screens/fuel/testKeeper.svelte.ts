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
  #queue: Promise<unknown> = Promise.resolve();
  #waitingCount = 0;

  /** @param kept the test as the library has it */
  constructor(app: App, kept: () => FillTestRecord | null) {
    this.#app = app;
    this.#kept = kept;
  }

  /** The test as it stands for the person: with what is still on its way into the library. */
  get test(): FillTestRecord | null {
    const kept = this.#kept();
    return this.#ahead !== null && this.#ahead.id === kept?.id ? this.#ahead : kept;
  }

  /**
   * Change the test and save it.
   * @param named completes 'Undo ...'
   * @returns the library's sentence where it refuses; the change is then taken back here as well
   */
  change(edit: (test: FillTestRecord) => FillTestRecord, named: string): Promise<string | null> {
    const now = this.test;
    if (now === null) return Promise.resolve('There is no fill test to change.');
    const next = edit(now);
    this.#ahead = next;
    this.#waitingCount += 1;
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

  /** The library has answered anew: once nothing is on its way, its own version is the test. */
  catchUp(): void {
    if (this.#waitingCount === 0) this.#ahead = null;
  }
}
