import { expect, test } from 'vitest';
import { fileLibrary } from '../file-library.ts';
import { memoryLibrary } from '../memory-library.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';

const folder = temporaryFolder();

const put = (value: unknown) => ({ key: 'units.mass', value, named: `mass in ${String(value)}` });

test('undo takes back the last change, names it, and redo does it again', async () => {
  const library = memoryLibrary();
  await library.ask('settings.put', put('lb'));
  await library.ask('settings.put', put('kg'));
  expect(await library.ask('history.undo', {})).toEqual({ named: 'mass in kg', screen: 'settings' });
  expect(await library.ask('settings.get', {})).toEqual({ 'units.mass': 'lb' });
  await library.ask('history.undo', {});
  expect(await library.ask('settings.get', {})).toEqual({});
  await library.ask('history.redo', {});
  await library.ask('history.redo', {});
  expect(await library.ask('settings.get', {})).toEqual({ 'units.mass': 'kg' });
});

test('a new change after an undo ends what could be done again', async () => {
  const library = memoryLibrary();
  await library.ask('settings.put', put('lb'));
  await library.ask('history.undo', {});
  await library.ask('settings.put', put('kg'));
  await expect(library.ask('history.redo', {})).rejects.toThrow('There is nothing to redo.');
});

test('a refused input names the field and changes nothing', async () => {
  const library = memoryLibrary();
  await expect(library.ask('settings.put', { key: 'Bad key', value: 1, named: 'x' })).rejects.toThrow(
    /^settings\.put: key is "Bad key".* Nothing was changed\.$/,
  );
  await expect(library.ask('no.such', {})).rejects.toThrow("There is no request 'no.such'.");
  expect(await library.ask('history.next', {})).toEqual({ undo: null, redo: null });
});

test('undo and redo go on after the library was closed and opened again, and the list tells them all', async () => {
  const path = folder.join('mine.tarewing');
  let library = await fileLibrary(path);
  for (const unit of ['lb', 'kg', 'lb']) await library.ask('settings.put', put(unit));
  await library.ask('history.undo', {});
  library.close();
  library = await fileLibrary(path);
  expect(await library.ask('history.next', {})).toMatchObject({
    undo: { named: 'mass in kg' },
    redo: { named: 'mass in lb', screen: 'settings' },
  });
  expect(await library.ask('history.list', { mostCount: 2 })).toMatchObject({
    changes: [
      { named: 'mass in lb', undone: true },
      { named: 'mass in kg', undone: false },
    ],
  });
  await library.ask('history.redo', {});
  expect(await library.ask('settings.get', {})).toEqual({ 'units.mass': 'lb' });
  for (let undone = 0; undone < 3; undone++) await library.ask('history.undo', {});
  expect(await library.ask('settings.get', {})).toEqual({});
  await expect(library.ask('history.undo', {})).rejects.toThrow('There is nothing to undo.');
  library.close();
});
