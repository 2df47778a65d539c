import { SvelteMap } from 'svelte/reactivity';
import type { Component } from 'svelte';
import type { Screen } from '../../main/requests/define.ts';
import { screens, type ScreenEntry } from './screens.ts';

/** A window that is hidden or never idle reads ahead all the same, or its first way to a screen would be slow. */
const MOST_WAIT_MS = 1000;

/**
 * The sheets of the screens. Each is a file of its own in the built window, read when its screen is first asked for and
 * kept: the window starts with one of them, and fetches the others while nothing else is to be done.
 */
export class Sheets {
  readonly #screens: readonly ScreenEntry[];
  readonly #read = new SvelteMap<Screen, Component>();
  readonly #refused = new SvelteMap<Screen, string>();

  constructor(all: readonly ScreenEntry[]) {
    this.#screens = all;
  }

  /** The screen's sheet; undefined while it was not read, and for settings, which are part of the shell. */
  of(id: Screen): Component | undefined {
    return this.#read.get(id);
  }

  /** Why the sheet cannot be shown, as a sentence; undefined while all is well. */
  refusalOf(id: Screen): string | undefined {
    return this.#refused.get(id);
  }

  /** Read the sheet unless that is done. Never throws: what went wrong is found by `refusalOf`. */
  async fetch(id: Screen): Promise<void> {
    const entry = this.#screens.find((screen) => screen.id === id);
    if (entry === undefined || this.#read.has(id)) return;
    try {
      this.#read.set(id, (await entry.sheet()).default);
      this.#refused.delete(id);
    } catch {
      this.#refused.set(
        id,
        `The part of the program that shows ${entry.word} could not be read. What was saved is safe. ` +
          'Try again; if that does not help, close this window and start the program again.',
      );
    }
  }

  /** Read what is left, one sheet each time that the window has nothing to do, or after a while. @returns stops it */
  fetchIdly(): () => void {
    const left = this.#screens.map(({ id }) => id).filter((id) => !this.#read.has(id));
    let asked = 0;
    const next = () => {
      const id = left.shift();
      if (id === undefined) return;
      asked = requestIdleCallback(() => void this.fetch(id).then(next), { timeout: MOST_WAIT_MS });
    };
    next();
    return () => {
      left.length = 0;
      cancelIdleCallback(asked);
    };
  }
}

/** Of this page, whichever library it shows. */
export const sheets = new Sheets(screens);
