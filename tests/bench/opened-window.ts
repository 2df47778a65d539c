import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { root } from '../../main/hosts/prepare.mjs';
import { browserForTests } from '../browser.ts';
import { startProgram, type Program } from '../desktop/harness/program.ts';

export interface OpenedWindow {
  program: Program;
  browser: Browser;
  page: Page;
}

export interface OpenedOptions {
  /** Called with the page before it goes anywhere. */
  preparePage?: (page: Page) => Promise<void>;
  /** For Node itself, before the program. */
  nodeArguments?: readonly string[];
}

/**
 * The built program over the loopback host with its window in a browser, ended afterwards.
 * @param library what the program is told to open: '--demo', or '--library' and a file
 */
export async function withOpenedWindow<T>(
  library: readonly string[],
  use: (window: OpenedWindow) => Promise<T>,
  { preparePage, nodeArguments = [] }: OpenedOptions = {},
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
  const program = startProgram(
    [...nodeArguments, join(root, 'out/main/loopback.js'), '--no-open', ...library],
    folder,
  );
  const { path, args, env } = browserForTests();
  const browser = await chromium.launch({ executablePath: path, args, env, headless: true });
  try {
    const [, address = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/#\S+)/);
    const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
    await preparePage?.(page);
    await page.goto(address);
    await page.locator('main h1').waitFor();
    return await use({ program, browser, page });
  } finally {
    await browser.close();
    await program.end();
    rmSync(folder, { recursive: true, force: true });
  }
}
