import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  magneticDirection,
  magneticFromTrue,
  trueDirection,
  trueFromMagnetic,
} from '../../../shared-calc/performance/direction.ts';
import {
  creditedHeadwindMs,
  FULL_WIND_CREDIT,
  widestAngleForCrosswindDeg,
  windComponents,
  windForCrosswindMs,
  windForHeadwindMs,
} from '../../../shared-calc/performance/wind.ts';

// The crosswind chart's own columns as every handbook prints them (sine and cosine to two figures).
test.each([
  [0, 1, 0],
  [10, 0.98, 0.17],
  [20, 0.94, 0.34],
  [30, 0.87, 0.5],
  [40, 0.77, 0.64],
  [45, 0.71, 0.71],
  [60, 0.5, 0.87],
  [90, 0, 1],
  [180, -1, 0],
  [270, 0, -1],
])('a wind %i degrees off the runway gives %d along and %d across', (angleDeg, along, across) => {
  const wind = windComponents(magneticDirection(0), magneticDirection(angleDeg), 10);
  expect(Math.abs(wind.headwindMs - 10 * along)).toBeLessThan(0.051);
  expect(Math.abs(wind.crosswindFromRightMs - 10 * across)).toBeLessThan(0.051);
});

test('true and magnetic cannot meet: the type check refuses it', () => {
  const runwayDeg = magneticDirection(180);
  const windDeg = trueDirection(220);
  // @ts-expect-error a true wind against a magnetic runway
  const mixed = windComponents(runwayDeg, windDeg, 10);
  const right = windComponents(runwayDeg, magneticFromTrue(windDeg, 10), 10);
  expect(mixed.headwindMs).not.toBeCloseTo(right.headwindMs, 2);
});

// Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 16: east is least, west is best.
test('variation east is subtracted from true, west added', () => {
  expect(magneticFromTrue(trueDirection(90), 10)).toBe(80);
  expect(magneticFromTrue(trueDirection(90), -10)).toBe(100);
  expect(magneticFromTrue(trueDirection(5), 10)).toBe(355);
  expect(trueFromMagnetic(magneticDirection(355), 10)).toBe(5);
});

test('by default half of a headwind counts and one and a half of a tailwind', () => {
  expect(creditedHeadwindMs(8)).toBe(4);
  expect(creditedHeadwindMs(-4)).toBe(-6);
  expect(creditedHeadwindMs(8, FULL_WIND_CREDIT)).toBe(8);
});

test('a wind weaker than the limit stays within it at any angle', () => {
  expect(widestAngleForCrosswindDeg(5, 6)).toBe(90);
  expect(widestAngleForCrosswindDeg(5, 5)).toBe(90);
});

test('any wind: the components have its strength, and turning both directions changes nothing', () => {
  const angle = fc.double({ min: 0, max: 360, noNaN: true });
  fc.assert(
    fc.property(
      angle,
      angle,
      angle,
      fc.double({ min: 0, max: 60, noNaN: true }),
      (runway, from, turn, speedMs) => {
        const turned = (deg: number) => trueDirection((deg + turn) % 360);
        const a = windComponents(trueDirection(runway), trueDirection(from), speedMs);
        const b = windComponents(turned(runway), turned(from), speedMs);
        expect(Math.hypot(a.headwindMs, a.crosswindFromRightMs)).toBeCloseTo(speedMs, 9);
        expect(a.headwindMs).toBeCloseTo(b.headwindMs, 9);
        expect(a.crosswindFromRightMs).toBeCloseTo(b.crosswindFromRightMs, 9);
      },
    ),
  );
});

test('wind for a component and component of a wind are inverse', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 89, noNaN: true }),
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      (angleDeg, componentMs) => {
        const ahead = windForHeadwindMs(componentMs, angleDeg);
        const across = windForCrosswindMs(componentMs, angleDeg);
        const components = (speedMs: number) =>
          windComponents(trueDirection(0), trueDirection(angleDeg), speedMs);
        if (ahead <= 60) expect(components(ahead).headwindMs).toBeCloseTo(componentMs, 9);
        if (across <= 60) expect(components(across).crosswindFromRightMs).toBeCloseTo(componentMs, 9);
      },
    ),
  );
});
