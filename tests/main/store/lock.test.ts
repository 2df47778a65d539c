import { spawn, type ChildProcess } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { holdLibrary, notePath, whoHolds, type Hold, type HolderNote } from '../../../main/store/lock.ts';

let folder = '';
let library = '';
const children: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tarewing-lock-'));
  library = join(folder, 'mine.tarewing');
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

const note: HolderNote = { pid: process.pid, host: 'electron', address: null, sinceEpochS: 1_790_000_000 };

function mustHold(path: string): Hold {
  const hold = holdLibrary(path, note);
  if (!hold.held) throw new Error('held elsewhere');
  return hold;
}

async function holderProcess(path: string): Promise<ChildProcess> {
  const script = fileURLToPath(new URL('lock-holder.ts', import.meta.url));
  const child = spawn(process.execPath, [script, path], { stdio: ['ignore', 'pipe', 'inherit'] });
  children.push(child);
  const [said] = (await once(child.stdout, 'data')) as [Buffer];
  expect(said.toString()).toBe('held\n');
  return child;
}

test('a library is held once, and the note says by whom and where', () => {
  expect(whoHolds(library)).toBeNull();
  const hold = mustHold(library);
  expect(whoHolds(library)).toEqual({ note });
  expect(holdLibrary(library, { ...note, host: 'script' })).toEqual({ held: false, by: { note } });
  const withAddress = { ...note, address: 'http://127.0.0.1:1/' };
  hold.rewrite(withAddress);
  expect(whoHolds(library)).toEqual({ note: withAddress });
  hold.release();
  hold.release();
  expect(whoHolds(library)).toBeNull();
  mustHold(library).release();
});

test('another process that holds it is found, and a kill -9 frees the library at once', async () => {
  const child = await holderProcess(library);
  expect(holdLibrary(library, note)).toMatchObject({
    held: false,
    by: { note: { pid: child.pid, host: 'loopback', address: 'http://127.0.0.1:4711/' } },
  });
  child.kill('SIGKILL');
  await once(child, 'exit');
  // The note of the dead holder is still there and is not believed.
  expect(readFileSync(notePath(library), 'utf8')).toContain('4711');
  expect(whoHolds(library)).toBeNull();
  const hold = mustHold(library);
  expect(whoHolds(library)).toEqual({ note });
  hold.release();
});

test('a link to the library is the same library', () => {
  writeFileSync(library, '');
  const link = join(folder, 'link.tarewing');
  symlinkSync(library, link);
  const hold = mustHold(link);
  expect(whoHolds(library)).toEqual({ note });
  hold.release();
});

test('many probes never free it', () => {
  const hold = mustHold(library);
  for (let probe = 0; probe < 200; probe++) expect(whoHolds(library)).toEqual({ note });
  hold.release();
});

test('a torn or strange note is no reason to take the library away', () => {
  const hold = mustHold(library);
  writeFileSync(notePath(library), '{"pid": 1');
  expect(whoHolds(library)).toEqual({ note: null });
  writeFileSync(notePath(library), '{"pid": "1", "host": "electron", "address": null, "sinceEpochS": 1}');
  expect(whoHolds(library)).toEqual({ note: null });
  hold.release();
});

test('where nothing can be written beside the library, the refusal says what to do', () => {
  // A folder in the lock's place fails for every user, root too, which a permission bit would not.
  mkdirSync(`${library}.lock`);
  expect(() => holdLibrary(library, note)).toThrow(/Nothing was changed\. Allow writing in that folder/);
  expect(() => holdLibrary(join(folder, 'none', 'x.tarewing'), note)).toThrow(/does not exist/);
});
