import { expect, test } from 'vitest';
import { fuzz } from './mutate.ts';

test('440 spoilt files of all kinds are read or refused with a sentence, none crashes or hangs', async () => {
  const { wrong, readCount, refusedCount, slowestMs } = await fuzz(440, 20_260_101);
  expect(wrong).toEqual([]);
  expect(readCount).toBeGreaterThan(200);
  expect(refusedCount).toBeGreaterThan(10);
  // A file here is under 200 kB: 3 s is a hang, whatever else the machine does.
  expect(slowestMs).toBeLessThan(3000);
}, 60_000);
