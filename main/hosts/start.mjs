// `npm start`: plain JavaScript without dependencies, for Node 20 or later, so that it works on a fresh clone.
import { spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { downloadElectron, electronBinary } from './electron-binary.mjs';
import { hasDisplay } from './find-browser.mjs';
import { CannotPrepare, prepare, programNode, root } from './prepare.mjs';

const help = `npm start -- [flags]

  --library FILE   open this library file (made if it does not exist); without it, the one in its usual place
  --demo           open a fresh copy of the demo library, which may be spoiled freely
  --no-open        open no window; print the address for a browser on this computer
  --browser        open in a browser even where Electron is there
  --help           this text

The first start installs what is needed and builds; later ones build only what changed. Ctrl-C ends everything.`;

/** Electron that dies this early never showed a window. */
const stillbornMs = 5_000;
/** How often it is looked whether npm, which started this, is still there. */
const npmWatchMs = 1_000;

const say = (/** @type {string} */ line) => {
  console.log(line);
};

process.exitCode = await main();

async function main() {
  const flags = readFlags();
  if (flags === null) return 2;
  if (flags.help) {
    say(help);
    return 0;
  }
  try {
    prepare(say);
  } catch (error) {
    if (!(error instanceof CannotPrepare)) throw error;
    console.error(error.message);
    return 1;
  }
  const args = [
    ...(flags.library === undefined
      ? []
      : ['--library', resolve(process.env['INIT_CWD'] ?? '.', flags.library)]),
    ...(flags.demo ? ['--demo'] : []),
  ];
  if (!flags['no-open'] && !flags.browser && hasDisplay()) {
    const electron = electronBinary() ?? (await downloadElectron(say));
    if (electron === null) say('Electron cannot be downloaded here; the window opens in a browser instead.');
    else {
      const startedMs = Date.now();
      const isRoot = process.getuid?.() === 0;
      if (isRoot) say('Started as root: Electron runs without its sandbox.');
      const code = await runUntilEnd(electron, [...(isRoot ? ['--no-sandbox'] : []), root, ...args]);
      if (code === 0 || Date.now() - startedMs > stillbornMs) return code;
      say('Electron did not start here; the window opens in a browser instead.');
    }
  }
  return runUntilEnd(programNode(), [
    join(root, 'out', 'main', 'loopback.js'),
    ...args,
    ...(flags['no-open'] ? ['--no-open'] : []),
  ]);
}

function readFlags() {
  try {
    return parseArgs({
      options: {
        library: { type: 'string' },
        demo: { type: 'boolean', default: false },
        'no-open': { type: 'boolean', default: false },
        browser: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    }).values;
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n\n${help}`);
    return null;
  }
}

/**
 * Run a program until it ends. Signals are passed on and waited out, so that nothing is left behind; the channel
 * between the two closes if this process is killed, and the program then ends itself.
 * @param {string} command
 * @param {string[]} args
 * @returns {Promise<number>} its exit code
 */
function runUntilEnd(command, args) {
  const child = spawn(command, args, { stdio: ['inherit', 'inherit', 'inherit', 'ipc'] });
  // Ctrl-C in a terminal reaches the child by itself as well; a second one is harmless.
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
    process.on(signal, () => child.kill(signal));
  watchNpm(() => child.kill('SIGTERM'));
  return new Promise((resolve) => {
    child.once('error', (error) => {
      console.error(`${command} cannot be started: ${error.message}`);
      resolve(1);
    });
    child.once('exit', (code) => {
      resolve(code ?? 1);
    });
  });
}

/**
 * npm passes signals on, but cannot when it is killed outright; the program must not outlive it unseen.
 * @param {() => void} onGone
 */
function watchNpm(onGone) {
  if (process.env['npm_lifecycle_event'] === undefined) return;
  const startedBy = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === startedBy) return;
    clearInterval(watch);
    onGone();
  }, npmWatchMs);
  watch.unref();
}
