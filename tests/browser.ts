import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from '../main/hosts/find-browser.mjs';

/** What is needed to launch a Chromium for tests. */
export interface TestBrowser {
  path: string;
  args: string[];
  env: Record<string, string>;
}

/** Flags for an unattended Chromium: nothing that talks to the network or asks a person. */
const quietArgs = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * An installed Chrome, Chromium or Edge, else the one that lies inside the test dependency
 * (Linux x64 only), so that the checks need nothing installed by hand.
 */
export async function browserForTests(): Promise<TestBrowser> {
  const env = Object.fromEntries(
    Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined),
  );
  // Chromium refuses to start its sandbox as root.
  const args = process.getuid?.() === 0 ? [...quietArgs, '--no-sandbox'] : quietArgs;
  const installed = process.env['TAREWING_TEST_BROWSER'] ?? findBrowser();
  if (installed !== null) return { path: installed, args, env };
  // The packaged browser unpacks itself, with its libraries, into the temporary folder, and reuses whatever
  // lies there: a private folder keeps half-unpacked leftovers of other programs out.
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs22.x';
  process.env['TMPDIR'] = mkdtempSync(join(tmpdir(), 'tarewing-browser-'));
  const { default: packaged } = await import('@sparticuz/chromium');
  const path = await packaged.executablePath();
  return {
    path,
    args: [...args, ...packaged.args.filter((arg) => !arg.startsWith('--headless'))],
    env: { ...env, ...(process.env as Record<string, string>) },
  };
}
