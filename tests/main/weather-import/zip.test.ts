import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fileWith, sample, scanAll } from './samples.ts';
import { zipOf } from './zip-of.ts';

const content = readFileSync(sample('ORD_2010_excerpt.txt'));
const name = 'folder/asos.txt';

test('the one file in a zip archive is read, packed or stored', async () => {
  const { rows } = await scanAll(sample('ORD_2010_excerpt.txt'));
  for (const stored of [false, true])
    expect(
      (
        await scanAll(
          fileWith(
            zipOf([
              { name: 'folder/', content: Buffer.alloc(0), stored: true },
              { name, content, stored },
            ]),
            'a.zip',
          ),
        )
      ).rows,
    ).toEqual(rows);
});

test('several files, none, a cut archive and spoilt content are refused, each with its sentence', async () => {
  const whole = zipOf([{ name, content }]);
  const spoilt = Buffer.from(whole);
  spoilt.fill(0x55, 200, 240);
  const wrongSum = zipOf([{ name, content, stored: true }]);
  wrongSum.writeUInt8(0x20, 400);
  for (const [bytes, sentence] of [
    [
      zipOf([
        { name: 'a.txt', content },
        { name: 'b.txt', content },
      ]),
      /2 files in it \(a\.txt, b\.txt\)/,
    ],
    [zipOf([{ name: 'folder/', content: Buffer.alloc(0), stored: true }]), /no file in it/],
    [whole.subarray(0, 700), /zip\) is damaged or cut short/],
    [spoilt, /zip\) (is damaged|ends before)/],
    [wrongSum, /does not match its sum/],
  ] as const)
    await expect(scanAll(fileWith(bytes, 'a.zip'))).rejects.toThrow(sentence);
});
