import { expect, test } from 'vitest';
import { climbAngleRad, climbGradientRatio } from '../../../shared-calc/performance/climb.ts';
import { fromSi, toSi } from '../../../shared-calc/units/convert.ts';

// U.S. Terminal Procedures, rate of climb table (from memory): ft/min for a gradient in ft/NM at a ground speed in kt.
test.each([
  [60, 200, 200],
  [90, 300, 200],
  [120, 400, 200],
  [80, 400, 300],
  [100, 500, 300],
  [90, 600, 400],
])('at %i kt over the ground %i ft/min are %i ft/NM', (groundSpeedKt, rateFtMin, gradientFtNm) => {
  const climbRateMs = toSi(rateFtMin, 'ft/min');
  // The table takes the speed over the ground; along the path it is a little faster.
  const alongPathMs = Math.hypot(toSi(groundSpeedKt, 'kt'), climbRateMs);
  expect(fromSi(climbGradientRatio(climbRateMs, alongPathMs, 0), 'ft/NM')).toBeCloseTo(gradientFtNm, 0);
});

test('a headwind steepens the climb over the ground and a tailwind flattens it', () => {
  // By hand: 3 m/s up, 40 m/s along the ground in calm air.
  const trueAirspeedMs = Math.hypot(40, 3);
  expect(climbGradientRatio(3, trueAirspeedMs, 0)).toBeCloseTo(0.075, 9);
  expect(climbGradientRatio(3, trueAirspeedMs, 10)).toBeCloseTo(0.1, 9);
  expect(climbGradientRatio(3, trueAirspeedMs, -10)).toBeCloseTo(0.06, 9);
});

test('the climb angle is that of its triangle', () => {
  // 3-4-5: sine 0.6 is 36.87 degrees (any table of sines).
  expect((climbAngleRad(24, 40) * 180) / Math.PI).toBeCloseTo(36.87, 2);
});
