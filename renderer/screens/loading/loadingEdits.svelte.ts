import type { OutputOf } from '../../../main/requests/table.ts';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import type { Query } from '../../app/query.svelte.ts';

/**
 * The loading on the sheet. `attempt` follows a hand (a drag, a keystroke) and saves nothing; `change` saves, one
 * change after the other, each on top of what the library holds by then.
 */
export class LoadingEdits {
  readonly #app: App;
  readonly #kept: Query<OutputOf<'loading.get'>>;
  #last: Promise<unknown> = Promise.resolve();
  #ahead = $state.raw<{ of: OutputOf<'loading.get'>; loading: LoadingRecord } | null>(null);
  #tried = $state.raw<{ loading: LoadingRecord; by: 'field' | 'grip' } | null>(null);

  constructor(app: App, kept: Query<OutputOf<'loading.get'>>) {
    this.#app = app;
    this.#kept = kept;
  }

  /** As saved. */
  get saved(): LoadingRecord | null {
    const kept = this.#kept.answer;
    if (kept === undefined) return null;
    return this.#ahead?.of === kept ? this.#ahead.loading : kept.loading;
  }

  /** As it is in hand: what sentence, plot and table show. */
  get loading(): LoadingRecord | null {
    return this.#tried?.loading ?? this.saved;
  }

  /** What the fields hold: they follow a grip, but a field compares what is typed into it with what is saved. */
  get entries(): LoadingRecord | null {
    return this.#tried?.by === 'grip' ? this.#tried.loading : this.saved;
  }

  /** Show a change without saving it; one that changes nothing ends the showing. */
  attempt(by: 'field' | 'grip', alter: (loading: LoadingRecord) => void): void {
    const saved = this.saved;
    if (saved === null) return;
    const loading = structuredClone(saved);
    alter(loading);
    this.#tried = JSON.stringify(loading) === JSON.stringify(saved) ? null : { loading, by };
  }

  /** Back to what is saved. */
  leave(): void {
    this.#tried = null;
  }

  /** @returns null when saved, else the sentence that refuses */
  change(named: string, alter: (loading: LoadingRecord) => void): Promise<string | null> {
    const run = async (): Promise<string | null> => {
      const id = this.saved?.id;
      if (id === undefined) return 'The loading is not read yet.';
      try {
        const { loading } = await this.#app.client.ask('loading.get', { id });
        const before = JSON.stringify(loading);
        alter(loading);
        // A field that is left while it is being saved asks twice: nothing to save, nothing to undo.
        if (JSON.stringify(loading) === before) return null;
        await this.#app.client.ask('loading.put', { loading, named });
        const of = this.#kept.answer;
        if (of !== undefined) this.#ahead = { of, loading };
        return null;
      } catch (error) {
        return sentenceOf(error);
      } finally {
        this.#tried = null;
      }
    };
    const done = this.#last.then(run);
    this.#last = done;
    return done;
  }
}
