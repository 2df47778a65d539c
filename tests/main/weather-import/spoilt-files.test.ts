import { describe, expect, test } from 'vitest';
import { everySample } from './every-sample.ts';
import { fileWith, scanAll, type Plain } from './samples.ts';

const inOrder = (rows: readonly Plain[]) => rows.map((row) => JSON.stringify(row)).toSorted();

describe.each(everySample.map((each) => [each.name, each] as const))('%s', (_name, each) => {
  const { text, headerLines, mapping } = each;
  const lines = text.trimEnd().split('\n');
  const options = mapping === undefined ? {} : { mapping };
  const scan = (content: string | Uint8Array) => scanAll(fileWith(content), undefined, options);
  /** A row in the middle that is read whole. */
  const rowAt = async (): Promise<number> => {
    for (let at = Math.floor(lines.length / 2) + headerLines; at > headerLines; at--) {
      const without = lines.filter((_, i) => i !== at).join('\n');
      if ((await scan(without)).rows.length === (await scan(text)).rows.length - 1) return at;
    }
    throw new Error('no row is read');
  };
  const linesSkipped = ({ summary }: Awaited<ReturnType<typeof scan>>) =>
    summary.skipped.flatMap(({ examples }) => examples.map(({ line }) => line));

  test('with CRLF, with a byte-order mark and without a last line end the rows are the same', async () => {
    const plain = (await scan(text)).rows;
    expect(plain.length).toBeGreaterThan(0);
    for (const content of [
      Buffer.from(text.replaceAll('\n', '\r\n'), 'latin1'),
      Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text, 'latin1')]),
      Buffer.from(text.trimEnd(), 'latin1'),
    ])
      expect((await scan(content)).rows).toEqual(plain);
  });

  test('as UTF-16 it is refused with a sentence', async () => {
    await expect(scanAll(fileWith(Buffer.from(`\uFEFF${text}`, 'utf16le')), undefined, {})).rejects.toThrow(
      /UTF-16/,
    );
  });

  test('cut in the middle of a row, no half row is kept', async () => {
    const at = await rowAt();
    const whole = await scan(lines.slice(0, at).join('\n'));
    // Half of the row: before its figures are complete.
    const half = await scan([...lines.slice(0, at), (lines[at] ?? '').slice(0, 30)].join('\n'));
    expect(half.rows).toEqual(whole.rows);
    expect(linesSkipped(half)).toContain(at + 1);
  });

  test('a garbled row is named by its line and the others stay', async () => {
    const at = await rowAt();
    const without = await scan(lines.filter((_, i) => i !== at).join('\n'));
    const garbled = await scan(lines.with(at, '\u0000\u0007~~ \u00ff garbage').join('\n'));
    expect(inOrder(garbled.rows)).toEqual(inOrder(without.rows));
    expect(linesSkipped(garbled)).toContain(at + 1);
  });

  test('a date and an hour that do not exist are named by their line; 29 February of a leap year exists', async () => {
    const at = await rowAt();
    const line = lines[at] ?? '';
    const count = (await scan(text)).rows.length;
    for (const [year, month, day, hour, exists] of [
      ['2015', '02', '29', '12', false],
      ['2015', '04', '31', '12', false],
      ['2015', '06', '10', '25', false],
      ['2015', '06', '10', '24', each.knows24],
    ] as const) {
      const changed = lines.with(at, each.redated(line, year, month, day, hour));
      // The minute stays as it was: 24:52 is no time anywhere.
      const found = await scan(changed.join('\n'));
      expect(found.rows.length, `${year}-${month}-${day} ${hour}`).toBe(exists ? count : count - 1);
      expect(linesSkipped(found).includes(at + 1), `${year}-${month}-${day} ${hour}`).toBe(!exists);
    }
    // Reports carry their own day, so a list cannot be redated by its stamp alone.
    if (each.name.includes('dated')) return;
    const leap = await scan(lines.with(at, each.redated(line, '2016', '02', '29', '12')).join('\n'));
    const year = String(2016 - (each.yearsBack ?? 0));
    const days = [`${year}-02-29`, `${year}-03-01`];
    expect(
      leap.rows.some(({ epochS }) => days.includes(new Date(epochS * 1000).toISOString().slice(0, 10))),
    ).toBe(true);
  });

  test('with its clock running backwards it holds the same rows', async () => {
    const plain = await scan(text);
    const body = lines.slice(headerLines).toReversed();
    const turned = await scan([...lines.slice(0, headerLines), ...body].join('\n'));
    expect(inOrder(turned.rows)).toEqual(inOrder(plain.rows));
  });

  if (each.namesColumns)
    test('a header in the middle is left out by its line', async () => {
      const plain = await scan(text);
      const at = Math.floor(lines.length / 2);
      const found = await scan([...lines.slice(0, at), lines[0], ...lines.slice(at)].join('\n'));
      expect(found.rows).toEqual(plain.rows);
      expect(
        found.summary.skipped.find(({ reason }) => reason.startsWith('header again'))?.examples[0]?.line,
      ).toBe(at + 1);
    });

  if (each.ofOther !== null)
    test('rows of another station in between are left out by their line', async () => {
      const plain = await scan(text);
      const at = await rowAt();
      const other = each.ofOther?.(lines[at] ?? '') ?? '';
      const found = await scan([...lines.slice(0, at), other, ...lines.slice(at)].join('\n'));
      expect(found.rows).toEqual(plain.rows);
      expect(linesSkipped(found)).toContain(at + 1);
      expect(found.summary.stationsInFile).toHaveLength(2);
    });
});
