import type { Locator, Page } from 'playwright-core';

/** One running program with its window, whichever host it runs in. */
export interface DesktopWindow {
  page: Page;
  /** Where requests of the window go; nothing else may be asked for. */
  libraryPath: string;
  /** What the program printed so far. */
  printed(): string;
  /** Choose files in a field of the page, as a person does in the system's dialog. */
  chooseFiles(field: Locator, paths: string[]): Promise<void>;
  /** End the program as Ctrl-C does, and wait for it. */
  end(): Promise<void>;
  /** Kill the program where it stands, as a power cut does. */
  kill(): Promise<void>;
}

export interface StartOptions {
  libraryPath: string | null;
  isDemo: boolean;
  /** The person's data folder, so that no test meets another's. */
  dataFolder: string;
  /** Hears what should not happen: errors of the page, refusals by its policy, requests that leave the program. */
  trouble(sentence: string): void;
}

export interface DesktopHost {
  name: string;
  /** Why it cannot run here, or null. */
  unavailable: string | null;
  start(options: StartOptions): Promise<DesktopWindow>;
}
