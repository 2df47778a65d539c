// `npm run bench`: every tests/bench/*.bench.ts in turn, each in a process of its own, under the project's Node (24 runs
// TypeScript as it is). Lines for people; lines that begin with { are for programs: name, value, unit, against, ratio, n.
//   npm run bench -- density loading     only files whose names contain one of the words
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = new URL('./', import.meta.url);
const ownNode = fileURLToPath(new URL('../../node_modules/.bin/node', import.meta.url));
const node = existsSync(ownNode) ? ownNode : process.execPath;
const words = process.argv.slice(2);

const files = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
  .sort();

if (files.length === 0) {
  console.error(`No bench is called ${words.join(' or ')}.`);
  process.exitCode = 1;
}
for (const file of files) {
  console.log(`\n${file.replace('.bench.ts', '')}`);
  const { status } = spawnSync(node, [fileURLToPath(new URL(file, folder))], { stdio: 'inherit' });
  if (status !== 0) {
    console.error(`${file} ended with ${String(status)}`);
    process.exitCode = 1;
  }
}
