import { _electron } from 'playwright-core';
import { electronBinary } from '../../../main/hosts/electron-binary.mjs';
import { hasDisplay } from '../../../main/hosts/find-browser.mjs';
import { root } from '../../../main/hosts/prepare.mjs';
import type { DesktopHost } from './desktop-window.ts';
import { watchPage } from './watch-page.ts';

const binary = electronBinary();

export const electronRealHost: DesktopHost = {
  name: 'Electron itself',
  unavailable:
    binary === null
      ? 'its binary was not downloaded (npx install-electron)'
      : hasDisplay()
        ? null
        : 'there is no display',
  async start({ libraryPath, isDemo, dataFolder, trouble }) {
    const program = await _electron.launch({
      executablePath: binary ?? '',
      args: [
        // Chromium refuses to start its sandbox as root.
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
        root,
        ...(libraryPath === null ? [] : ['--library', libraryPath]),
        ...(isDemo ? ['--demo'] : []),
      ],
      env: { ...(process.env as Record<string, string>), XDG_DATA_HOME: dataFolder, APPDATA: dataFolder },
    });
    const page = await program.firstWindow();
    watchPage(page, 'app://bundle', trouble);
    const ended = new Promise<void>((resolve) => {
      program.process().once('exit', () => {
        resolve();
      });
    });
    return {
      page,
      libraryPath: libraryPath ?? '',
      printed: () => '',
      chooseFiles: (field, paths) => field.setInputFiles(paths),
      end: () => program.close(),
      async kill() {
        program.process().kill('SIGKILL');
        await ended;
      },
    };
  },
};
