import type { OutputOf } from '../../../main/requests/table.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import type { Query } from '../../app/query.svelte.ts';

/**
 * The aeroplane on the sheet, and the one way to change it: name the change, alter a copy, save the whole.
 * Changes are saved one after the other, each on top of what the library holds by then, so that two quick ones
 * never undo each other.
 */
export class AircraftEdits {
  readonly #app: App;
  readonly #kept: Query<OutputOf<'aircraft.get'>>;
  #last: Promise<unknown> = Promise.resolve();
  /** What was saved and has not come back from the library yet. */
  #ahead = $state.raw<{ of: OutputOf<'aircraft.get'>; aircraft: AircraftRecord } | null>(null);

  constructor(app: App, kept: Query<OutputOf<'aircraft.get'>>) {
    this.#app = app;
    this.#kept = kept;
  }

  get aircraft(): AircraftRecord | null {
    const kept = this.#kept.answer;
    if (kept === undefined) return null;
    return this.#ahead?.of === kept ? this.#ahead.aircraft : kept.aircraft;
  }

  /** @returns null when saved, else the sentence that refuses */
  change(named: string, alter: (aircraft: AircraftRecord) => void): Promise<string | null> {
    const run = async (): Promise<string | null> => {
      const id = this.aircraft?.id;
      if (id === undefined) return 'The aeroplane is not read yet.';
      try {
        const { aircraft } = await this.#app.client.ask('aircraft.get', { id });
        const before = JSON.stringify(aircraft);
        alter(aircraft);
        // A field that is left while it is being saved asks twice: nothing to save, nothing to undo.
        if (JSON.stringify(aircraft) === before) return null;
        await this.#app.client.ask('aircraft.put', { aircraft, named });
        const of = this.#kept.answer;
        if (of !== undefined) this.#ahead = { of, aircraft };
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

/** The row of that id, to be altered in a copy. */
export function rowOf<R extends { id: string }>(rows: readonly R[], id: string): R {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`The row ${id} was removed meanwhile. Nothing was changed.`);
  return row;
}
