import { builtFile } from './built-file.ts';

/** Where the built worker of that name lies: the build makes each one an entry (electron.vite.config.ts). */
export function workerUrl(name: string): URL {
  return builtFile(`${name}.js`);
}
