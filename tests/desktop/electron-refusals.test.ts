import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { channels } from '../../main/hosts/channels.ts';
import type { Bridge } from '../../renderer/app/bridge.ts';
import { root } from '../../main/hosts/prepare.mjs';
import { startDoubled, type DoubledWindow } from './harness/electron-double.ts';
import { withFolder } from './harness/with-window.ts';

// What the Electron host refuses, by the real electron.ts and preload over a double of Electron. What only Electron's
// own binary can show (its sandbox, its lock, its printing) is asked for here and not proved.

async function withDoubled(use: (window: DoubledWindow) => Promise<void>): Promise<void> {
  await withFolder(async (folder) => {
    const window = await startDoubled({
      libraryPath: join(folder, 'library.tarewing'),
      isDemo: false,
      dataFolder: join(folder, 'data'),
      trouble: () => undefined,
    });
    try {
      await use(window);
    } finally {
      await window.end();
    }
  });
}

test('The Electron host asks for a sandboxed, isolated window without Node, over its own scheme', async () => {
  await withDoubled(async ({ facts, page }) => {
    const { webPreferences, privilegedSchemes, menuIsSet } = await facts();
    expect(webPreferences).toHaveLength(1);
    expect(webPreferences[0]).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
    });
    expect(privilegedSchemes).toEqual(['app']);
    expect(menuIsSet).toBe(true);
    expect(
      await page.evaluate(() => Object.keys(window).filter((key) => /^(require|process|ipc)/.test(key))),
    ).toEqual([]);
    expect(await page.evaluate(() => Object.keys(window.tarewing ?? {}).sort())).toEqual(
      ['request', 'cancel', 'listen', 'pathOf', 'print'].sort(),
    );
  });
});

test('A sandboxed preload can load: it is CommonJS and needs nothing but electron', () => {
  const preload = readFileSync(join(root, 'out/preload/preload.cjs'), 'utf8');
  const needed = [...preload.matchAll(/require\(["']([^"']+)["']\)/g)].map(([, name]) => name);
  expect([...new Set(needed)]).toEqual(['electron']);
  expect(preload).not.toMatch(/^\s*(import|export)\s/m);
});

test('The Electron host answers pages of its own alone, and no frames inside them', async () => {
  await withDoubled(async ({ invokeAs }) => {
    const asked = ['library.describe', {}, 'a'];
    const own = { url: 'app://bundle/index.html', isMain: true };
    expect(await invokeAs(own, channels.request, asked)).toMatchObject({ ok: true });
    for (const frame of [
      { url: 'https://evil.example/', isMain: true },
      { url: 'app://bundle.evil.example/', isMain: true },
      { url: 'app://other/index.html', isMain: true },
      { url: 'file:///index.html', isMain: true },
      { url: 'about:blank', isMain: true },
      { url: '', isMain: true },
      { ...own, isMain: false },
    ]) {
      await expect(invokeAs(frame, channels.request, asked), frame.url).rejects.toThrow(/Only the window/);
      await expect(invokeAs(frame, channels.print, []), frame.url).rejects.toThrow(/Only the window/);
    }
  });
});

test('The Electron host refuses unknown channels and requests, and what is no request', async () => {
  await withDoubled(async ({ invokeAs }) => {
    const own = { url: 'app://bundle/index.html', isMain: true };
    await expect(invokeAs(own, 'tarewing:other', [])).rejects.toThrow(/No handler registered/);
    for (const name of ['nothing.there', 'toString', '__proto__', ''])
      expect(await invokeAs(own, channels.request, [name, {}, 'a'])).toMatchObject({
        ok: false,
        problem: { code: 'unknown-request' },
      });
    await expect(invokeAs(own, channels.request, [1, {}, 'a'])).rejects.toThrow(/A request has a name/);
    await expect(invokeAs(own, channels.request, ['library.describe', {}])).rejects.toThrow(
      /A request has a name/,
    );
  });
});

test('The Electron host serves the window under its policy, and no path outside it', async () => {
  await withDoubled(async ({ fetch }) => {
    const page = await fetch('app://bundle/index.html');
    expect(page.status).toBe(200);
    expect(page.headers['content-security-policy']).toMatch(
      /^default-src 'none'; script-src 'self'; style-src 'self'/,
    );
    expect(page.headers['content-security-policy']).not.toMatch(/unsafe|http|\*/);
    for (const url of [
      'app://bundle/../package.json',
      'app://bundle/..%2fpackage.json',
      'app://bundle/%2e%2e/%2e%2e/package.json',
      'app://bundle/assets/../../main/electron.js',
      'app://bundle//etc/passwd',
      'app://bundle/etc/passwd',
      'app://other/index.html',
    ])
      expect((await fetch(url)).status, url).toBe(404);
  });
});

test('The Electron host denies every permission, also when it is only checked', async () => {
  await withDoubled(async ({ askPermission }) => {
    for (const permission of [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'usb',
    ])
      expect(await askPermission(permission), permission).toEqual({ asked: false, checked: false });
  });
});

test('The Electron host denies new windows and navigation', async () => {
  await withDoubled(async ({ page, happened }) => {
    const { origin } = new URL(page.url());
    await page.evaluate(() => {
      window.open('https://evil.example/');
    });
    await expect.poll(() => happened).toContain('deny window');
    await expect.poll(() => page.context().pages().length).toBe(1);
    await page.evaluate(() => {
      location.href = 'https://evil.example/';
    });
    await expect.poll(() => happened).toContain('prevented navigation https://evil.example/');
    expect(new URL(page.url()).origin).toBe(origin);
  });
});

test('The Electron host prints its page through Electron', async () => {
  await withDoubled(async ({ page, happened }) => {
    await page.evaluate(() => window.tarewing?.print());
    expect(happened).toContain('print');
  });
});

test('A second start on the same library brings the first window forward and ends', async () => {
  await withFolder(async (folder) => {
    const start = () =>
      startDoubled({
        libraryPath: join(folder, 'library.tarewing'),
        isDemo: false,
        dataFolder: join(folder, 'data'),
        trouble: () => undefined,
      });
    const first = await start();
    try {
      await expect(start()).rejects.toThrow(/ended without a window/);
      await expect.poll(() => first.happened).toContain('focus');
    } finally {
      await first.end();
    }
    await (await start()).end();
  });
});

test('A value that cannot be cloned is refused as data, and the next request is answered', async () => {
  await withDoubled(async ({ page }) => {
    const answers = await page.evaluate(async () => {
      const { request } = window.tarewing as Bridge;
      return [
        await request('settings.put', { key: 'x', value: () => 1, named: 'x' }, 'a'),
        await request('settings.put', { key: 'x', value: Number.NaN, named: 'x' }, 'b'),
        await request('settings.get', {}, 'c'),
      ];
    });
    expect(answers[0]).toMatchObject({ ok: false, problem: { code: 'input-refused' } });
    expect(answers[0]).toMatchObject({
      problem: { sentence: expect.stringMatching(/cannot be sent.*Nothing was changed/) },
    });
    expect(answers[1]).toMatchObject({ ok: false, problem: { code: 'input-refused' } });
    expect(answers[2]).toMatchObject({ ok: true });
    expect(answers[2]).not.toHaveProperty('output.x');
  });
});
