// Plain JavaScript without dependencies, for Node 20 or later: it runs on a fresh clone, before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));
const stampPath = join(root, 'out', 'built-from');
const busyPath = join(root, '.cache', 'preparing');

/** What the built program comes from. */
const sources = [
  'main',
  'renderer',
  'shared-calc',
  'fixtures',
  'electron.vite.config.ts',
  'svelte.config.js',
  'tsconfig.json',
  'package-lock.json',
];

/** A sentence for the person instead of a stack. */
export class CannotPrepare extends Error {}

/**
 * Install what is missing and build what changed. Says what it does by `say`, once for each long step.
 * Two starts at once take turns.
 * @param {(line: string) => void} say
 */
export function prepare(say) {
  const [major = 0] = process.versions.node.split('.').map(Number);
  if (major < 20) throw new CannotPrepare(`Node ${process.versions.node} is too old; 20 or later is needed.`);
  const isReady = () => isInstalled() && readIf(stampPath) === sourceStamp();
  if (isReady()) return;
  const release = takeTurn(say);
  try {
    if (!isInstalled()) install(say);
    const stamp = sourceStamp();
    if (readIf(stampPath) !== stamp) build(say, stamp);
  } finally {
    release();
  }
}

/**
 * Install what is missing, and nothing else.
 * @param {(line: string) => void} say
 */
export function prepareToInstall(say) {
  if (isInstalled()) return;
  const release = takeTurn(say);
  try {
    if (!isInstalled()) install(say);
  } finally {
    release();
  }
}

/** The Node that the program runs with: its own, put there by the installation, else this one. */
export function programNode() {
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  const own = join(root, 'node_modules', 'node', 'bin', name);
  if (existsSync(own)) return own;
  const [major = 0] = process.versions.node.split('.').map(Number);
  if (major >= 24) return process.execPath;
  throw new CannotPrepare(
    `The program runs with Node 24, which its installation did not bring (this is ${process.versions.node}). ` +
      'Install again with scripts allowed (npm ci), or use Node 24 or later.',
  );
}

/** Whether node_modules holds what the lockfile names: compared with the record that npm leaves there. */
function isInstalled() {
  const record = readIf(join(root, 'node_modules', '.package-lock.json'));
  if (record === null) return false;
  /** @type {{packages: Record<string, {version?: string, optional?: boolean, devOptional?: boolean, peer?: boolean}>}} */
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  /** @type {typeof wanted} */
  const there = JSON.parse(record);
  return Object.entries(wanted.packages).every(([path, entry]) => {
    if (path === '') return true;
    const found = there.packages[path];
    if (found === undefined)
      return entry.optional === true || entry.devOptional === true || entry.peer === true;
    return found.version === entry.version;
  });
}

/** @param {(line: string) => void} say */
function install(say) {
  say('Installing what the program needs (once; about a minute) ...');
  const npm = process.env['npm_execpath'];
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  run(
    'Installing',
    npm === undefined || !npm.endsWith('.js')
      ? spawnSync(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, {
          ...quiet,
          shell: process.platform === 'win32',
        })
      : spawnSync(process.execPath, [npm, ...args], quiet),
  );
}

/**
 * @param {(line: string) => void} say
 * @param {string} stamp
 */
function build(say, stamp) {
  say('Building ...');
  const node = programNode();
  rmSync(stampPath, { force: true });
  run(
    'Building',
    spawnSync(node, [join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js'), 'build'], quiet),
  );
  const demo = join(root, 'fixtures', 'build-demo.ts');
  if (existsSync(demo)) run('Building the demo library', spawnSync(node, [demo], quiet));
  writeFileSync(stampPath, stamp);
}

/** @type {import('node:child_process').SpawnSyncOptionsWithStringEncoding} */
const quiet = { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 2 ** 26 };

/**
 * @param {string} what
 * @param {import('node:child_process').SpawnSyncReturns<string>} result
 */
function run(what, result) {
  if (result.status === 0) return;
  const words = [result.error?.message, result.stdout, result.stderr].filter(Boolean).join('\n').trim();
  throw new CannotPrepare(`${what} failed:\n${words}`);
}

/** A digest of every source by its content: a check-out that only touches files builds nothing. */
function sourceStamp() {
  const digest = createHash('sha256');
  for (const path of sources.flatMap(filesOf))
    digest.update(`\n${path}\n`).update(readFileSync(join(root, path)));
  return digest.digest('hex');
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesOf(path) {
  const stats = statSync(join(root, path), { throwIfNoEntry: false });
  if (stats === undefined) return [];
  if (!stats.isDirectory()) return [path];
  return readdirSync(join(root, path))
    .sort()
    .flatMap((name) => filesOf(`${path}/${name}`));
}

/**
 * Wait until no other process installs or builds here.
 * @param {(line: string) => void} say
 */
function takeTurn(say) {
  mkdirSync(join(root, '.cache'), { recursive: true });
  let said = false;
  for (;;) {
    try {
      writeFileSync(busyPath, String(process.pid), { flag: 'wx' });
      return () => {
        rmSync(busyPath, { force: true });
      };
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    }
    if (!isAlive(Number(readIf(busyPath) ?? 'NaN'))) rmSync(busyPath, { force: true });
    else {
      if (!said) say('Waiting for another start that installs or builds here ...');
      said = true;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    }
  }
}

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}

/** @param {string} path */
function readIf(path) {
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}
