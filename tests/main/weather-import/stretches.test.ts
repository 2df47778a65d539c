import { readFileSync, writeFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { MonthBlock } from '../../../main/store/observation-columns.ts';
import { scanFile, type ScanOptions } from '../../../main/weather-import/scan.ts';
import { everySample } from './every-sample.ts';
import { helperHere } from './helper-here.ts';
import { mutated, seeded } from './mutate.ts';
import { fileWith, sample } from './samples.ts';

// A long file is read in stretches, by two threads. Whatever the cut, that must come to the very same as reading it
// from end to end by itself: the same months in the same order, the same counts, refusals and line numbers.

/** Everything that reading a file comes to, or why it was refused. */
async function outcome(path: string, options: ScanOptions) {
  const blocks: MonthBlock[] = [];
  try {
    const summary = await scanFile({ path }, { ...options, onBlocks: (some) => void blocks.push(...some) });
    return { summary, blocks };
  } catch (error) {
    return { error: String(error), blocks: [] };
  }
}

async function inStretches(path: string, stretchBytes: number, options: ScanOptions = {}) {
  const helper = helperHere(stretchBytes);
  return { ...(await outcome(path, { ...options, helper })), readCount: helper.readCount };
}

async function expectSame(path: string, stretchBytes: number, options: ScanOptions = {}): Promise<number> {
  const { readCount, ...shared } = await inStretches(path, stretchBytes, options);
  expect(shared, `cut every ${String(stretchBytes)} bytes`).toEqual(await outcome(path, options));
  return readCount;
}

const records = gunzipSync(readFileSync(sample('725650-03017-2010_excerpt.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');
/** Without its last column but one, by whose text the first 500 rows are checked one after the other. */
const reports = readFileSync(sample('JFK_2020_excerpt.csv'), 'latin1')
  .trimEnd()
  .split('\n')
  .map((line) => line.split(',').slice(0, 12).join(','));
const [header = ''] = reports;

/** A file with everything in it for which a line has to know those before it. */
function withEverything(lines: readonly string[], other: (line: string) => string, again: string): string[] {
  const some = lines.slice(0, 60);
  return [
    ...some,
    // Another station in the middle, and the first one again.
    ...some.slice(10, 20).map(other),
    // The clock runs backwards, and the same instants come again.
    ...some.slice(20, 40).toReversed(),
    again,
    '',
    // A line cut short, one of rubbish, one that is too long.
    (some[5] ?? '').slice(0, 30),
    '\0\u00ff"garbled,,"\0',
    `${some[6] ?? ''}${some[7] ?? ''}`,
    ...lines.slice(60, 90),
  ];
}

const other = (at: number) => (line: string) => line.slice(0, at) + 'ZZZ' + line.slice(at + 3);
const files: [name: string, lines: string[]][] = [
  ['fixed width', withEverything(records, other(4), records[0] ?? '')],
  ['archive CSV', withEverything(reports, other(0), header)],
];

describe.each(files)('%s', (name, lines) => {
  test.each([
    ['LF', lines.join('\n') + '\n'],
    ['no end of the last line', lines.join('\n')],
    ['CRLF', lines.join('\r\n') + '\r\n'],
    ['a byte-order mark', Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(lines.join('\n'))])],
  ])(
    'reads the same in stretches as from end to end, with %s',
    async (_, text) => {
      const path = fileWith(text, `${name}.txt`);
      for (const bytes of [61, 499, 4096, text.length, 1 << 20]) {
        const readCount = await expectSame(path, bytes);
        if (bytes === 61) expect(readCount).toBeGreaterThan(50);
      }
    },
    60_000,
  );

  test.each(['\n', '\r\n'])(
    'and cut at every byte, with lines that end with %j',
    async (lineEnd) => {
      const first = lines.slice(0, 3).join(lineEnd);
      const path = fileWith([first, ...lines.slice(88, 95)].join(lineEnd), `${name}-bytes.txt`);
      for (const bytes of [1, 2, 3, 5]) expect(await expectSame(path, bytes)).toBeGreaterThan(50);
    },
    60_000,
  );

  test('and for a station that comes late, and for one that never comes', async () => {
    const path = fileWith(lines.join('\n'), `${name}-station.txt`);
    const late = name === 'fixed width' ? 'ZZZ' + (records[0] ?? '').slice(7, 15) : 'ZZZ';
    for (const stationInFile of [late, 'NOWHERE']) await expectSame(path, 97, { stationInFile });
    const { summary } = await inStretches(path, 97, { stationInFile: late });
    expect(summary?.stationRead).toBe(late);
    expect(summary?.observationCount).toBeGreaterThan(5);
  });
});

test('a file of more stations and places than are listed reads the same in stretches', async () => {
  const many = Array.from({ length: 1500 }, (_, i) => {
    const record = records[i % records.length] ?? '';
    const station = i % 3 === 0 ? record.slice(4, 10) : String(100_000 + i);
    const latitude = String(10_000 + i);
    return record.slice(0, 4) + station + record.slice(10, 29) + latitude + record.slice(34);
  });
  const path = fileWith(many.join('\n'), 'many.txt');
  for (const bytes of [5000, 40_000, 200_000]) {
    expect(await expectSame(path, bytes)).toBeGreaterThan(0);
  }
});

test('more months than stay open at once, coming in any order, are parted the same', async () => {
  const random = seeded(77);
  const months = Array.from({ length: 3000 }, (_, i) => {
    const record = records[i % records.length] ?? '';
    const month = String(1 + Math.floor(random() * 12)).padStart(2, '0');
    return record.slice(0, 15) + String(1990 + Math.floor(random() * 6)) + month + record.slice(21);
  });
  const path = fileWith(months.join('\n'), 'months.txt');
  const { blocks } = await outcome(path, {});
  expect(blocks.some(({ part }) => part > 0)).toBe(true);
  for (const bytes of [997, 30_000]) await expectSame(path, bytes);
});

test('a line without end is refused by the same line in stretches', async () => {
  const path = fileWith(`${records.join('\n')}\n${'x'.repeat(3 << 20)}`, 'endless.txt');
  expect(await outcome(path, {})).toMatchObject({
    error: expect.stringContaining(`Line ${String(records.length + 1)} has no end.`) as string,
  });
  for (const bytes of [50_000, 1 << 20]) await expectSame(path, bytes);
});

test('a helper that breaks down leaves the file to the one who reads it', async () => {
  const path = fileWith(records.join('\n'), 'alone.txt');
  const helper = { ...helperHere(3000), read: () => Promise.resolve(null) };
  expect(await outcome(path, { helper })).toEqual(await outcome(path, {}));
});

test('300 spoilt files read the same in stretches as from end to end', async () => {
  const random = seeded(20_261_130);
  const path = fileWith('', 'spoilt.txt', 'stretches');
  const texts = everySample
    .filter(({ name }) => name.startsWith('725650') || name.startsWith('JFK'))
    .map(({ name, text }) => (name.startsWith('JFK') ? text.replace('metar', 'report') : text));
  let readCount = 0;
  for (let i = 0; i < 300; i++) {
    const bytes = mutated(texts[i % texts.length] ?? '', random);
    writeFileSync(path, bytes);
    // Some hundred stretches at the most: each takes its time to begin.
    readCount += await expectSame(path, Math.ceil(bytes.length * (0.01 + random() ** 3)));
  }
  expect(readCount).toBeGreaterThan(1000);
}, 120_000);
