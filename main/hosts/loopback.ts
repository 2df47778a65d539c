import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { whoHolds } from '../store/lock.ts';
import { readHostArguments } from './arguments.ts';
import { askDoor, readDoor } from './door-file.ts';
import { makeKeeper } from './keeper.ts';
import { usualLibraryPath } from './library-place.ts';
import { makeKeys } from './loopback-keys.ts';
import { startLoopbackServer } from './loopback-server.ts';
import { openWindow } from './open-browser.ts';
import { makeUploads } from './uploads.ts';
import { loadWindowFiles } from './window-files.ts';

// The program with its window in a browser: for computers where Electron's own binary cannot be had.

const { libraryPath, isDemo, opensWindow } = readHostArguments(process.argv.slice(2));
const path = resolve(libraryPath ?? usualLibraryPath());
const openAt = isDemo ? null : await whereOpen(path);
if (openAt !== null) console.log(`${path} is open already. One more window on it: ${openAt}`);
else await run();

async function run(): Promise<void> {
  const uploads = makeUploads();
  const keys = makeKeys();
  const server = await startLoopbackServer({
    keepAt: (origin) =>
      makeKeeper({ libraryPath, isDemo, host: 'loopback', door: { origin, token: keys.newToken() } }),
    keys,
    uploads,
    windowFile: loadWindowFiles(),
  });
  const address = `${server.origin}/#${keys.newCode()}`;
  const opened = opensWindow ? openWindow(address) : null;

  let isEnding = false;
  const end = () => {
    if (isEnding) return;
    isEnding = true;
    void endAll();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
  // The launcher is gone, however it ended.
  process.on('disconnect', end);

  if (opened === null) {
    const why = opensWindow ? 'No window can be opened here. ' : '';
    console.log(`${why}Open this address, which works once, in a browser on this computer: ${address}`);
  } else {
    console.log(opened.said);
    void opened.closed.then(end);
  }
  const { libraryPath: kept, problem } = await server.keeper.status();
  console.log(problem === null ? `Library: ${kept}` : problem.sentence);
  console.log('Ctrl-C ends the program.');

  async function endAll(): Promise<void> {
    await opened?.end();
    await server.close();
    await server.keeper.close();
    uploads.clear();
    process.exit(0);
  }
}

/** The address of one more window where another loopback host holds the library, else null. */
async function whereOpen(libraryPath: string): Promise<string | null> {
  if (!existsSync(libraryPath) || whoHolds(libraryPath) === null) return null;
  const door = readDoor(libraryPath);
  if (door === null) return null;
  const answer = await askDoor(door, '/code', {});
  return typeof answer === 'object' &&
    answer !== null &&
    'address' in answer &&
    typeof answer.address === 'string'
    ? answer.address
    : null;
}
