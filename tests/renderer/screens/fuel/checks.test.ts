import { expect, test } from 'vitest';
import { dayTicks } from '../../../../renderer/screens/dayTicks.ts';
import { dayNumber } from '../../../../shared-calc/fuel/checks/judge-log.ts';
import { stickKind } from '../../../../renderer/screens/fuel/dipstick/stickKind.ts';

test('a season of checks is marked at the first days of its months, a January with its year', () => {
  const { ticks, text } = dayTicks([dayNumber('2025-11-10'), dayNumber('2026-02-20')]);
  expect(ticks.map((day) => new Date(day * 86_400_000).toISOString().slice(0, 10))).toEqual([
    '2025-12-01',
    '2026-01-01',
    '2026-02-01',
  ]);
  expect(ticks.map(text)).toEqual(['Dec', 'Jan 2026', 'Feb']);
});

test('a fortnight is marked by days, many years by every so many months', () => {
  const days = dayTicks([dayNumber('2026-05-10'), dayNumber('2026-05-24')]);
  expect(days.ticks.map(days.text)).toEqual([
    '10 May',
    '12 May',
    '14 May',
    '16 May',
    '18 May',
    '20 May',
    '22 May',
    '24 May',
  ]);
  expect(dayTicks([dayNumber('2020-01-01'), dayNumber('2030-12-31')]).ticks.length).toBeLessThanOrEqual(12);
});

test('a height is typed in millimetres, in centimetres, or as dry', () => {
  const kind = stickKind(300);
  expect(kind.read('155')).toEqual({ value: 155 });
  expect(kind.read('15.5 cm')).toEqual({ value: 155, becomes: 'becomes 155 mm' });
  expect(kind.read('dry')).toEqual({ value: 0, becomes: 'becomes 0 mm' });
  expect(kind.read('')).toEqual({ value: null });
  expect(kind.read('310')).toEqual({ refused: '310 mm is outside the stick: 0 to 300 mm.' });
  expect(kind.read('half')).toMatchObject({
    refused: expect.stringContaining("'half' is not a height") as string,
  });
  expect(kind.show(155.04)).toBe('155');
  expect(kind.step?.(298, 10)).toBe(300);
});
