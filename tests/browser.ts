import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from '../main/hosts/find-browser.mjs';
import { root } from '../main/hosts/prepare.mjs';

/** What is needed to launch a Chromium for tests. */
export interface TestBrowser {
  path: string;
  args: string[];
  env: Record<string, string>;
}

/** Flags for an unattended Chromium: nothing that talks to the network or asks a person; text as wide in each one. */
const quietArgs = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--font-render-hinting=none',
];

/**
 * An installed Chrome, Chromium or Edge, else the one that lies inside the test dependency
 * (Linux x64 only), so that the checks need nothing installed by hand.
 */
export function browserForTests(): TestBrowser {
  const env = Object.fromEntries(
    Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined),
  );
  const installed = process.env['TAREWING_TEST_BROWSER'] ?? findBrowser();
  if (installed !== null) {
    // Chromium refuses to start its sandbox as root.
    const args = process.getuid?.() === 0 ? [...quietArgs, '--no-sandbox'] : quietArgs;
    return { path: installed, args, env };
  }
  const folder = unpackedBrowser();
  return {
    path: join(folder, 'chromium'),
    // Its package has no sandbox helper. The package's own flags are for another place: one process for everything,
    // and no web security, which these checks are to meet.
    args: [...quietArgs, '--no-sandbox'],
    env: {
      ...env,
      LD_LIBRARY_PATH: [join(folder, 'al2023', 'lib'), env['LD_LIBRARY_PATH']].filter(Boolean).join(':'),
      FONTCONFIG_PATH: join(folder, 'fonts'),
    },
  };
}

/**
 * The package looks for its fonts in /tmp; without any font every line of text is nothing high.
 * A relative place for the cache would be one in whatever folder the browser is started from.
 */
const fontSettings = (folder: string) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${join(folder, 'fonts', 'cache')}</cachedir>
</fontconfig>
`;

/** The packaged browser, unpacked once for each version; put in place whole, so that no half of it is ever used. */
function unpackedBrowser(): string {
  const packageFile = join(root, 'node_modules/@sparticuz/chromium/package.json');
  const { version } = JSON.parse(readFileSync(packageFile, 'utf8')) as { version: string };
  const folder = join(root, '.cache', `chromium-${version}`);
  if (existsSync(folder)) return folder;
  mkdirSync(join(root, '.cache'), { recursive: true });
  const aside = mkdtempSync(join(root, '.cache', 'unpacking-'));
  try {
    // It unpacks into the temporary folder, reuses whatever lies there, and changes its process's environment: so a
    // process and a folder of its own. Its libraries come along only where it believes to run in their place.
    const unpack = `import('@sparticuz/chromium').then((packaged) => packaged.default.executablePath())`;
    execFileSync(process.execPath, ['--input-type=module', '--eval', `await ${unpack}`], {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, TMPDIR: aside, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' },
    });
    writeFileSync(join(aside, 'fonts', 'fonts.conf'), fontSettings(folder));
    renameSync(aside, folder);
  } catch (error) {
    rmSync(aside, { recursive: true, force: true });
    // Another run may have put it there meanwhile.
    if (!existsSync(folder)) throw error;
  }
  return folder;
}
