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
