import { describe, expect, test } from 'vitest';
import { calibrate } from '../../../shared-calc/fuel/fit/calibrate.ts';
import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { scaleMarks } from '../../../shared-calc/fuel/gauge-scale.ts';
import { leastPairs, type ScaledTank } from '../../../shared-calc/fuel/least-together.ts';
import { leastMarkFor } from '../../../shared-calc/fuel/least-mark.ts';
import { totalFuel } from '../../../shared-calc/fuel/total-fuel.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';

const EIGHTHS = { kind: 'fractions', denominator: 8 } as const;

function tank(poured = 1): ScaledTank {
  const fillTest = exampleFillTest();
  for (const run of fillTest.runs) for (const pour of run.pours) pour.volumeL *= poured;
  const found = calibrate([fillTest], [], { capacityL: 45, unusableL: 1 });
  if (found.kind !== 'curve') throw new Error('the example makes a curve');
  return { curve: found.curve, refits: found.refits, scale: EIGHTHS };
}
const left = tank();
const right = tank(0.9);
const planL = (a: GaugeReading, b: GaugeReading, precision: 'nearestDivision' | 'needleOnMark') =>
  totalFuel(
    [
      { ...left, reading: a },
      { ...right, reading: b },
    ],
    precision,
  ).planningL;

describe.each(['nearestDivision', 'needleOnMark'] as const)('%s', (precision) => {
  // Every pair of marks is tried, and judged by the total that is asked forwards.
  test.each([5, 18, 30, 42])(
    'the pairs for %d L are those of the total tried at every pair of marks',
    (usableL) => {
      const marks = scaleMarks(EIGHTHS);
      const tried = marks.map(({ reading, text }) => ({
        text,
        least: marks.find((mark) => planL(reading, mark.reading, precision) >= usableL)?.text ?? null,
      }));
      const wanted = tried.filter(
        ({ least }, index) => least !== null && least !== tried.slice(0, index).at(-1)?.least,
      );
      const found = leastPairs(left, right, [], usableL, precision);
      expect(found.map(({ lead, other }) => ({ text: lead.text, least: other.text }))).toEqual(wanted);
    },
  );
});

test('more than both can promise has no pair; nothing needed is met by both empty', () => {
  expect(leastPairs(left, right, [], 200, 'nearestDivision')).toEqual([]);
  const [first, ...more] = leastPairs(left, right, [], 0, 'nearestDivision');
  expect([first?.lead.text, first?.other.text, more.length]).toEqual(['E', 'E', 0]);
});

test('with the other empty the mark is that of the one tank alone', () => {
  const alone = leastMarkFor(left.curve, EIGHTHS, 15, 'nearestDivision');
  const last = leastPairs(left, right, [], 15, 'nearestDivision').at(-1);
  expect(last?.other.text).toBe('E');
  expect(last?.lead.text).toBe(alone?.text);
});

test('a third tank at its reading asks less of the two; without kept curves the figures are added and ask more', () => {
  const third = { ...tank(0.5), reading: { at: 'scale', positionRatio: 0.5 } } as const;
  const sum = (pairs: ReturnType<typeof leastPairs>) =>
    scaleMarks(EIGHTHS).findIndex(({ text }) => text === pairs[0]?.lead.text);
  const two = leastPairs(left, right, [], 40, 'nearestDivision');
  const three = leastPairs(left, right, [third], 40, 'nearestDivision');
  expect(sum(three)).toBeLessThan(sum(two));
  const added = leastPairs({ ...left, refits: null }, right, [], 40, 'nearestDivision');
  expect(sum(added)).toBeGreaterThanOrEqual(sum(two));
});
