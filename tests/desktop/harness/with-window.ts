import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import type { DesktopHost, DesktopWindow } from './desktop-window.ts';
import { electronDoubleHost } from './electron-double.ts';
import { electronRealHost } from './electron-real.ts';
import { loopbackHost } from './loopback.ts';

export const desktopHosts: DesktopHost[] = [loopbackHost, electronDoubleHost, electronRealHost];

/** The same checks in every host; one that cannot run here is skipped, and its title says why. */
export function inEveryHost(title: string, checks: (host: DesktopHost) => void): void {
  for (const host of desktopHosts) {
    const why = host.unavailable === null ? '' : ` (skipped: ${host.unavailable})`;
    describe.skipIf(host.unavailable !== null)(`${title}, ${host.name}${why}`, () => {
      checks(host);
    });
  }
}

/** A folder for a test's library and data, removed afterwards. */
export async function withFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-test-'));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

export interface WindowOptions {
  /** Where library and data lie; without it a new folder for this window alone. */
  folder?: string;
  /** null: the usual place inside the folder. Without it: library.tarewing in the folder. */
  libraryPath?: string | null;
  isDemo?: boolean;
  /** What the page may complain about in this test. */
  expected?: RegExp;
}

/**
 * Start the program with its window, use it, and end both. Fails on any error of the page, on a refusal by its
 * policy and on any request that leaves the program.
 */
export async function withWindow<T>(
  host: DesktopHost,
  options: WindowOptions,
  use: (window: DesktopWindow) => Promise<T>,
): Promise<T> {
  const { folder } = options;
  if (folder === undefined) return withFolder((own) => withWindow(host, { ...options, folder: own }, use));
  const troubles: string[] = [];
  let isKilled = false;
  const window = await host.start({
    libraryPath:
      options.isDemo === true
        ? null
        : options.libraryPath === undefined
          ? join(folder, 'library.tarewing')
          : options.libraryPath,
    isDemo: options.isDemo ?? false,
    dataFolder: join(folder, 'data'),
    trouble: (sentence) => {
      // A page whose program was killed rightly complains.
      if (!isKilled && options.expected?.test(sentence) !== true) troubles.push(sentence);
    },
  });
  try {
    const result = await use({
      ...window,
      async kill() {
        isKilled = true;
        await window.kill();
      },
    });
    expect(troubles).toEqual([]);
    return result;
  } catch (error) {
    if (troubles.length > 0 && error instanceof Error)
      error.message += `\nThe page said: ${troubles.join('\n')}`;
    throw error;
  } finally {
    if (!isKilled) await window.end();
  }
}
