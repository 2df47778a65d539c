import { expect, test } from 'vitest';
import { durationKind } from '../../../renderer/screens/durationKind.ts';

const kind = durationKind(172_800);

test.each([
  ['3:10', 11_400],
  ['3 h 10 min', 11_400],
  ['3h10', 11_400],
  ['190 min', 11_400],
  ['190', 11_400],
  ['2.5 h', 9_000],
  ['2,5 h', 9_000],
  ['45 min', 2_700],
])('%s is %d seconds', (text, seconds) => {
  expect(kind.read(text)).toMatchObject({ value: seconds });
});

test('what it shows is read back as the same span', () => {
  for (const seconds of [0, 300, 3_600, 11_400, 172_800])
    expect(kind.read(kind.show(seconds))).toMatchObject({ value: seconds });
});

test('words, clock times beyond the hour and spans beyond the most are refused', () => {
  expect(kind.read('soon')).toMatchObject({
    refused: expect.stringContaining('not a span of time') as unknown,
  });
  expect(kind.read('3:75')).toHaveProperty('refused');
  expect(kind.read('49 h')).toMatchObject({
    refused: expect.stringContaining('above what is allowed') as unknown,
  });
});

test('an arrow key goes to the next five minutes', () => {
  expect(kind.step?.(11_400, 1)).toBe(11_700);
  expect(kind.step?.(null, -1)).toBe(0);
});
