import { readFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { chunkBytes, sumOf } from '../../../main/weather-import/content.ts';
import { createHash } from 'node:crypto';
import { fileWith, sample, scanAll } from './samples.ts';

const lines = gunzipSync(readFileSync(sample('725300-94846-2016.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');
/** The sample's two months, put into another year. */
const year = (of: number) => lines.map((line) => String(of) + line.slice(4)).join('\n') + '\n';

test('a file of many pieces is read over every joint as its parts are, plain and packed', async () => {
  const years = Array.from({ length: 36 }, (_, at) => 1960 + at);
  const text = years.map(year).join('');
  // Lines have 62 bytes, so that every joint falls elsewhere in one.
  expect(text.length).toBeGreaterThan(3 * chunkBytes);
  expect(chunkBytes % 62).not.toBe(0);
  const whole = await scanAll(fileWith(text));
  const parts = [];
  for (const of of years) parts.push(...(await scanAll(fileWith(year(of)))).rows);
  expect(whole.rows).toEqual(parts);
  expect(whole.summary.lineCount).toBe(years.length * lines.length);
  expect((await scanAll(fileWith(gzipSync(text)))).rows).toEqual(parts);
});

test('the sum over a file is that of its bytes, however many pieces they are read in', async () => {
  const bytes = Buffer.from(year(2000).repeat(20));
  expect(bytes.length).toBeGreaterThan(chunkBytes);
  // FIPS 180-4, by the platform's own implementation over the whole.
  expect(await sumOf({ path: fileWith(bytes) })).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(await sumOf({ path: '/nowhere/at/all' })).toBeNull();
  expect(await sumOf({ path: fileWith(bytes) }, AbortSignal.abort())).toBeNull();
});

test('a line longer than any of these kinds has no end', async () => {
  const text = year(2000) + 'x'.repeat(3 * chunkBytes);
  await expect(scanAll(fileWith(text))).rejects.toThrow(/Line 1501 has no end\./);
});
