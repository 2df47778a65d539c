import { beforeEach, expect, test } from 'vitest';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});

test('a setting is put, undone to what it was, and returned to its default by null', async () => {
  await library.ask('settings.put', { key: 'theme', value: 'dark', named: 'the choice of light or dark' });
  await library.ask('settings.put', { key: 'theme', value: 'light', named: 'the choice of light or dark' });
  expect(await library.ask('history.undo', {})).toEqual({
    named: 'the choice of light or dark',
    screen: 'settings',
  });
  expect(await library.ask('settings.get', {})).toEqual({ theme: 'dark' });
  await library.ask('settings.put', { key: 'theme', value: null, named: 'the choice of light or dark' });
  expect(await library.ask('settings.get', {})).toEqual({});
});

test('where the person left off is kept without a step of undo', async () => {
  await library.ask('settings.remember', { key: 'place', value: 'fuel' });
  expect(await library.ask('settings.get', {})).toEqual({ place: 'fuel' });
  expect(await library.ask('history.next', {})).toEqual({ undo: null, redo: null });
});

test('a key that is none is refused', async () => {
  await expect(library.ask('settings.remember', { key: 'Not a key', value: 1 })).rejects.toThrow(
    'a key starts with',
  );
});
