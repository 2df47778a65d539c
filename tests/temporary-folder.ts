import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Before a run of checks: its own temporary folder for all of them, which is gone after it whatever a check left. */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-checks-'));
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = folder;
  return () => {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
}
