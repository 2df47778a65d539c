// `npm run -s ask`: plain JavaScript without dependencies. Installs and builds as needed, without a word on stdout.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { CannotPrepare, prepare, programNode, root } from './prepare.mjs';

try {
  prepare((line) => {
    console.error(line);
  });
  const program = join(root, 'out', 'main', 'ask.js');
  const { status } = spawnSync(programNode(), [program, ...process.argv.slice(2)], { stdio: 'inherit' });
  process.exitCode = status ?? 1;
} catch (error) {
  if (!(error instanceof CannotPrepare)) throw error;
  console.log(
    JSON.stringify({ problem: { code: 'internal', sentence: error.message, fields: [] } }, null, 2),
  );
  process.exitCode = 1;
}
