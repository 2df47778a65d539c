// Plain JavaScript without dependencies: the launcher uses it before anything is installed.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * The path of an installed Chrome, Chromium or Edge, or null.
 * @returns {string | null}
 */
export function findBrowser() {
  const { platform, env } = process;
  if (platform === 'darwin') {
    const homes = ['/Applications', join(env['HOME'] ?? '', 'Applications')];
    const apps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
    return first(
      homes.flatMap((home) => apps.map((app) => join(home, `${app}.app`, 'Contents', 'MacOS', app))),
    );
  }
  if (platform === 'win32') {
    const homes = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']].filter(Boolean);
    const apps = ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'];
    return first(homes.flatMap((home) => apps.map((app) => join(String(home), app))));
  }
  const names = ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser', 'microsoft-edge'];
  const folders = (env['PATH'] ?? '').split(delimiter).filter(Boolean);
  return first(names.flatMap((name) => folders.map((folder) => join(folder, name))));
}

/** Whether a window can be shown at all: on Linux only where a display is named. */
export function hasDisplay(platform = process.platform, env = process.env) {
  return (
    platform === 'darwin' ||
    platform === 'win32' ||
    Boolean(env['DISPLAY']) ||
    Boolean(env['WAYLAND_DISPLAY'])
  );
}

/** @param {string[]} paths */
function first(paths) {
  return paths.find((path) => existsSync(path)) ?? null;
}
