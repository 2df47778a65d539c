import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

inEveryHost('The window', (host) => {
  test('opens with its library and always shows which file that is, its folder under Settings', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        const shown = page.locator('footer').getByText('library.tarewing');
        await expect.poll(() => shown.isVisible()).toBe(true);
        expect(await page.title()).toBe('library.tarewing, Tarewing');
        for (const link of await page.getByRole('navigation').getByRole('link').all()) {
          await link.click();
          expect(await shown.isVisible()).toBe(true);
        }
        await page.getByRole('link', { name: 'Settings' }).click();
        await expect
          .poll(() => page.getByText(join(folder, 'library.tarewing'), { exact: true }).isVisible())
          .toBe(true);
      });
    });
  });

  test('asks for nothing outside the program and runs no code that its policy does not know', async () => {
    await withWindow(
      host,
      { expected: /Content Security Policy|https:\/\/example\.org/ },
      async ({ page }) => {
        await expect.poll(() => page.getByRole('navigation').isVisible()).toBe(true);
        const refused = await page.evaluate(async () => {
          const heard: string[] = [];
          document.addEventListener('securitypolicyviolation', (event) => {
            heard.push(event.effectiveDirective);
          });
          const script = document.createElement('script');
          script.textContent = 'window.ranInline = true;';
          document.body.append(script);
          const style = document.createElement('style');
          style.textContent = 'body { color: red; }';
          document.body.append(style);
          document.body.append(Object.assign(new Image(), { src: 'https://example.org/a.png' }));
          document.body.append(
            Object.assign(document.createElement('iframe'), { src: 'https://example.org/' }),
          );
          await fetch('https://example.org/').catch(() => undefined);
          await new Promise((resolve) => setTimeout(resolve, 300));
          return { ran: 'ranInline' in window, heard: [...new Set(heard)].sort() };
        });
        expect(refused.ran).toBe(false);
        expect(refused.heard).toEqual([
          'connect-src',
          'frame-src',
          'img-src',
          'script-src-elem',
          'style-src-elem',
        ]);
      },
    );
  });

  test('reads a file that a person chose, by a path that the program can open', async () => {
    await withFolder(async (folder) => {
      const path = join(folder, 'Ostrey 2024.csv');
      writeFileSync(path, 'a,b');
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.waitForFunction(() => document.querySelector('nav') !== null);
        await page.evaluate(() => {
          document.body.append(
            Object.assign(document.createElement('input'), { type: 'file', id: 'chosen' }),
          );
        });
        await chooseFiles(page.locator('#chosen'), [path]);
        const found = await page.evaluate(async () => {
          const file = document.querySelector<HTMLInputElement>('#chosen')?.files?.[0];
          if (file === undefined) throw new Error('no file was chosen');
          if (window.tarewing !== undefined) return window.tarewing.pathOf(file);
          const response = await fetch('/file', {
            method: 'POST',
            headers: {
              'Content-Type': 'application/octet-stream',
              'X-Tarewing-Token': sessionStorage.getItem('tarewing-token') ?? '',
              'X-File-Name': encodeURIComponent(file.name),
            },
            body: file,
          });
          return ((await response.json()) as { path: string }).path;
        });
        expect(basename(found)).toBe('Ostrey 2024.csv');
        expect(readFileSync(found, 'utf8')).toBe('a,b');
      });
    });
  });
});
