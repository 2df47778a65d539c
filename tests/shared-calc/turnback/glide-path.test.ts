import fc from 'fast-check';
import { expect, test } from 'vitest';
import { afterLeg } from '../../../shared-calc/turnback/glide-path.ts';
import type { Leg, PathState } from '../../../shared-calc/turnback/glide-path.ts';
import { profileRatio } from '../../../shared-calc/turnback/wind-profile.ts';
import type { WindOverRunway } from '../../../shared-calc/turnback/wind-profile.ts';

const START: PathState = { alongM: 500, rightM: 0, heightM: 350, headingRad: 0, timeS: 0 };
const CALM: WindOverRunway = { headwindMs: 0, crosswindFromRightMs: 0, gradientExponent: 1 / 7 };

/** Explicit midpoint steps through the same wind: an independent way to the same end. */
function stepped(start: PathState, leg: Leg, wind: WindOverRunway, steps: number): PathState {
  const dtS = leg.durationS / steps;
  let { alongM, rightM, heightM, headingRad } = start;
  for (let i = 0; i < steps; i++) {
    const midHeadingRad = headingRad + (leg.rateRadS * dtS) / 2;
    const ratio = profileRatio(heightM - (leg.sinkMs * dtS) / 2, wind.gradientExponent);
    alongM += (leg.horizontalSpeedMs * Math.cos(midHeadingRad) - wind.headwindMs * ratio) * dtS;
    rightM += (leg.horizontalSpeedMs * Math.sin(midHeadingRad) - wind.crosswindFromRightMs * ratio) * dtS;
    heightM -= leg.sinkMs * dtS;
    headingRad += leg.rateRadS * dtS;
  }
  return { alongM, rightM, heightM, headingRad, timeS: start.timeS + leg.durationS };
}

test('a half circle in calm air ends two radii to the side', () => {
  // By hand: 30 m/s at 0.2 rad/s is a radius of 150 m; half a turn takes 5 pi seconds and sinks 15 pi m.
  const end = afterLeg(
    START,
    { durationS: Math.PI / 0.2, horizontalSpeedMs: 30, sinkMs: 3, rateRadS: 0.2 },
    CALM,
  );
  expect(end.alongM).toBeCloseTo(500, 9);
  expect(end.rightM).toBeCloseTo(300, 9);
  expect(end.heightM).toBeCloseTo(350 - 15 * Math.PI, 9);
  expect(end.headingRad).toBeCloseTo(Math.PI, 12);
});

test('any leg agrees with a fine integration by steps', () => {
  const leg = fc.record({
    durationS: fc.double({ min: 0.1, max: 40, noNaN: true }),
    horizontalSpeedMs: fc.double({ min: 15, max: 60, noNaN: true }),
    sinkMs: fc.double({ min: 0.5, max: 8, noNaN: true }),
    rateRadS: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  });
  const wind = fc.record({
    headwindMs: fc.double({ min: -15, max: 15, noNaN: true }),
    crosswindFromRightMs: fc.double({ min: -15, max: 15, noNaN: true }),
    gradientExponent: fc.double({ min: 0, max: 0.4, noNaN: true }),
  });
  fc.assert(
    fc.property(leg, wind, (oneLeg, oneWind) => {
      const exact = afterLeg(START, oneLeg, oneWind);
      const fine = stepped(START, oneLeg, oneWind, 4000);
      // The error of midpoint steps: of the arcs (0.4 rad/s x 0.01 s)^2 / 24 of up to 2400 m, of the wind less: millimetres.
      expect(Math.abs(exact.alongM - fine.alongM)).toBeLessThan(0.01);
      expect(Math.abs(exact.rightM - fine.rightM)).toBeLessThan(0.01);
      expect(exact.heightM).toBeCloseTo(fine.heightM, 6);
    }),
    { numRuns: 60 },
  );
});

test('a leg cut in two ends where it would have', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: -0.3, max: 0.3, noNaN: true }),
      (share, rateRadS) => {
        const leg: Leg = { durationS: 20, horizontalSpeedMs: 30, sinkMs: 3, rateRadS };
        const wind = { ...CALM, headwindMs: 6, crosswindFromRightMs: -4 };
        const whole = afterLeg(START, leg, wind);
        const half = afterLeg(START, { ...leg, durationS: 20 * share }, wind);
        const both = afterLeg(half, { ...leg, durationS: 20 * (1 - share) }, wind);
        expect(both.alongM).toBeCloseTo(whole.alongM, 6);
        expect(both.rightM).toBeCloseTo(whole.rightM, 6);
      },
    ),
  );
});
