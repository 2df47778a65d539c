import { join } from 'node:path';
import { root } from '../../../main/hosts/prepare.mjs';
import type { DesktopHost } from './desktop-window.ts';
import { startProgram } from './program.ts';
import { testBrowser } from './test-browser.ts';
import { watchPage } from './watch-page.ts';

export const loopbackHost: DesktopHost = {
  name: 'loopback',
  unavailable: null,
  async start({ libraryPath, isDemo, dataFolder, trouble }) {
    const program = startProgram(
      [
        join(root, 'out/main/loopback.js'),
        '--no-open',
        ...(libraryPath === null ? [] : ['--library', libraryPath]),
        ...(isDemo ? ['--demo'] : []),
      ],
      dataFolder,
    );
    const [, address = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/#\S+)/);
    const [, kept = ''] = await program.waitFor(/Library: (.+)\n|(?<=\n)(?=Ctrl-C ends)/);
    const browser = await testBrowser();
    const context = await browser.newContext({ viewport: { width: 1280, height: 860 } });
    const page = await context.newPage();
    watchPage(page, new URL(address).origin, trouble);
    await page.goto(address);
    return {
      page,
      libraryPath: kept,
      printed: program.printed,
      chooseFiles: (field, paths) => field.setInputFiles(paths),
      async end() {
        await context.close();
        await program.end();
      },
      async kill() {
        await program.kill();
        await context.close();
      },
    };
  },
};
