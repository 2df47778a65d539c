import { homedir } from 'node:os';
import { join } from 'node:path';

/** What a library's file name ends in. */
export const libraryExtension = '.tarewing';

/** The system's folder for the data of applications, and in it ours. */
export function dataFolder(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
  home: string = homedir(),
): string {
  const base =
    platform === 'darwin'
      ? join(home, 'Library', 'Application Support')
      : platform === 'win32'
        ? (env['APPDATA'] ?? join(home, 'AppData', 'Roaming'))
        : absoluteOr(env['XDG_DATA_HOME'], join(home, '.local', 'share'));
  return join(base, 'Tarewing');
}

/** Where the library lies unless the person chooses another file. */
export function usualLibraryPath(): string {
  return join(dataFolder(), `library${libraryExtension}`);
}

// The base-directory specification: a relative path in the variable is to be ignored.
function absoluteOr(path: string | undefined, otherwise: string): string {
  return path?.startsWith('/') === true ? path : otherwise;
}
