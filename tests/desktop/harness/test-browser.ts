import { chromium, type Browser } from 'playwright-core';
import { afterAll } from 'vitest';
import { browserForTests } from '../../browser.ts';

let launched: Promise<Browser> | null = null;

/** One browser for all tests of a file; each test has a context of its own. */
export function testBrowser(): Promise<Browser> {
  const { path, args, env } = browserForTests();
  launched ??= chromium.launch({ executablePath: path, args, env, headless: true });
  return launched;
}

afterAll(async () => {
  await (await launched)?.close();
  launched = null;
});
