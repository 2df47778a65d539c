import { existsSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { Readable } from 'node:stream';
import { expect, test } from 'vitest';
import { makeUploads } from '../../../main/hosts/uploads.ts';

test('a file over the limit is refused in a sentence and nothing of it stays', async () => {
  const uploads = makeUploads();
  try {
    const fits = await uploads.keep('small.csv', Readable.from([Buffer.alloc(1024)]), 1024);
    expect(readFileSync(fits)).toHaveLength(1024);
    await expect(
      uploads.keep('large.csv', Readable.from([Buffer.alloc(1000), Buffer.alloc(25)]), 1024),
    ).rejects.toThrow(/large\.csv is larger than .* Nothing was read/);
  } finally {
    uploads.clear();
  }
});

test('two files of one name do not meet, and all are gone when the program ends', async () => {
  const uploads = makeUploads();
  const [first, second] = [
    await uploads.keep('a.csv', Readable.from(['one'])),
    await uploads.keep('a.csv', Readable.from(['two'])),
  ];
  expect([readFileSync(first, 'utf8'), readFileSync(second, 'utf8')]).toEqual(['one', 'two']);
  uploads.clear();
  expect(existsSync(dirname(dirname(first)))).toBe(false);
});

test('a file that breaks off is not kept', async () => {
  const uploads = makeUploads();
  async function* broken() {
    yield Buffer.from('half');
    await Promise.resolve();
    throw new Error('connection lost');
  }
  await expect(uploads.keep('a.csv', Readable.from(broken()))).rejects.toThrow('connection lost');
  uploads.clear();
});
