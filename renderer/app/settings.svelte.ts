import type { Query } from './query.svelte.ts';
import type { App } from './app.svelte.ts';
import { query } from './query.svelte.ts';

/** Any small value that can be kept as JSON. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

export type Theme = 'system' | 'light' | 'dark';
/** 'high' is for a screen in the sun. */
export type Contrast = 'usual' | 'high';
export const textPercents = [100, 125, 150, 175, 200] as const;
export type TextPercent = (typeof textPercents)[number];

/** What the person has set, each key with its default. Kept in the library file, so that it travels with it. */
export class Settings {
  readonly #app: App;
  readonly #all: Query<Record<string, unknown>>;

  /** @param first the settings as read before anything was drawn */
  constructor(app: App, first: Record<string, unknown>) {
    this.#app = app;
    this.#first = first;
    this.#all = query(app, 'settings.get', () => ({}), ['settings']);
  }
  readonly #first: Record<string, unknown>;

  /** The value under a key, or undefined where it stands at its default. */
  get(key: string): unknown {
    return (this.#all.answer ?? this.#first)[key];
  }

  get theme(): Theme {
    return themeOf(this.get('theme'));
  }

  get contrast(): Contrast {
    return contrastOf(this.get('contrast'));
  }

  get textPercent(): TextPercent {
    return textPercentOf(this.get('textPercent'));
  }

  /** Keep a setting; it can be undone. `named` completes 'Undo ...'. */
  put(key: string, value: Json, named: string): Promise<boolean> {
    return this.#app.change('settings.put', { key, value, named }).then((output) => output !== null);
  }

  /** Keep where the person left off: not a change that undo should name. */
  remember(key: string, value: Json): void {
    this.#app.client.ask('settings.remember', { key, value }).catch(() => {
      // Where the person left off is not worth a sentence.
    });
  }
}

export function themeOf(value: unknown): Theme {
  return value === 'light' || value === 'dark' ? value : 'system';
}

export function contrastOf(value: unknown): Contrast {
  return value === 'high' ? 'high' : 'usual';
}

export function textPercentOf(value: unknown): TextPercent {
  return textPercents.find((percent) => percent === value) ?? 100;
}
