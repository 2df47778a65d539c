import { svelte } from '@sveltejs/vite-plugin-svelte';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { browserForTests } from './tests/browser.ts';

// Three kinds of checks: plain ones in Node; components in a real browser; the running program, driven
// end to end over each host. The last kind needs a build, which tests/run.mjs makes first.
const browser = browserForTests();

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          globalSetup: ['tests/temporary-folder.ts'],
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/desktop/**', 'tests/renderer/**/*.browser.test.ts'],
          // Some study many drawn cases, and the machine may be slow; how long things take is for the benches.
          testTimeout: 60_000,
        },
      },
      {
        plugins: [svelte()],
        test: {
          name: 'browser',
          include: ['tests/renderer/**/*.browser.test.ts'],
          browser: {
            enabled: true,
            headless: true,
            // As on a small laptop: narrower windows are asked for by the tests that mean them.
            viewport: { width: 1280, height: 800 },
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath: browser.path, args: browser.args, env: browser.env },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        test: {
          name: 'desktop',
          environment: 'node',
          globalSetup: ['tests/temporary-folder.ts', 'tests/desktop/harness/built.ts'],
          include: ['tests/desktop/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // What is waited for comes from other processes, on machines that do much else.
          expect: { poll: { timeout: 30_000 } },
          // Each file starts whole programs and a browser: two at once on two cores only get in each other's way.
          fileParallelism: false,
          // After the others, for the same reason.
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
