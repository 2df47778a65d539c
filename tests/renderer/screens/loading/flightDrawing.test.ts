import { describe, expect, test } from 'vitest';
import { acrossFrom, outlineOf } from '../../../../renderer/screens/loading/coordinates.ts';
import { loadChain } from '../../../../renderer/screens/loading/chain.ts';
import {
  flightEnvelope,
  flightEvents,
  flightLine,
  outsideStretches,
  halfHours,
  pointAtTime,
} from '../../../../renderer/screens/loading/flightDrawing.ts';
import { assessLoading, type LoadingResult } from '../../../../shared-calc/loading/assess.ts';
import { armLimitsAt } from '../../../../shared-calc/loading/envelope.ts';
import { caseOf } from '../../../../shared-calc/loading/case-of.ts';
import type { WeighingRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../../main/example-aircraft.ts';
import { weighingOf } from '../../../shared-calc/wording/example-weighing.ts';

const weighing = weighingOf('two-seater');

function example(weighed: Partial<WeighingRecord> = {}): LoadingResult {
  const prepared = caseOf({
    aircraft: exampleAircraft(),
    weighing: { ...weighing, ...weighed },
    loading: exampleLoading(),
    people: [examplePerson('mara', 'Mara', 68)],
  });
  if (!prepared.ready) throw new Error(prepared.missing.join(' '));
  return assessLoading(prepared.aeroplane, prepared.loading);
}

describe('the flight as drawn', () => {
  const result = example();
  const place = acrossFrom('arm', exampleAircraft().mac);

  test('runs from the ramp to usable fuel exhausted, mass falling all the way', () => {
    const line = flightLine(result, place);
    expect(line[0]?.[1]).toBeCloseTo(result.ramp.massKg, 9);
    expect(line.at(-1)?.[1]).toBeCloseTo(result.exhausted.massKg, 9);
    line.slice(1).forEach(([, massKg], index) => {
      expect(massKg).toBeLessThan(line[index]?.[1] ?? 0);
    });
  });

  test('names ramp, take-off, the tank run empty, landing and the end in their order', () => {
    expect(flightEvents(result).map(({ name }) => name)).toEqual([
      'Ramp',
      'Take-off',
      'Front tank empty',
      'Landing',
      'Usable fuel exhausted',
    ]);
    // By hand: 48 L less 1.5 L of taxi at 18 L/h: the front tank is empty 9 300 s after take-off; all 80.8 L 16 160 s.
    const [, , empty, , end] = flightEvents(result);
    expect(empty?.point.afterTakeOffS).toBeCloseTo(9_300, 6);
    expect(end?.point.afterTakeOffS).toBeCloseTo(16_160, 6);
  });

  test('has a mark each half hour, and none after the end', () => {
    expect(halfHours(result).map(({ timeS }) => timeS)).toEqual(
      // 16 160 s hold eight whole half hours.
      [1, 2, 3, 4, 5, 6, 7, 8].map((count) => count * 1800),
    );
    // 1 h at 18 L/h after 1.5 L of taxi.
    expect(pointAtTime(result, 3_600)?.burnedL).toBeCloseTo(19.5, 9);
    expect(pointAtTime(result, 17_000)).toBeNull();
  });

  test('meets the limits of the CG as typed: aft at 1.890, forward on the slanting edge', () => {
    const envelope = flightEnvelope(result);
    if (envelope === null) throw new Error('the example has an envelope');
    // Halfway up the edge from (1.766, 480) to (1.802, 600).
    expect(armLimitsAt(envelope, 540).forwardM).toBeCloseTo(1.784, 9);
    expect(armLimitsAt(envelope, 540).aftM).toBeCloseTo(1.89, 9);
    expect(armLimitsAt(envelope, 700).forwardM).toBeCloseTo(1.802, 9);
    expect(armLimitsAt(envelope, 100).forwardM).toBeCloseTo(1.766, 9);
  });
});

test('the chain of loads begins at the empty aeroplane, ends at the ramp and adds the tank burned first last', () => {
  const result = example();
  const { empty, links } = loadChain(result);
  expect(empty.massKg).toBe(318);
  expect(links.map(({ name }) => name)).toEqual(['Mara', 'Bag', 'Rear tank', 'Front tank']);
  expect(links.at(-1)?.to.massKg).toBeCloseTo(result.ramp.massKg, 9);
  expect(links.at(-1)?.to.momentKgM).toBeCloseTo(result.ramp.momentKgM, 9);
});

describe('an envelope in other coordinates than its manual prints', () => {
  const [envelope] = exampleAircraft().envelopes;
  const { mac } = exampleAircraft();
  if (envelope === undefined) throw new Error('the example has an envelope');

  test('keeps its edges straight over percent of the chord', () => {
    const [edge] = outlineOf(envelope, 'mac', mac);
    expect(edge?.points).toHaveLength(2);
    // (1.766 - 1.518) / 1.24
    expect(edge?.points[0]?.[0]).toBeCloseTo(0.2, 9);
  });

  test('has curved edges over moment: halfway up, mass and arm are both halfway, their product is not', () => {
    const edge = outlineOf(envelope, 'moment', mac)[1];
    const middle = edge?.points[12];
    expect(middle?.[1]).toBeCloseTo(540, 9);
    expect(middle?.[0]).toBeCloseTo(540 * 1.784, 9);
    expect(middle?.[0]).not.toBeCloseTo((480 * 1.766 + 600 * 1.802) / 2, 2);
  });

  test('marks the lower edge as no limit', () => {
    expect(outlineOf(envelope, 'arm', mac).map(({ isLimit }) => isLimit)).toEqual([
      true,
      true,
      true,
      true,
      false,
    ]);
  });
});

test('a stretch outside that fuller tanks would draw out ends where the drawn flight ends', () => {
  // Tail-heavy: aft of 1.890 m from take-off until the fuel is gone, by every figure of the fuel.
  const result = example({ emptyArmM: 1.93 });
  const [stretch] = outsideStretches(result);
  expect(stretch?.margin.limit.kind).toBe('aft');
  expect(stretch?.isFromStart).toBe(true);
  expect(stretch?.isToEnd).toBe(true);
  expect(stretch?.toL).toBeLessThanOrEqual(result.exhausted.burnedL);
  // 82.3 L by the best figures; the high ones hold 83.5.
  expect(result.exhausted.burnedL).toBeCloseTo(82.3, 9);
  const line = flightLine(result, acrossFrom('arm', null), stretch?.fromL, stretch?.toL);
  expect(line.at(-1)?.[1]).toBeCloseTo(result.exhausted.massKg, 9);
});
