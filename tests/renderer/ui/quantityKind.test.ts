import { expect, test } from 'vitest';
import { quantityKind } from '../../../renderer/ui/quantityKind.ts';

test('a limit of 1320 lb is met by exactly 1320 lb, and not by a tenth of a pound more', () => {
  const kind = quantityKind('mass', 'lb', { minSi: 0, maxSi: 1320 * 0.45359237 });
  expect(kind.read('1320')).toEqual({ value: 1320 * 0.45359237 });
  const over = kind.read('1320.1');
  expect('refused' in over ? over.refused : '').toBe(
    '1320.1\u00a0lb is above what is allowed: 0 to 1320\u00a0lb.',
  );
});

test('a step stops at the ends of what is allowed', () => {
  const kind = quantityKind('mass', 'kg', { minSi: 0, maxSi: 110 });
  expect(kind.step?.(109.8, 1)).toBe(110);
  expect(kind.step?.(110, 1)).toBe(110);
  expect(kind.step?.(0, -1)).toBe(0);
  expect(kind.step?.(null, 1)).toBe(0.5);
});

test('another unit says what it becomes in the person’s own, the own unit says nothing', () => {
  const kind = quantityKind('volume', 'L', { minSi: 0 });
  // 13.5 US gal x 3.785411784 L (exact: 231 cubic inches) = 51.103059084 L
  expect(kind.read('13.5 gal')).toEqual({ value: 13.5 * 3.785411784, becomes: 'becomes 51.1\u00a0L' });
  expect(kind.read('51 L')).toEqual({ value: 51 });
});

test('a bare figure that is usual only in another unit is doubted, with both ways; nothing is guessed', () => {
  const kind = quantityKind('mass', 'kg', { minSi: 0, maxSi: 200, usualSi: [40, 120] });
  // 152 lb x 0.45359237 = 68.946 kg, exact factor of NIST SP 811 (2008), appendix B.
  expect(kind.read('152')).toEqual({
    refused: '152 looks like lb.',
    isDoubt: true,
    ways: [
      { verb: 'Take it as lb, 68.9\u00a0kg', value: 152 * 0.45359237 },
      { verb: 'Keep kg', value: 152 },
    ],
  });
  expect(kind.read('152 kg')).toEqual({ value: 152 });
  expect(kind.read('86')).toEqual({ value: 86 });
  // Below what is usual in either unit there is nothing to offer.
  expect(kind.read('10')).toEqual({ value: 10 });
});

test('a doubted figure that is not even allowed can only be taken the other way', () => {
  const kind = quantityKind('mass', 'kg', { minSi: 0, maxSi: 110, usualSi: [40, 110] });
  const reading = kind.read('152');
  expect('ways' in reading ? reading.ways?.map(({ verb }) => verb) : []).toEqual([
    'Take it as lb, 68.9\u00a0kg',
  ]);
});
