// Plain JavaScript without dependencies: used by the launcher.
import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { programNode, root } from './prepare.mjs';

const packageFolder = join(root, 'node_modules', 'electron');
const refusedPath = join(root, '.cache', 'electron-not-downloaded');
/** A network that lets nothing through shows it at once or by silence. */
const silenceMs = 8_000;
const retryAfterMs = 24 * 3_600_000;

/** The path of Electron's binary, or null where it was not downloaded. */
export function electronBinary() {
  const pathFile = join(packageFolder, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const folder = process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(packageFolder, 'dist');
  const binary = join(folder, readFileSync(pathFile, 'utf8'));
  return existsSync(binary) ? binary : null;
}

/**
 * Download Electron's binary by its package's own installer, which knows mirrors and checks the sum. Given up when
 * nothing arrives for some seconds, and then not tried again for a day.
 * @param {(line: string) => void} say
 * @returns {Promise<string | null>} the binary's path
 */
export async function downloadElectron(say) {
  const { version } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8'));
  if (existsSync(refusedPath) && readFileSync(refusedPath, 'utf8') === version) {
    if (Date.now() - statSync(refusedPath).mtimeMs < retryAfterMs) return null;
  }
  say('Downloading Electron (once; about 110 MB) ...');
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-electron-'));
  const child = spawn(programNode(), [join(packageFolder, 'install.js')], {
    stdio: 'ignore',
    env: { ...process.env, TMPDIR: folder, TEMP: folder, TMP: folder },
  });
  let [bytes, grewAt] = [0, Date.now()];
  const watch = setInterval(() => {
    const now = sizeOf(folder) + sizeOf(join(packageFolder, 'dist'));
    if (now > bytes) [bytes, grewAt] = [now, Date.now()];
    else if (Date.now() - grewAt > silenceMs) child.kill();
  }, 500);
  await new Promise((resolve) => {
    child.once('exit', resolve);
    child.once('error', resolve);
  });
  clearInterval(watch);
  rmSync(folder, { recursive: true, force: true });
  const binary = electronBinary();
  if (binary === null) {
    mkdirSync(join(root, '.cache'), { recursive: true });
    writeFileSync(refusedPath, version);
  }
  return binary;
}

/**
 * @param {string} folder
 * @returns {number} bytes of all files in it, as far as they can be seen while they are written
 */
function sizeOf(folder) {
  if (!existsSync(folder)) return 0;
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce(
      (sum, entry) =>
        sum + (statSync(join(entry.parentPath, entry.name), { throwIfNoEntry: false })?.size ?? 0),
      0,
    );
}
