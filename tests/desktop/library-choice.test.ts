import { existsSync, mkdirSync, readFileSync, readdirSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { ask } from './harness/ask.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const setting = { key: 'units.mass', value: 'lb', named: 'unit of mass' };

inEveryHost('Choosing a library', (host) => {
  test('a library that cannot be opened leaves a window that says why and opens another', async () => {
    await withFolder(async (folder) => {
      const foreign = join(folder, 'foreign.tarewing');
      writeFileSync(foreign, 'somebody else’s file, longer than a header of a hundred bytes '.repeat(4));
      await withWindow(host, { folder, libraryPath: foreign }, async ({ page }) => {
        const status = await fromPage(page, 'host.status', {});
        expect(status).toMatchObject({
          ok: true,
          output: {
            libraryPath: foreign,
            isDemo: false,
            problem: { code: expect.stringMatching(/^library-/) },
          },
        });
        expect(await fromPage(page, 'settings.get', {})).toMatchObject({
          ok: false,
          problem: { code: expect.stringMatching(/^library-/) },
        });
        const missing = join(folder, 'missing.tarewing');
        expect(await fromPage(page, 'host.openLibrary', { path: missing, mayCreate: false })).toMatchObject({
          ok: false,
          problem: { code: 'not-found' },
        });
        const other = join(folder, 'other.tarewing');
        expect(await fromPage(page, 'host.openLibrary', { path: other, mayCreate: true })).toMatchObject({
          ok: true,
          output: { libraryPath: other, problem: null },
        });
        expect(await fromPage(page, 'settings.put', setting)).toMatchObject({ ok: true });
      });
      expect(readFileSync(foreign, 'utf8')).toMatch(/^somebody else’s file/);
    });
  });

  test('the open library stays open when another one is refused, and is let go when another is opened', async () => {
    await withFolder(async (folder) => {
      const [first, second] = [join(folder, 'first.tarewing'), join(folder, 'second.tarewing')];
      const foreign = join(folder, 'foreign.tarewing');
      writeFileSync(foreign, 'x'.repeat(5000));
      await withWindow(host, { folder, libraryPath: first }, async ({ page }) => {
        await fromPage(page, 'settings.put', setting);
        expect(await fromPage(page, 'host.openLibrary', { path: foreign, mayCreate: false })).toMatchObject({
          ok: false,
        });
        expect(await fromPage(page, 'settings.get', {})).toMatchObject({ output: { 'units.mass': 'lb' } });
        expect(existsSync(`${first}.lock.json`)).toBe(true);
        await fromPage(page, 'host.openLibrary', { path: second, mayCreate: true });
        expect(await fromPage(page, 'settings.get', {})).not.toMatchObject({
          output: { 'units.mass': 'lb' },
        });
        expect(existsSync(`${first}.lock.json`)).toBe(false);
        expect((await ask(join(folder, 'data'), '--library', first, 'history.undo')).code).toBe(0);
      });
    });
  });

  test('a library that another window holds is refused, and that window goes on', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      await withWindow(loopbackHost, { folder, libraryPath: library }, async (first) => {
        await withWindow(host, { folder, libraryPath: join(folder, 'other.tarewing') }, async ({ page }) => {
          expect(await fromPage(page, 'host.openLibrary', { path: library, mayCreate: false })).toMatchObject(
            {
              ok: false,
              problem: { code: 'in-use', sentence: expect.stringMatching(/Nothing was changed/) },
            },
          );
        });
        expect(await fromPage(first.page, 'settings.put', setting)).toMatchObject({ ok: true });
      });
    });
  });

  test('folders can be looked through for libraries', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      writeFileSync(join(folder, 'notes.txt'), 'x');
      await withWindow(host, { folder, libraryPath: library }, async ({ page }) => {
        expect(await fromPage(page, 'host.status', {})).toMatchObject({ output: { problem: null } });
        const answer = await fromPage(page, 'host.listFolder', { path: folder });
        expect(answer).toMatchObject({
          ok: true,
          output: {
            path: folder,
            folders: expect.arrayContaining([
              expect.objectContaining({ name: 'data', path: join(folder, 'data') }),
            ]),
            libraries: [{ name: 'library.tarewing', path: library }],
          },
        });
        expect(await fromPage(page, 'host.listFolder', { path: join(folder, 'none') })).toMatchObject({
          ok: false,
          problem: { code: 'file-refused' },
        });
      });
    });
  });

  test('what was saved is there after a restart, and after the program was killed', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page, kill }) => {
        expect(await fromPage(page, 'settings.put', setting)).toMatchObject({ ok: true });
        await kill();
      });
      await withWindow(host, { folder }, async ({ page }) => {
        expect(await fromPage(page, 'settings.get', {})).toMatchObject({ output: { 'units.mass': 'lb' } });
        await fromPage(page, 'settings.put', { ...setting, value: 'kg' });
      });
      await withWindow(host, { folder }, async ({ page }) => {
        expect(await fromPage(page, 'settings.get', {})).toMatchObject({ output: { 'units.mass': 'kg' } });
      });
    });
  });

  test('a damaged library is written out as far as it can be read, and its backup restored, from the window', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      const data = join(folder, 'data');
      await ask(data, '--library', library, 'settings.put', JSON.stringify(setting));
      await ask(data, '--library', library, 'library.backUp');
      truncateSync(library, 8192);
      await withWindow(host, { folder, libraryPath: library }, async ({ page }) => {
        expect(await fromPage(page, 'host.status', {})).toMatchObject({
          output: { problem: { code: 'library-damaged' } },
        });
        const out = join(folder, 'out');
        mkdirSync(out);
        // Half of the pages are gone: whatever comes of it, it is said and the file is left as it is.
        const salvaged = await fromPage(page, 'host.salvage', { into: out });
        if (salvaged.ok) expect(readdirSync(out)).toHaveLength(1);
        else expect(salvaged.problem.code).toBe('library-damaged');
        const listed = await fromPage(page, 'host.backups', {});
        expect(listed).toMatchObject({ ok: true, output: { backups: [{ reason: 'asked' }] } });
        const [newest] = (listed as { output: { backups: { path: string }[] } }).output.backups;
        expect(await fromPage(page, 'host.restore', { path: newest?.path })).toMatchObject({
          ok: true,
          output: { libraryPath: library, problem: null },
        });
        expect(await fromPage(page, 'settings.get', {})).toMatchObject({ output: { 'units.mass': 'lb' } });
        // Now there is nothing left to rescue.
        expect(await fromPage(page, 'host.restore', { path: newest?.path })).toMatchObject({
          ok: false,
          problem: { code: 'in-use' },
        });
      });
      expect(readdirSync(folder).filter((name) => name.includes('before restoring'))).toHaveLength(1);
    });
  });

  test('the demo is opened as a copy, which may be spoiled while the next start has it whole', async () => {
    await withFolder(async (folder) => {
      const first = await withWindow(host, { folder, isDemo: true }, async ({ page }) => {
        const { output } = (await fromPage(page, 'host.status', {})) as {
          output: { libraryPath: string; isDemo: boolean };
        };
        expect(output).toMatchObject({ isDemo: true, problem: null });
        expect(await fromPage(page, 'settings.put', setting)).toMatchObject({ ok: true });
        expect(existsSync(output.libraryPath)).toBe(true);
        return output.libraryPath;
      });
      expect(existsSync(dirname(first)), 'the copy is removed at the end').toBe(false);
      await withWindow(host, { folder }, async ({ page }) => {
        expect(await fromPage(page, 'host.openDemo', {})).toMatchObject({
          ok: true,
          output: { isDemo: true, problem: null },
        });
        expect(await fromPage(page, 'settings.get', {})).not.toMatchObject({
          output: { 'units.mass': 'lb' },
        });
      });
    });
  });
});
