import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';

/** A fresh folder for each test of a file, removed after it. */
export function temporaryFolder(): { readonly path: string; join(...names: string[]): string } {
  let path = '';
  beforeEach(() => {
    path = mkdtempSync(join(tmpdir(), 'tarewing-test-'));
  });
  afterEach(() => {
    rmSync(path, { recursive: true, force: true });
  });
  return {
    get path() {
      return path;
    },
    join: (...names) => join(path, ...names),
  };
}

/** Every file under a folder with its bytes: equal before and after means that nothing was touched. */
export function bytesOf(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .sort()
      .filter((name) => statSync(join(folder, name)).isFile())
      .map((name) => [name, readFileSync(join(folder, name)).toString('base64')]),
  );
}
