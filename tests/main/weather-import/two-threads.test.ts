import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { columnBlobs, columnNames, type MonthBlock } from '../../../main/store/observation-columns.ts';
import { scanFile, type ScanSummary } from '../../../main/weather-import/scan.ts';
import { memoryLibrary } from '../memory-library.ts';
import { fileWith, sample } from './samples.ts';

// A file that is long enough is read by two threads, as the program does it, not by a double of the second one.

const lines = gunzipSync(readFileSync(sample('725650-03017-2010_excerpt.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');
const place = { name: 'Long', identifier: null, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
let path = '';

beforeAll(() => {
  // The sample's months in one year after the other, spoilt here and there, until it is 40 MB.
  const text: string[] = [];
  for (let year = 1901, length = 0; length < 40 << 20; year = year === 2100 ? 1901 : year + 1) {
    const some = lines.map((line) => line.slice(0, 15) + String(year) + line.slice(19));
    some[year % some.length] = `${some[year % some.length] ?? ''} `;
    some.splice(year % 7, 0, 'rubbish', '');
    text.push(some.join('\n'), '\n');
    length += some.join('\n').length;
  }
  path = fileWith(text.join(''), 'long.txt');
});

describe('A long file', () => {
  test('comes into the library as one thread reads it from end to end', async () => {
    const blocks: MonthBlock[] = [];
    const summary: ScanSummary = await scanFile({ path }, { onBlocks: (some) => void blocks.push(...some) });
    const library = memoryLibrary();
    const answer = await library.ask('weather.import', { path, station: { place } });
    expect(answer).toMatchObject({ observationCount: summary.observationCount, skipped: summary.skipped });
    expect(summary.skipped.length).toBeGreaterThan(1);
    const kept = library.db
      .prepare<[], Record<string, unknown>>('SELECT * FROM observation_block ORDER BY rowid')
      .all();
    const bytes = (column: Int16Array | Uint16Array | null) => column && Buffer.from(column.slice().buffer);
    expect(kept.length).toBe(blocks.length);
    const wanted = blocks.map((block) => [
      block.monthStartEpochS,
      block.part,
      bytes(block.minuteOfMonth),
      ...columnNames.map((name) => bytes(block.columns[name])),
    ]);
    const columns = ['month_start_epoch_s', 'part', 'minute_of_month'];
    for (const name of columnNames) columns.push(columnBlobs[name]);
    for (const [i, row] of kept.entries())
      if (
        !sameRow(
          columns.map((column) => row[column]),
          wanted[i] ?? [],
        )
      )
        expect(row).toEqual(wanted[i]);
  }, 60_000);

  test('is cancelled half way with nothing left, and can be imported afterwards', async () => {
    const library = memoryLibrary();
    const stop = new AbortController();
    const coming = library.request('weather.import', { path, station: { place } }, stop.signal);
    const count = () => library.db.prepare('SELECT COUNT(*) FROM observation_block').pluck().get();
    while (count() === 0) await new Promise((resolve) => setImmediate(resolve));
    stop.abort();
    const answer = await coming;
    expect(answer.ok ? null : answer.problem.code).toBe('cancelled');
    expect(count()).toBe(0);
    await library.ask('weather.import', { path, station: { place } });
    expect(count()).toBeGreaterThan(100);
  }, 60_000);
});

function sameRow(row: unknown[], wanted: unknown[]): boolean {
  return row.every((value, i) => {
    const other = wanted[i];
    return Buffer.isBuffer(value) && Buffer.isBuffer(other) ? value.equals(other) : value === other;
  });
}
