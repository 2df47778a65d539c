// `npm run pictures`: every screen with the demo library, light and dark, at two sizes, into tests/desktop/pictures/.
// A picture over 200 kB, an error of the page and a screen without its plot each fail the run.
import { copyFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { prepare, root } from '../../main/hosts/prepare.mjs';
import { browserForTests } from '../browser.ts';
import { asPalettePng } from './harness/palette-png.ts';
import { startProgram } from './harness/program.ts';
import { watchPage } from './harness/watch-page.ts';

const mostBytes = 200_000;
const sizes = [
  { width: 1280, height: 800 },
  { width: 1600, height: 1000 },
];
const themes = ['light', 'dark'] as const;

/** What there is to see: its file's name, the word in the index, and what is there once its figures have come. */
const screens = [
  { file: 'aircraft', word: 'Aircraft', isThere: 'svg.figure' },
  { file: 'loading', word: 'Loading', isThere: 'svg.figure' },
  // The first time the table is begun; it is left again, so that the next picture of Loading is the one above.
  {
    file: 'scenarios',
    word: 'Loading',
    isThere: '[role="grid"]',
    before: ['Many side by side', 'Begin the table'],
    after: ['Back to one loading'],
  },
  { file: 'fuel', word: 'Fuel', isThere: 'svg.figure' },
  { file: 'weather', word: 'Weather', isThere: 'svg.figure' },
  { file: 'settings', word: 'Settings', isThere: 'main h1' },
] as const;

prepare((line) => {
  console.log(line);
});
// The same folder each time: the window shows where its library lies, and pictures of the same state are to be the same.
const folder = join(tmpdir(), 'tarewing-pictures');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder);
const pictures = join(root, 'tests/desktop/pictures');
mkdirSync(pictures, { recursive: true });
const library = join(folder, 'demo.tarewing');
copyFileSync(join(root, 'out/demo.tarewing'), library);

const program = startProgram(
  [join(root, 'out/main/loopback.js'), '--no-open', '--library', library],
  join(folder, 'data'),
);
const { path, args, env } = browserForTests();
const browser = await chromium.launch({ executablePath: path, args, env, headless: true });
try {
  const [, address = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/#\S+)/);
  // The code in the address is good for one window: one page takes every picture.
  const page = await browser.newPage();
  const troubles: string[] = [];
  watchPage(page, new URL(address).origin, (sentence) => troubles.push(sentence));
  await page.goto(address);
  for (const size of sizes)
    for (const theme of themes) {
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
      for (const screen of screens) {
        await page.getByRole('link', { name: new RegExp(`^${screen.word}`) }).click();
        if ('before' in screen) await pressAll(page, screen.before);
        await page.locator(screen.isThere).first().waitFor();
        await settled(page);
        const name = `${screen.file}-${theme}-${String(size.width)}.png`;
        const png = asPalettePng(await page.screenshot());
        writeFileSync(join(pictures, name), png);
        console.log(`${name}: ${String(Math.ceil(png.length / 1000))} kB`);
        if (png.length > mostBytes) throw new Error(`${name} is larger than ${String(mostBytes / 1000)} kB.`);
        if ('after' in screen) await pressAll(page, screen.after);
      }
    }
  if (troubles.length > 0) throw new Error(`The page said:\n${troubles.join('\n')}`);
} finally {
  await browser.close();
  await program.end();
  rmSync(folder, { recursive: true, force: true });
}

/** Press one verb after the other; one that is not there (any more) is passed over. */
async function pressAll(page: Page, verbs: readonly string[]): Promise<void> {
  for (const name of verbs) {
    await settled(page);
    const verb = page.getByRole('button', { name, exact: true });
    if ((await verb.count()) > 0) await verb.click();
  }
}

/** Until two pictures of the sheet in a row have the same text and the pointer lies where nothing answers to it. */
async function settled(page: Page): Promise<void> {
  await page.mouse.move(0, 0);
  let [before, same] = ['', 0];
  while (same < 3) {
    await page.waitForTimeout(250);
    const now = await page.locator('body').innerHTML();
    same = now === before ? same + 1 : 0;
    before = now;
  }
}
