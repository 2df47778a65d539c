import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { findBrowser, hasDisplay } from './find-browser.mjs';

/** A window that was opened on an address; `closed` resolves when the person closes it, never where that is unknown. */
export interface OpenedWindow {
  /** What to tell the person. */
  said: string;
  closed: Promise<void>;
  end(): Promise<void>;
}

/** Long enough for a browser to write its profile, which is thrown away anyway. */
const endPatienceMs = 2_000;

/** Flags for an app window that keeps to itself: nothing here talks to a network. */
const appFlags = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-extensions',
  '--disable-sync',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-features=Translate,MediaRouter,OptimizationHints',
  '--window-size=1360,900',
];

/**
 * Open an address as an app window of an installed Chrome, Chromium or Edge, else in the default browser.
 * @returns null where nothing can be opened: no display, or no browser
 */
export function openWindow(address: string): OpenedWindow | null {
  if (!hasDisplay()) return null;
  const browser = findBrowser();
  return browser === null ? openDefaultBrowser(address) : openAppWindow(browser, address);
}

function openAppWindow(browser: string, address: string): OpenedWindow {
  // A profile of its own: the window's process is ours to end, and the person's own browser stays as it is.
  const profile = mkdtempSync(join(tmpdir(), 'tarewing-window-'));
  const isRoot = process.getuid?.() === 0;
  const child = spawn(
    browser,
    [
      `--app=${address}`,
      `--user-data-dir=${profile}`,
      ...appFlags,
      // Chromium refuses to start its sandbox as root.
      ...(isRoot ? ['--no-sandbox'] : []),
    ],
    { stdio: 'ignore' },
  );
  const closed = whenEnded(child);
  const clear = () => {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  void closed.then(clear);
  return {
    said: isRoot
      ? `Opened in ${browser}, without its sandbox because it was started as root.`
      : `Opened in ${browser}.`,
    closed,
    async end() {
      child.kill('SIGTERM');
      const impatience = setTimeout(() => child.kill('SIGKILL'), endPatienceMs);
      await closed;
      clearTimeout(impatience);
      clear();
    },
  };
}

function openDefaultBrowser(address: string): OpenedWindow | null {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler', address]
        : ['xdg-open', address];
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  if (process.platform === 'linux' && !folders.some((folder) => existsSync(join(folder, 'xdg-open'))))
    return null;
  const child = spawn(command ?? '', args, { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
  return {
    said: `Opened in the default browser at ${address}`,
    // A tab of the person's own browser: neither heard of nor ended from here.
    closed: new Promise(() => undefined),
    end: () => Promise.resolve(),
  };
}

function whenEnded(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => {
      resolve();
    });
    child.once('error', () => {
      resolve();
    });
  });
}
