// `npm run soak`: every tests/soak/*.ts in turn, each in a process of its own, under the project's Node. Checks that take
// minutes, or need files that are not in the repository; those say that they are skipped. Ends with one closing line.
//   npm run soak -- weather     only files whose names contain one of the words
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = new URL('./', import.meta.url);
const ownNode = fileURLToPath(new URL('../../node_modules/.bin/node', import.meta.url));
const node = existsSync(ownNode) ? ownNode : process.execPath;
const words = process.argv.slice(2);

const files = readdirSync(folder)
  .filter((name) => name.endsWith('.ts'))
  .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
  .sort();
const sums = { passed: 0, failed: 0, skipped: 0 };

if (files.length === 0) {
  console.error(`No check is called ${words.join(' or ')}.`);
  process.exitCode = 1;
}
for (const file of files) {
  console.log(`\n${file.replace('.ts', '')}`);
  const { status, stdout } = spawnSync(node, [fileURLToPath(new URL(file, folder))], {
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  process.stdout.write(stdout);
  const closing = /(\d+) passed, (\d+) failed(?:, (\d+) skipped)?\s*$/.exec(stdout);
  sums.passed += Number(closing?.[1] ?? 0);
  sums.skipped += Number(closing?.[3] ?? 0);
  // A check that ends without its closing line has failed, whatever it printed before.
  sums.failed += closing === null ? 1 : Number(closing[2]);
  if (status !== 0 && Number(closing?.[2] ?? 0) === 0 && closing !== null) sums.failed++;
}
console.log(
  `\n${sums.passed} passed, ${sums.failed} failed${sums.skipped > 0 ? `, ${sums.skipped} skipped` : ''}`,
);
if (sums.failed > 0) process.exitCode = 1;
