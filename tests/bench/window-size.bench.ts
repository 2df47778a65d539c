import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { prepare, root } from '../../main/hosts/prepare.mjs';
import { report } from './measure.ts';

// What the window weighs: page, scripts and styles gzipped at the usual level; fonts as they are (woff2 is compressed).
const GOAL_KB = 200;

prepare((line) => {
  console.log(line);
});
const folder = join(root, 'out', 'renderer');
const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
const weigh = (isCounted: (ending: string) => boolean, sizeOf: (content: Buffer) => number) =>
  files
    .filter((entry) => isCounted(extname(entry.name)))
    .reduce((sum, entry) => sum + sizeOf(readFileSync(join(entry.parentPath, entry.name))), 0) / 1000;

const codeKb = weigh(
  (ending) => ['.html', '.js', '.css'].includes(ending),
  (content) => gzipSync(content).length,
);
const fontsKb = weigh(
  (ending) => ending === '.woff2',
  (content) => content.length,
);
report(
  `the window: ${codeKb.toFixed(1)} kB gzipped, goal under ${String(GOAL_KB)} kB; its fonts ${fontsKb.toFixed(1)} kB`,
  {
    name: "window's bundle, gzipped, without fonts",
    value: codeKb,
    unit: 'kB',
    n: files.length,
    against: 'the goal of 200 kB',
    ratio: codeKb / GOAL_KB,
  },
);
