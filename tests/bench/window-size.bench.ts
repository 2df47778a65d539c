import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { prepare, root } from '../../main/hosts/prepare.mjs';
import { report } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';

// What the window weighs: page, scripts, workers and styles gzipped at the usual level; fonts as they are (woff2 is
// compressed). At the start: what a browser asks for until the screen has its answer, with nothing read ahead; each
// screen in turn as the one that was left. And all that there is.
const GOAL_KB = 200;
const SCREENS = ['aircraft', 'loading', 'fuel', 'weather'];

prepare((line) => {
  console.log(line);
});
const folder = join(root, 'out', 'renderer');
const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath, entry.name));
const isCode = (file: string) => ['.html', '.js', '.css'].includes(extname(file));
const weightOf = (chosen: readonly string[]) => {
  const sizes = chosen.map((file) => {
    const content = readFileSync(file);
    return isCode(file) ? gzipSync(content).length : content.length;
  });
  return { kB: sizes.reduce((sum, size) => sum + size, 0) / 1000, count: chosen.length };
};

/** The files of the window asked for until nothing new was asked for in two seconds. */
async function askedFrom(asked: ReadonlySet<string>): Promise<string[]> {
  for (let before = -1; asked.size !== before;) {
    before = asked.size;
    await new Promise((resolve) => setTimeout(resolve, 2000));
  }
  return [...asked];
}

const asked = new Set<string>();
const starts = await withOpenedWindow(
  existsSync(join(root, 'out', 'demo.tarewing')) ? ['--demo'] : [],
  async ({ page }) => {
    const found = [];
    for (const screen of SCREENS) {
      await page.evaluate((id) => {
        location.hash = id;
      }, screen);
      asked.clear();
      await page.reload();
      await page.locator('main h1').waitFor();
      found.push({ screen, ...weightOf(await askedFrom(asked)) });
    }
    return found;
  },
  {
    preparePage: async (page) => {
      await page.addInitScript(() => {
        window.requestIdleCallback = () => 0;
      });
      page.on('request', (request) => {
        const { pathname } = new URL(request.url());
        const file = join(folder, pathname === '/' ? 'index.html' : pathname);
        if (isCode(file) && existsSync(file)) asked.add(file);
      });
    },
  },
);
const fontsKb = weightOf(files.filter((file) => extname(file) === '.woff2')).kB;
for (const { screen, kB, count } of starts)
  report(
    `the window at its start on ${screen}: ${kB.toFixed(1)} kB gzipped in ${String(count)} files, goal under ${String(GOAL_KB)} kB`,
    {
      name: `window at its start on ${screen}, gzipped, without fonts`,
      value: kB,
      unit: 'kB',
      n: count,
      against: `the goal of ${String(GOAL_KB)} kB`,
      ratio: kB / GOAL_KB,
    },
  );
const all = weightOf(files.filter(isCode));
report(
  `the window with all its screens and workers: ${all.kB.toFixed(1)} kB; its fonts ${fontsKb.toFixed(1)} kB`,
  {
    name: 'whole window, gzipped, without fonts',
    value: all.kB,
    unit: 'kB',
    n: all.count,
  },
);
