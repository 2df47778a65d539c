/**
 * Where the built worker of that name lies: beside the running file, or one folder up from a shared part.
 * The build makes each worker an entry of its own (electron.vite.config.ts), so the name alone finds it.
 */
export function workerUrl(name: string): URL {
  const here = new URL(import.meta.url);
  const folder = here.pathname.includes('/parts/') ? new URL('..', here) : new URL('.', here);
  return new URL(`${name}.js`, folder);
}
