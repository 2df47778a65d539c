import { expect, test } from 'vitest';
import {
  lossAgainstLeastRatio,
  theoreticalBankOfLeastLossDeg,
} from '../../../shared-calc/turnback/least-loss-bank.ts';
import {
  bankForRateDeg,
  STANDARD_RATE_RAD_S,
  turnRadiusM,
  turnRateRadS,
} from '../../../shared-calc/turnback/turn.ts';
import { toSi } from '../../../shared-calc/units/convert.ts';

// Rule of thumb of the instrument handbooks: bank for standard rate is a tenth of the speed in knots and five more, good to
// about 2 degrees between 80 and 130 kt (FAA-H-8083-15B ch. 4, rate of turn).
test.each([80, 100, 120, 130])(
  'standard rate at %i kt is banked by about a tenth of the speed and five',
  (speedKt) => {
    expect(
      Math.abs(bankForRateDeg(toSi(speedKt, 'kt'), STANDARD_RATE_RAD_S) - (speedKt / 10 + 5)),
    ).toBeLessThan(2);
  },
);

test('radius times rate is the speed', () => {
  // Geometry of a circle; rounding only.
  for (const bankDeg of [10, 30, 45, 60]) {
    expect(turnRadiusM(30, bankDeg) * turnRateRadS(30, bankDeg)).toBeCloseTo(30, 9);
    expect(bankForRateDeg(30, turnRateRadS(30, bankDeg))).toBeCloseTo(bankDeg, 9);
  }
});

test('theory: 45 degrees at a fixed margin over the stall; at best glide speed the tangent of the bank is the root of two', () => {
  // By calculus: 1 / sin(2 bank) is least at 45; (2 + t^2) / t is least at t = sqrt(2), 54.7356 degrees.
  expect(theoreticalBankOfLeastLossDeg('fixedMarginOverStall')).toBeCloseTo(45, 4);
  expect(theoreticalBankOfLeastLossDeg('bestGlideSpeed')).toBeCloseTo(54.7356, 3);
  // 1 / sin(60 degrees) = 1.1547: what 30 degrees loses beyond the least.
  expect(lossAgainstLeastRatio(30, 'fixedMarginOverStall')).toBeCloseTo(1.1547, 4);
});
