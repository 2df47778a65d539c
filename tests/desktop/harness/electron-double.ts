import { readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Page, Route } from 'playwright-core';
import { root } from '../../../main/hosts/prepare.mjs';
import type { Fetched, FromProgram, ProgramFacts, ToProgram } from '../electron-double/messages.ts';
import { installPreloadSide } from '../electron-double/page-side.ts';
import type { DesktopHost, DesktopWindow, StartOptions } from './desktop-window.ts';
import { startProgram } from './program.ts';
import { testBrowser } from './test-browser.ts';
import { watchPage } from './watch-page.ts';

/** Chromium knows no app:// here, so its pages come from a name that stands for it. */
const standIn = 'http://bundle.localhost';
const ofProgram = 'app://bundle';

/** The Electron host's window, with what only the double can be asked. */
export interface DoubledWindow extends DesktopWindow {
  facts(): Promise<ProgramFacts>;
  /** What the program answers when the page wants a permission. */
  askPermission(permission: string): Promise<{ asked: boolean; checked: boolean }>;
  /** Send a message as a frame of that address would. */
  invokeAs(frame: { url: string; isMain: boolean }, channel: string, args: unknown[]): Promise<unknown>;
  /** The status and headers with which the program answers for an address. */
  fetch(url: string): Promise<Fetched>;
  /** What happened to the window, in order: 'focus', 'print', 'denied window ...', 'prevented navigation ...'. */
  happened: string[];
}

export const electronDoubleHost: DesktopHost = {
  name: 'Electron host with a double of Electron',
  unavailable: null,
  start: startDoubled,
};

/** Programs that run now, by their user-data folder: Electron tells the first of a second start. */
const running = new Map<string, (message: ToProgram) => void>();

export async function startDoubled(options: StartOptions): Promise<DoubledWindow> {
  const { libraryPath, isDemo, dataFolder, trouble } = options;
  const program = startProgram(
    [
      join(root, 'tests/desktop/electron-double/run.ts'),
      join(root, 'out/main/electron.js'),
      ...(libraryPath === null ? [] : ['--library', libraryPath]),
      ...(isDemo ? ['--demo'] : []),
    ],
    dataFolder,
  );
  const happened: string[] = [];
  const waiting = new Map<number, PromiseWithResolvers<unknown>>();
  let calls = 0;
  const tell = (message: ToProgram) => {
    if (program.child.connected) program.child.send(message);
  };
  const call = (make: (number: number) => ToProgram): Promise<unknown> => {
    const answer = Promise.withResolvers<unknown>();
    waiting.set(++calls, answer);
    tell(make(calls));
    return answer.promise;
  };
  program.child.on('exit', () => {
    for (const each of waiting.values()) each.reject(new Error('The program has ended.'));
    waiting.clear();
  });

  const browser = await testBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
  const opened = Promise.withResolvers<{ page: Page; window: number }>();
  // In order: an event must not overtake the one before it.
  let toPage: Promise<unknown> = Promise.resolve();

  program.child.on('message', (message: FromProgram) => {
    if (message.type === 'open') openPage(message).then(opened.resolve, opened.reject);
    else if (message.type === 'answer') waiting.get(message.call)?.resolve(message.value);
    else if (message.type === 'failed') waiting.get(message.call)?.reject(new Error(message.message));
    else if (message.type === 'second-instance') running.get(message.userData)?.({ type: 'second-instance' });
    else if (message.type === 'send') {
      const { channel, args } = message;
      toPage = toPage.then(async () => {
        const { page } = await opened.promise;
        await page
          .evaluate(
            ([name, values]) => {
              (window as unknown as { electronDoubleHear(c: string, a: unknown[]): void }).electronDoubleHear(
                name,
                values,
              );
            },
            [channel, args] as const,
          )
          .catch(() => undefined);
      });
    } else happened.push(message.type);
  });
  program.child.once('exit', () => {
    opened.reject(new Error(`The program ended without a window:\n${program.printed()}`));
  });

  async function openPage(open: Extract<FromProgram, { type: 'open' }>) {
    const page = await context.newPage();
    const { window } = open;
    watchPage(page, standIn, trouble);
    await page.exposeBinding('electronDouble', ({ frame }, sent: unknown) => {
      const { type, channel, args } = sent as { type: 'invoke' | 'say'; channel: string; args: unknown[] };
      const facts = { url: toProgramUrl(frame.url()), isMain: frame.parentFrame() === null };
      if (type === 'invoke')
        return call((number) => ({ type: 'invoke', call: number, window, frame: facts, channel, args }));
      tell({ type: 'say', window, frame: facts, channel, args });
      return undefined;
    });
    await page.addInitScript(installPreloadSide, open.preload);
    let isLoading = true;
    const serve = async (route: Route) => {
      const request = route.request();
      const url = toProgramUrl(request.url());
      if (request.isNavigationRequest() && !isLoading && request.frame() === page.mainFrame()) {
        const answer = await call((number) => ({ type: 'navigate', call: number, window, url }));
        happened.push(`${String(answer)} navigation ${url}`);
        if (answer === 'prevented') return route.abort('aborted');
      }
      if (!url.startsWith(`${ofProgram}/`)) return route.abort();
      const fetched = (await call((number) => ({ type: 'fetch', call: number, url }))) as Fetched;
      return route.fulfill({ ...fetched, body: Buffer.from(fetched.body) });
    };
    // A program that ends leaves its last requests unanswered, as a closed window does.
    await page.route('**/*', (route) => serve(route).catch(() => route.abort().catch(() => undefined)));
    page.on('popup', (popup) => {
      void denyOrKeep(popup).catch(() => undefined);
    });
    const denyOrKeep = async (popup: Page) => {
      const url = popup.url();
      const action = await call((number) => ({ type: 'open-window', call: number, window, url }));
      happened.push(`${String(action)} window`);
      if (action === 'deny') await popup.close();
    };
    await page.goto(open.url.replace(ofProgram, standIn));
    isLoading = false;
    return { page, window };
  }

  const { page, window } = await opened.promise;
  const facts = async () => (await call((number) => ({ type: 'facts', call: number }))) as ProgramFacts;
  const { userData } = await facts();
  running.set(userData, tell);
  const gone = async () => {
    running.delete(userData);
    await context.close();
  };
  return {
    page,
    libraryPath: libraryPath ?? '',
    printed: program.printed,
    happened,
    facts,
    askPermission: async (permission) =>
      (await call((number) => ({ type: 'permission', call: number, window, permission }))) as {
        asked: boolean;
        checked: boolean;
      },
    invokeAs: (frame, channel, args) =>
      call((number) => ({ type: 'invoke', call: number, window, frame, channel, args })),
    fetch: async (url) => (await call((number) => ({ type: 'fetch', call: number, url }))) as Fetched,
    async chooseFiles(field, paths) {
      await page.evaluate(
        (known) => {
          const { electronDoublePaths } = globalThis as unknown as {
            electronDoublePaths: Map<string, string>;
          };
          for (const [name, path] of known) electronDoublePaths.set(name, path);
        },
        paths.flatMap(filesUnder).map((path) => [basename(path), path] as const),
      );
      await field.setInputFiles(paths);
    },
    async end() {
      await program.end();
      await gone();
    },
    async kill() {
      await program.kill();
      await gone();
    },
  };
}

function toProgramUrl(url: string): string {
  return url.startsWith(standIn) ? url.replace(standIn, ofProgram) : url;
}

/** A file itself, or every file of a folder. */
function filesUnder(path: string): string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => join(each.parentPath, each.name));
}
