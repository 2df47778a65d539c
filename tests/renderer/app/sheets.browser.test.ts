import { expect, test, vi } from 'vitest';
import EmptySheet from '../../../renderer/ui/EmptySheet.svelte';
import type { ScreenEntry } from '../../../renderer/app/screens.ts';
import { Sheets } from '../../../renderer/app/sheets.svelte.ts';

type Read = ScreenEntry['sheet'];
const found: Read = () => Promise.resolve({ default: EmptySheet as never });
const entry = (id: ScreenEntry['id'], word: string, sheet: Read): ScreenEntry => ({
  id,
  word,
  sheet,
  answer: () => () => '',
});

test('reads a sheet once, and has it at once afterwards', async () => {
  const read = vi.fn(found);
  const sheets = new Sheets([entry('fuel', 'Fuel', read)]);
  expect(sheets.of('fuel')).toBeUndefined();
  await sheets.fetch('fuel');
  await sheets.fetch('fuel');
  expect(sheets.of('fuel')).toBe(EmptySheet);
  expect(read).toHaveBeenCalledOnce();
});

test('says which screen could not be read and what to do, and shows it when it can be read after all', async () => {
  const read = vi.fn(found).mockRejectedValueOnce(new TypeError('Failed to fetch'));
  const sheets = new Sheets([entry('fuel', 'Fuel', read)]);
  await sheets.fetch('fuel');
  expect(sheets.of('fuel')).toBeUndefined();
  expect(sheets.refusalOf('fuel')).toMatch(
    /shows Fuel could not be read\. What was saved is safe\. Try again/,
  );
  await sheets.fetch('fuel');
  expect(sheets.of('fuel')).toBe(EmptySheet);
  expect(sheets.refusalOf('fuel')).toBeUndefined();
});

test('reads the others while there is nothing to do, one after the other, past one that fails', async () => {
  const order: string[] = [];
  const noting =
    (id: string, read: Read): Read =>
    () => {
      order.push(id);
      return read();
    };
  const sheets = new Sheets([
    entry('aircraft', 'Aircraft', noting('aircraft', found)),
    entry(
      'fuel',
      'Fuel',
      noting('fuel', () => Promise.reject(new Error('gone'))),
    ),
    entry('weather', 'Weather', noting('weather', found)),
  ]);
  await sheets.fetch('aircraft');
  sheets.fetchIdly();
  // A page among many is seldom idle: each is read after a second at the latest.
  await expect.poll(() => sheets.of('weather'), { timeout: 10_000 }).toBe(EmptySheet);
  expect(order).toEqual(['aircraft', 'fuel', 'weather']);
});

test('stops reading ahead when it is told to', async () => {
  const read = vi.fn(found);
  const stop = new Sheets([entry('fuel', 'Fuel', read)]).fetchIdly();
  stop();
  // Longer than it would have waited itself.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  await new Promise((resolve) => requestIdleCallback(resolve, { timeout: 1500 }));
  expect(read).not.toHaveBeenCalled();
});
