import { expect, test } from 'vitest';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { fileLibrary } from '../file-library.ts';
import { seededDraw } from '../requests/undo/draw.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { runUntilKilled } from './killed.ts';

const folder = temporaryFolder();

/**
 * Open what a killed process left, as the next start does, and find every part of the last save of one number.
 * @returns that number
 */
async function numberOfSoundLibrary(path: string): Promise<number> {
  const library = await fileLibrary(path);
  expect(library.db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(library.db.pragma('foreign_key_check')).toEqual([]);
  const { loading } = (await library.ask('loading.get', { id: 'two-friends' })) as { loading: LoadingRecord };
  const number = loading.flight.taxiL;
  expect(loading.name).toBe(`save ${String(number)}`);
  expect(loading.items.map((item) => item.typed?.name)).toEqual(
    Array.from({ length: 1 + (number % 7) }, () => `save ${String(number)}`),
  );
  expect(await library.ask('history.next', {})).toMatchObject({ undo: { named: `save ${String(number)}` } });
  // Undo leads to the save before it, whole as well.
  if (number > 0) {
    await library.ask('history.undo', {});
    const before = (await library.ask('loading.get', { id: 'two-friends' })) as { loading: LoadingRecord };
    expect(before.loading.name).toBe(`save ${String(number - 1)}`);
    await library.ask('history.redo', {});
  }
  library.close();
  return number;
}

test('kill -9 around every commit of a save and at random instants, 20 times: all that was said to be saved is there, and nothing is half there', async () => {
  const path = folder.join('mine.tarewing');
  const draw = seededDraw(20_261_125);
  let next = 0;
  const kill = async (args: string[], killAfterMs: number | null) => {
    const { said } = await runUntilKilled('saver.ts', [path, String(next), ...args], killAfterMs);
    const saidLast = said.length === 0 ? next - 1 : Number(said.at(-1));
    const found = await numberOfSoundLibrary(path);
    // The one that was being saved may be there whole without having been said.
    expect([saidLast, saidLast + 1]).toContain(found);
    next = found + 1;
    return { saidLast, found };
  };

  // The first process also adds the aeroplane, in a commit of its own.
  for (let run = 0; run < 10; run++) await kill([], 1 + draw.below(60));
  for (let commit = 1; commit <= 5; commit++) {
    // Before its commit a save does not exist; after it, it does, told or not.
    const before = await kill(['before', String(commit)], null);
    expect(before.found).toBe(before.saidLast);
    const after = await kill(['after', String(commit)], null);
    expect(after.found).toBeGreaterThanOrEqual(after.saidLast);
  }
  expect(next).toBeGreaterThan(20);
}, 300_000);
