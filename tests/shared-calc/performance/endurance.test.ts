import { expect, test } from 'vitest';
import {
  enduranceOf,
  VFR_DAY_RESERVE_S,
  VFR_NIGHT_RESERVE_S,
} from '../../../shared-calc/performance/endurance.ts';

const NOTHING_MORE = { taxiL: 0, climbL: 0, ownReserveS: 0 };

// 14 CFR 91.151(a): 30 minutes by day, 45 at night, at normal cruising speed.
test('the legal reserves are half an hour by day and three quarters at night', () => {
  expect([VFR_DAY_RESERVE_S, VFR_NIGHT_RESERVE_S]).toEqual([1800, 2700]);
});

test('endurance is what remains above the reserve over the flow', () => {
  // By hand: 20 L at 18 L/h last 66 min 40 s, of which 30 min are kept: 36 min 40 s; the reserve is 9 L.
  const { cruiseS, reserveL, shortL } = enduranceOf({
    usableL: 20,
    fuelFlowLPerH: 18,
    legalReserveS: VFR_DAY_RESERVE_S,
    ...NOTHING_MORE,
  });
  // Rounding only.
  expect(cruiseS).toBeCloseTo(2200, 9);
  expect([reserveL, shortL]).toEqual([9, 0]);
});

test("taxi and climb fuel and the pilot's own reserve come off first", () => {
  // By hand: 40 - 1 - 3 - 18 x 0.75 = 22.5 L, 75 min at 18 L/h.
  const { cruiseS } = enduranceOf({
    usableL: 40,
    fuelFlowLPerH: 18,
    taxiL: 1,
    climbL: 3,
    legalReserveS: 1800,
    ownReserveS: 900,
  });
  expect(cruiseS).toBeCloseTo(4500, 9);
});

test('fuel that does not cover the reserve gives no endurance and says how much is missing', () => {
  const { cruiseS, shortL } = enduranceOf({
    usableL: 8,
    fuelFlowLPerH: 18,
    legalReserveS: VFR_DAY_RESERVE_S,
    ...NOTHING_MORE,
  });
  expect([cruiseS, shortL]).toEqual([0, 1]);
});
