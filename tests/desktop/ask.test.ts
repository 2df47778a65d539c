import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { requestTable } from '../../main/requests/table.ts';
import { ask } from './harness/ask.ts';
import { electronDoubleHost } from './harness/electron-double.ts';
import { loopbackHost } from './harness/loopback.ts';
import { withFolder, withWindow } from './harness/with-window.ts';

const putSetting = (value: unknown) => JSON.stringify({ key: 'units.mass', value, named: 'unit of mass' });

interface ListedRequest {
  name: string;
  kind: string;
  about: string;
  input: Record<string, unknown>;
  output: Record<string, unknown>;
}

describe('ask', () => {
  test('lists every request of the table with the schemas of its input and output', async () => {
    await withFolder(async (folder) => {
      const { code, json, stderr } = await ask(folder, '--list');
      expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
      const listed = json as ListedRequest[];
      expect(listed.map(({ name }) => name).sort()).toEqual(Object.keys(requestTable).sort());
      for (const { name, about, input, output } of listed) {
        expect(name).toMatch(/^[a-z]+[a-zA-Z]*\.[a-z][a-zA-Z]*$/);
        expect(about.length, name).toBeGreaterThan(10);
        for (const schema of [input, output])
          expect(schema['$schema'], name).toBe('https://json-schema.org/draft/2020-12/schema');
        // Every input is one object that refuses fields it does not know.
        expect(input['type'], name).toBe('object');
        expect(input['additionalProperties'], name).toBe(false);
      }
    });
  });

  test('makes a library with the first change, reads it back, and undoes it', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'new.tarewing');
      expect(await ask(folder, '--library', library, 'settings.put', putSetting('lb'))).toMatchObject({
        code: 0,
        json: {},
        stderr: '',
      });
      expect((await ask(folder, '--library', library, 'settings.get')).json).toEqual({ 'units.mass': 'lb' });
      expect((await ask(folder, '--library', library, 'history.next', '{}')).json).toMatchObject({
        undo: { named: 'unit of mass' },
      });
      expect((await ask(folder, '--library', library, 'history.undo')).code).toBe(0);
      expect((await ask(folder, '--library', library, 'settings.get')).json).toEqual({});
    });
  });

  test('uses the library in its usual place when none is named', async () => {
    await withFolder(async (folder) => {
      expect((await ask(folder, 'settings.put', putSetting('kg'))).code).toBe(0);
      expect((await ask(folder, 'settings.get')).json).toEqual({ 'units.mass': 'kg' });
      if (process.platform === 'linux')
        expect(existsSync(join(folder, 'Tarewing', 'library.tarewing'))).toBe(true);
    });
  });

  test('answers refusals as JSON with exit code 1', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'a.tarewing');
      const refused = async (...args: string[]) => {
        const { code, json } = await ask(folder, '--library', library, ...args);
        expect(code).toBe(1);
        return (json as { problem: { code: string; sentence: string; fields: unknown[] } }).problem;
      };
      expect(await refused('nothing.there')).toMatchObject({ code: 'unknown-request' });
      expect(await refused()).toMatchObject({
        code: 'input-refused',
        sentence: expect.stringMatching(/^Usage/),
      });
      expect(await refused('settings.get', '{')).toMatchObject({
        sentence: expect.stringMatching(/not JSON/),
      });
      expect(await refused('settings.get', '{}', 'more')).toMatchObject({
        sentence: expect.stringMatching(/^Usage/),
      });
      expect(await refused('settings.get', '--nothing')).toMatchObject({ code: 'input-refused' });
      expect(await refused('settings.get')).toMatchObject({ code: 'not-found' });
      expect(existsSync(library), 'looking makes no file').toBe(false);
      expect(await refused('settings.put', '{"key":"Bad key","value":1,"named":"x"}')).toMatchObject({
        code: 'input-refused',
        fields: [{ path: 'key' }],
      });
      const foreign = join(folder, 'foreign.tarewing');
      writeFileSync(foreign, 'not a library at all, but long enough to look like a file');
      const answer = await ask(folder, '--library', foreign, 'settings.put', putSetting('lb'));
      expect(answer.code).toBe(1);
      expect(answer.json).toMatchObject({ problem: { code: expect.stringMatching(/^library-/) } });
    });
  });

  test('reads while a window holds the library, and sends changes through the loopback host that holds it', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      await withWindow(loopbackHost, { folder, libraryPath: library }, async () => {
        const data = join(folder, 'data');
        expect(await ask(data, '--library', library, 'settings.put', putSetting('lb'))).toMatchObject({
          code: 0,
          json: {},
        });
        expect((await ask(data, '--library', library, 'settings.get')).json).toMatchObject({
          'units.mass': 'lb',
        });
        const refused = await ask(data, '--library', library, 'settings.put', '{}');
        expect(refused).toMatchObject({ code: 1, json: { problem: { code: 'input-refused' } } });
      });
    });
  });

  test('reads while an Electron window holds the library, and refuses changes with a sentence', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      await withWindow(electronDoubleHost, { folder, libraryPath: library }, async () => {
        const data = join(folder, 'data');
        // The window shows itself before a new library has been made.
        await expect
          .poll(async () => (await ask(data, '--library', library, 'settings.get')).code, { timeout: 20_000 })
          .toBe(0);
        const { code, json } = await ask(data, '--library', library, 'settings.put', putSetting('lb'));
        expect(code).toBe(1);
        expect(json).toMatchObject({
          problem: {
            code: 'in-use',
            sentence: expect.stringMatching(/has .* open, and only one may change it. Nothing was changed./),
          },
        });
        expect((await ask(data, '--library', library, 'settings.get')).json).not.toHaveProperty([
          'units.mass',
        ]);
      });
      // After the window is closed the same change goes through.
      expect((await ask(folder, '--library', library, 'settings.put', putSetting('lb'))).code).toBe(0);
    });
  });

  test('a killed window does not keep the library from being changed', async () => {
    await withFolder(async (folder) => {
      const library = join(folder, 'library.tarewing');
      const window = await loopbackHost.start({
        libraryPath: library,
        isDemo: false,
        dataFolder: join(folder, 'data'),
        trouble: () => undefined,
      });
      await window.kill();
      const data = join(folder, 'data');
      expect(await ask(data, '--library', library, 'settings.put', putSetting('lb'))).toMatchObject({
        code: 0,
      });
    });
  });
});
