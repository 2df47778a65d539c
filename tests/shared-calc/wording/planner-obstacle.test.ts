import { expect, test } from 'vitest';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import { daysOverSentence, type DaysOverParts } from '../../../shared-calc/wording/planner-obstacle.ts';

const parts: DaysOverParts = {
  hour: 9,
  share: 0.9,
  clearanceM: 15.24,
  marginM: 12.4,
  daysNeeded: 100,
  dayCount: 165,
  clearCount: 152,
  nearerCount: 0,
  units: { ...UNIT_PRESETS.metric, altitude: 'ft' },
};
const said = (given: Partial<DaysOverParts> = {}) =>
  daysOverSentence({ ...parts, ...given }).replaceAll('\u00a0', ' ');

test('what is left above an obstacle is rounded down, and not cleared is said with what to do', () => {
  // 12.4 m are 40.7 ft.
  expect(said()).toBe(
    'At 09:00 the obstacle and the 50 ft wished above it are cleared by at least 40 ft, nine days in ten: 152 of 165 days clear them.',
  );
  expect(said({ clearanceM: 0 })).toMatch(
    /^At 09:00 the obstacle is cleared by .* 152 of 165 days clear it\.$/,
  );
  expect(said({ marginM: -3, clearCount: 90 })).toBe(
    'At 09:00 the obstacle and the 50 ft wished above it are not cleared nine days in ten: 90 of 165 days clear them. Do not take off towards it.',
  );
  expect(said({ marginM: -Infinity, clearCount: 0, nearerCount: 160 })).toMatch(
    / On 160 of them 50 ft are reached only behind it, and the manual says nothing of less\.$/,
  );
  expect(said({ marginM: null, dayCount: 31 })).toBe(
    'At 09:00 there are too few days with wind to tell: 31 of the 100 needed.',
  );
});
