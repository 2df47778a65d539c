import { createContext, tick } from 'svelte';
import type { InputOf, OutputOf, RequestName } from '../../main/requests/table.ts';
import { sentenceOf, type Client } from './client.ts';
import { Jobs } from './jobs.svelte.ts';
import { Keys } from './keys.svelte.ts';
import { Notices } from './notices.svelte.ts';
import { Place } from './place.svelte.ts';
import { query, type Query } from './query.svelte.ts';
import { Settings } from './settings.svelte.ts';
import { Touched } from './touched.svelte.ts';
import { Units } from './units.svelte.ts';

/** What every screen may use, found by `getApp()`. Made once, inside the component that is the window. */
export class App {
  readonly client: Client;
  readonly touched = new Touched();
  readonly notices = new Notices();
  readonly keys = new Keys();
  readonly place = new Place();
  readonly jobs: Jobs;
  readonly settings: Settings;
  readonly units: Units;
  /** What undo and redo would do. */
  readonly history: Query<OutputOf<'history.next'>>;
  readonly library: Query<OutputOf<'library.describe'>>;
  readonly aeroplanes: Query<OutputOf<'aircraft.list'>>;
  readonly fields: Query<OutputOf<'fields.list'>>;
  #chosenFieldId = $state<unknown>(null);
  readonly #onLibrary: () => void;
  // Holds objects that are reactive themselves; that one is there is never watched.
  // eslint-disable-next-line svelte/prefer-svelte-reactivity
  readonly #kept = new Map<string, unknown>();

  /**
   * @param firstSettings as read before anything was drawn
   * @param onLibrary     another library was opened: the window starts anew
   */
  constructor(
    client: Client,
    firstSettings: Record<string, unknown>,
    onLibrary: () => void = () => undefined,
  ) {
    this.client = client;
    this.#onLibrary = onLibrary;
    this.#chosenFieldId = firstSettings['fieldId'];
    this.jobs = new Jobs(client);
    this.settings = new Settings(this, firstSettings);
    this.units = new Units(this.settings);
    this.history = query(this, 'history.next', () => ({}), ['history']);
    this.aeroplanes = query(this, 'aircraft.list', () => ({}), ['aircraft']);
    this.fields = query(this, 'fields.list', () => ({}), ['fields']);
    this.library = query(this, 'library.describe', () => ({}), ['library']);
  }

  /** The aeroplane of which every screen speaks; null while there is none or the library has not answered. */
  get aeroplaneId(): string | null {
    return this.aeroplanes.answer?.currentId ?? null;
  }

  /** The field of which every screen speaks; null while there is none or the library has not answered. */
  get fieldId(): string | null {
    const fields = this.fields.answer ?? [];
    return (fields.find(({ id }) => id === this.#chosenFieldId) ?? fields[0])?.id ?? null;
  }

  chooseField(id: string): void {
    this.#chosenFieldId = id;
    this.settings.remember('fieldId', id);
  }

  /** Leave this library for a fresh copy of the demo, which may be spoiled freely. */
  async openDemo(): Promise<void> {
    const status = await this.change('host.openDemo', {});
    if (status === null) return;
    if (status.problem === null) this.#onLibrary();
    else this.notices.say('Look at', status.problem.sentence);
  }

  /** Ask; a refusal becomes a notice and the answer null. For what a field refuses, call `client.ask` and show it there. */
  async change<N extends RequestName>(name: N, input: InputOf<N>): Promise<OutputOf<N> | null> {
    try {
      return await this.client.ask(name, input);
    } catch (error) {
      this.notices.say('Look at', sentenceOf(error));
      return null;
    }
  }

  /** Change, and say so with Undo in the notice. For what a person cannot see happen where they look. */
  async changeAndSay<N extends RequestName>(
    name: N,
    input: InputOf<N>,
    sentence: string,
  ): Promise<OutputOf<N> | null> {
    const output = await this.change(name, input);
    if (output !== null) this.notices.say('Done', sentence, [{ word: 'Undo', run: () => void this.undo() }]);
    return output;
  }

  /** Put this page on paper, once what just changed is drawn; a host that cannot says why. */
  async print(): Promise<void> {
    await tick();
    try {
      await this.client.bridge.print();
    } catch (error) {
      this.notices.say('Look at', sentenceOf(error));
    }
  }

  async undo(): Promise<void> {
    if (this.history.answer?.undo === null) return;
    const undone = await this.change('history.undo', {});
    if (undone !== null)
      this.notices.say('Done', `Undone: ${undone.named}.`, [{ word: 'Redo', run: () => void this.redo() }]);
  }

  async redo(): Promise<void> {
    if (this.history.answer?.redo === null) return;
    const redone = await this.change('history.redo', {});
    if (redone !== null)
      this.notices.say('Done', `Done again: ${redone.named}.`, [
        { word: 'Undo', run: () => void this.undo() },
      ]);
  }

  /** State that a screen finds again when the person comes back to it. `make` returns a `$state` object. */
  kept<T>(key: string, make: () => T): T {
    if (!this.#kept.has(key)) this.#kept.set(key, make());
    return this.#kept.get(key) as T;
  }
}

export const [getApp, setApp] = createContext<App>();
