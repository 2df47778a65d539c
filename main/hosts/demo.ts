import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Refusal } from '../requests/problem.ts';
import { builtFile } from '../workers/built-file.ts';
import { libraryExtension } from './library-place.ts';

/** Built beside the program (fixtures/build-demo.ts); never opened itself, only its copies. */
const builtDemo = fileURLToPath(builtFile(`../demo${libraryExtension}`));

/**
 * A fresh copy of the demo library in a folder of its own that is removed when the program ends, so that it can be
 * spoiled freely.
 * @throws Refusal where the demo was not built
 */
export function copyDemo(): string {
  if (!existsSync(builtDemo))
    throw new Refusal('not-found', 'The demo library is not beside the program. Build it: npm run build.');
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-demo-'));
  process.once('exit', () => {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  });
  const copy = join(folder, `demo${libraryExtension}`);
  copyFileSync(builtDemo, copy);
  return copy;
}
