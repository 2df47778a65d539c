import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnBack } from '../../../shared-calc/turnback/turn-back.ts';
import type { TurnBackSide } from '../../../shared-calc/turnback/turn-back.ts';
import { question } from './questions.ts';

const lowestM = (side: TurnBackSide) => (side.kind === 'reaches' ? side.lowestHeightM : Infinity);

describe('the lowest height that reaches', () => {
  // An independent calculation in Python (numpy 2.4): the same assumptions flown in explicit steps of 0.02 s, and brute
  // force over headings (0.5 degrees), times of the way back (0.1 s) and heights (0.1 m). Its grid costs it up to 0.6 m,
  // always upward.
  test.each([
    ['in calm air', {}, 'right', 146.4],
    ['turning into a crosswind', { wind: { crosswindFromRightMs: 5 } }, 'right', 117.7],
    ['turning away from it', { wind: { crosswindFromRightMs: 5 } }, 'left', 216.1],
    ['with a headwind', { wind: { headwindMs: 5 } }, 'left', 142.3],
    [
      'slower to react and steeper, the wind alike at all heights',
      { pilot: { reactionS: 8, bankDeg: 40 }, wind: { gradientExponent: 0 } },
      'right',
      155.2,
    ],
    [
      'wind along and across that grows fast with height',
      { wind: { headwindMs: 4, crosswindFromRightMs: -3, gradientExponent: 0.3 } },
      'left',
      122.3,
    ],
  ] as const)('%s', (_, changes, side, expectedM) => {
    const answer = turnBack(question(changes))[side];
    expect(Math.abs(lowestM(answer) - expectedM)).toBeLessThan(0.8);
  });

  test("its path ends on the runway's line, wings level at the stated height or crossing the end", () => {
    const answer = turnBack(question({ wind: { crosswindFromRightMs: 5 } })).left;
    if (answer.kind !== 'reaches') throw new Error(answer.kind);
    const aligned = answer.path.corners[4];
    expect(aligned?.rightM).toBeCloseTo(0, 3);
    expect(Math.abs(Math.abs(aligned?.headingRad ?? 0) - Math.PI)).toBeLessThan(1e-9);
    // The height is found to 0.1 m.
    expect(answer.path.marginM).toBeGreaterThanOrEqual(0);
    expect(answer.path.marginM).toBeLessThan(0.2);
    expect(answer.path.lostM).toBeCloseTo(answer.lowestHeightM - (aligned?.heightM ?? NaN), 9);
    expect(answer.path.points.length).toBeGreaterThan(40);
  });

  test('into the crosswind is better, and in calm air neither side is', () => {
    expect(turnBack(question({ wind: { crosswindFromRightMs: 5 } })).better).toBe('right');
    expect(turnBack(question({ wind: { crosswindFromRightMs: -5 } })).better).toBe('left');
    expect(turnBack(question()).better).toBeNull();
  });

  test('where the climb runs away from the glide no height reaches', () => {
    // Climbing 1 in 31 and gliding 1 in 10 on 300 m of runway: each metre up is 31 m out and costs 3 m back.
    const answer = turnBack(question({ aeroplane: { climbRateMs: 1 }, runway: { lengthM: 300 } }));
    expect(answer.left).toMatchObject({ kind: 'neverReaches', lookedUpToM: 900 });
    expect(answer.better).toBeNull();
  });
});

describe('a loss measured at altitude', () => {
  test('as the model would have it changes nothing', () => {
    // By hand: 3 x 4 s + 3 x (1 + 4/3)/2 x (220 degrees / (g tan 30 / 30)): 12 + 3.5 x 20.346 = 83.21 m.
    const same = turnBack(question({ measured: { lossM: 83.21, headingChangeDeg: 220 } }));
    expect(Math.abs(lowestM(same.left) - lowestM(turnBack(question()).left))).toBeLessThan(0.5);
    expect(same.basis).toBe('measuredAtAltitude');
  });

  test("larger than the model's replaces it and raises the height", () => {
    const worse = turnBack(question({ measured: { lossM: 120, headingChangeDeg: 220 } }));
    expect(lowestM(worse.left)).toBeGreaterThan(lowestM(turnBack(question()).left) + 20);
  });
});

test('the margin over the stall in the turn is said, and a turn that stalls is refused', () => {
  // By hand: 21 m/s x sqrt(1 / cos 30) = 22.57; 30 / 22.57 = 1.329.
  expect(turnBack(question()).speedOverStallRatio).toBeCloseTo(1.329, 3);
  expect(() => turnBack(question({ aeroplane: { stallSpeedMs: 26 }, pilot: { bankDeg: 45 } }))).toThrow(
    /stalls at best glide speed/,
  );
});

describe('for any question', () => {
  const wind = fc.record({
    headwindMs: fc.double({ min: -2, max: 6, noNaN: true }),
    crosswindFromRightMs: fc.double({ min: -4, max: 4, noNaN: true }),
    gradientExponent: fc.double({ min: 0, max: 0.35, noNaN: true }),
  });

  test('a mirrored wind mirrors the sides', () => {
    fc.assert(
      fc.property(wind, (oneWind) => {
        const answer = turnBack(question({ wind: oneWind }));
        const mirrored = turnBack(
          question({ wind: { ...oneWind, crosswindFromRightMs: -oneWind.crosswindFromRightMs } }),
        );
        const [a, b] = [lowestM(answer.left), lowestM(mirrored.right)];
        // Both are found to 0.1 m.
        if (a !== b) expect(Math.abs(a - b)).toBeLessThan(0.2);
      }),
      { numRuns: 25 },
    );
  });

  test('a slower reaction or a worse glide never lowers the height, where the runway ahead is long enough', () => {
    // Where a strong headwind blows the turn too far back along the runway, a steeper glide may really settle sooner.
    const runway = { lengthM: 900, landingRunM: 0 };
    const gentle = wind.map((one) => ({ ...one, headwindMs: one.headwindMs / 3 }));
    const more = fc.record({
      reactionS: fc.double({ min: 0, max: 6, noNaN: true }),
      sinkRatio: fc.double({ min: 1, max: 1.3, noNaN: true }),
    });
    fc.assert(
      fc.property(gentle, more, (oneWind, { reactionS, sinkRatio }) => {
        const pilot = { wingsLevelByM: 0 };
        const answer = turnBack(question({ wind: oneWind, runway, pilot }));
        const slower = turnBack(
          question({ wind: oneWind, runway, pilot: { ...pilot, reactionS: 4 + reactionS } }),
        );
        const steeper = turnBack(
          question({ wind: oneWind, runway, pilot, aeroplane: { glideSinkMs: 3 * sinkRatio } }),
        );
        // The heading is searched to centimetres of height, the height to 0.1 m.
        expect(lowestM(slower.left)).toBeGreaterThanOrEqual(lowestM(answer.left) - 0.3);
        expect(lowestM(steeper.left)).toBeGreaterThanOrEqual(lowestM(answer.left) - 0.3);
      }),
      { numRuns: 25 },
    );
  });
});
