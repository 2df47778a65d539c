import { describe, expect, test } from 'vitest';
import { drawnEdges, turnOf } from '../../../../renderer/screens/aircraft/envelopeDrawing.ts';
import { missingFor, uncomparedParts, usefulLoadKg } from '../../../../renderer/screens/aircraft/missing.ts';
import { manualUnits } from '../../../../renderer/screens/aircraft/printedUnits.ts';
import {
  levelsFor,
  sharedArms,
  stripArms,
  stripLimits,
} from '../../../../renderer/screens/aircraft/stripItems.ts';
import {
  newWeighingDraft,
  weighingInput,
  weighingOutcome,
} from '../../../../renderer/screens/aircraft/weighingDraft.ts';
import type { WeighingRecord } from '../../../../shared-calc/loading/records.ts';
import { KG_PER_LB, M_PER_IN } from '../../../../shared-calc/units/constants.ts';
import { exampleAircraft } from '../../../main/example-aircraft.ts';
import { examplePerformance } from '../../../main/example-performance.ts';

describe('what is still missing', () => {
  test('is named in the order of a manual, and nothing is for a complete aeroplane', () => {
    const aircraft = exampleAircraft();
    expect(missingFor(aircraft, null).map(({ section }) => section)).toEqual(['empty']);
    expect(
      missingFor({ ...aircraft, datumWords: '', stations: [], tanks: [], envelopes: [] }, null).map(
        ({ what }) => what,
      ),
    ).toEqual([
      'where the datum is',
      'the empty weight and its arm',
      'the stations',
      'the tanks',
      'the CG envelope',
    ]);
  });

  test('tells parts that nobody has compared with the manual', () => {
    expect(uncomparedParts(exampleAircraft(), null)).toEqual(['Rear tank']);
    expect(uncomparedParts(exampleAircraft(), examplePerformance('two-seater'))).toEqual([
      'Rear tank',
      'landing table',
      'climb table',
    ]);
  });

  test('useful load is the maximum less the empty weight, and unknown without either', () => {
    const weighed = { emptyMassKg: 318 } as WeighingRecord;
    expect(usefulLoadKg(exampleAircraft(), weighed)).toBe(282);
    expect(usefulLoadKg(exampleAircraft(), null)).toBeNull();
    const noMaximum = { rampKg: null, takeOffKg: null, landingKg: null, zeroFuelKg: null };
    expect(usefulLoadKg({ ...exampleAircraft(), maxMasses: noMaximum }, weighed)).toBeNull();
  });
});

describe('the strip', () => {
  test('orders arms from the datum and joins those in one place', () => {
    expect(
      sharedArms(stripArms(exampleAircraft(), null)).map(({ names, armM }) => [armM, names.join(' + ')]),
    ).toEqual([
      [0.69, 'nose wheel'],
      [1.46, 'Front tank'],
      [1.965, 'Left seat + Right seat'],
      [1.985, 'main wheels'],
      [2.27, 'Rear tank'],
      [2.56, 'Baggage'],
    ]);
  });

  test('gives the limits at the highest mass and how far forward they reach when light', () => {
    expect(stripLimits(exampleAircraft())).toEqual({
      massKg: 600,
      forwardM: 1.802,
      aftM: 1.89,
      foremostM: 1.766,
    });
    expect(stripLimits({ ...exampleAircraft(), envelopes: [] })).toBeNull();
  });

  test('lifts a label above every stem that it would cross', () => {
    // Three stems 20 px apart, labels of 50, 30 and 30 px: the first spans both others.
    expect(
      levelsFor(
        [
          { xPx: 0, widthPx: 50 },
          { xPx: 20, widthPx: 30 },
          { xPx: 40, widthPx: 30 },
        ],
        0,
      ),
    ).toEqual([2, 1, 0]);
    expect(
      levelsFor(
        [
          { xPx: 0, widthPx: 10 },
          { xPx: 20, widthPx: 10 },
        ],
        0,
      ),
    ).toEqual([0, 0]);
  });
});

describe('the drawing of an envelope', () => {
  test('marks the two edges that cross, and the lower edge as no limit', () => {
    const vertex = (across: number, massKg: number) => ({ across, massKg });
    const bowTie = drawnEdges([vertex(0, 0), vertex(2, 0), vertex(0, 2), vertex(2, 2)]);
    expect(bowTie.map(({ isCrossing }) => isCrossing)).toEqual([false, true, false, true]);
    expect(bowTie[0]?.isLimit).toBe(false);
    expect(turnOf([vertex(0, 0), vertex(0, 2), vertex(2, 2)])).toBe(1);
    expect(turnOf([vertex(2, 2), vertex(0, 2), vertex(0, 0)])).toBe(-1);
  });
});

test('units of moment and density follow those of mass, arm and volume', () => {
  expect(manualUnits({ mass: 'lb', arm: 'in', volume: 'US gal' })).toMatchObject({
    moment: 'lb in',
    fuelDensity: 'lb/US gal',
    fuelFlow: 'US gal/h',
  });
  expect(manualUnits({ mass: 'kg', arm: 'mm', volume: 'L' })).toMatchObject({
    moment: 'kg mm',
    fuelDensity: 'kg/L',
  });
});

describe('a weighing from scales', () => {
  // LOAD-005 of the published checks (FAA-H-8083-1B, chapter 3): 846, 852 and 348 lb with tares of 16, 16 and 8 lb at
  // 128, 128 and 50 in give 2,006 lb at 114.8 in; half the last printed digit is the tolerance.
  const draft = newWeighingDraft(exampleAircraft(), '2026-03-14');
  draft.wheels = [
    {
      wheel: 'nose wheel',
      armM: 50 * M_PER_IN,
      readingKg: 348 * KG_PER_LB,
      tareKg: 8 * KG_PER_LB,
      lateralArmM: 0,
    },
    {
      wheel: 'left main wheel',
      armM: 128 * M_PER_IN,
      readingKg: 852 * KG_PER_LB,
      tareKg: 16 * KG_PER_LB,
      lateralArmM: -1.1,
    },
    {
      wheel: 'right main wheel',
      armM: 128 * M_PER_IN,
      readingKg: 846 * KG_PER_LB,
      tareKg: 16 * KG_PER_LB,
      lateralArmM: 1.2,
    },
  ];

  test('comes to the handbook’s empty weight and arm, and keeps the readings', () => {
    const outcome = weighingOutcome(draft, exampleAircraft());
    if (!outcome.ready) throw new Error(outcome.waits);
    expect(outcome.result.massKg / KG_PER_LB).toBeCloseTo(2_006, 6);
    expect(Math.abs(outcome.result.armM / M_PER_IN - 114.8)).toBeLessThan(0.05);
    const input = weighingInput(draft, exampleAircraft(), outcome);
    expect(input.readings).toHaveLength(3);
    expect(input.how).toBe('scales');
    // Nobody asked for lateral arms.
    expect(input).not.toHaveProperty('lateralArmM');
    expect(input.readings[0]).not.toHaveProperty('lateralArmM');
  });

  test('finds the CG to the side where the manual gives lateral arms', () => {
    const lateral = { across: 'arm' as const, left: -0.1, right: 0.1, oilArmM: null };
    const aircraft = { ...exampleAircraft(), lateral };
    const outcome = weighingOutcome(draft, aircraft);
    if (!outcome.ready) throw new Error(outcome.waits);
    // By hand: 836 lb at -1.1 m, 830 lb at 1.2 m, 340 lb in the middle, over 2,006 lb.
    expect(outcome.lateral?.armM).toBeCloseTo((830 * 1.2 - 836 * 1.1) / 2006, 9);
    const input = weighingInput(draft, aircraft, outcome);
    expect(input.lateralArmM).toBe(outcome.lateral?.armM);
    expect(input.readings.map(({ lateralArmM }) => lateralArmM)).toEqual([0, -1.1, 1.2]);
    const noArm = { ...draft, wheels: draft.wheels.map((wheel) => ({ ...wheel, lateralArmM: null })) };
    expect(weighingOutcome(noArm, aircraft)).toMatchObject({ ready: false });
    expect(weighingOutcome({ ...draft, aboardL: { front: 10 } }, aircraft)).toEqual({
      ready: false,
      waits: 'The tanks that hold fuel need their lateral arms first.',
    });
    // 10 L at 0.72 kg/L, 0.5 m to the left, are taken off.
    const tanks = aircraft.tanks.map((tank) => ({ ...tank, lateralArmM: -0.5 }));
    const fuelled = weighingOutcome({ ...draft, aboardL: { front: 10 } }, { ...aircraft, tanks });
    if (!fuelled.ready) throw new Error(fuelled.waits);
    const netKg = 2006 * KG_PER_LB;
    expect(fuelled.lateral?.armM).toBeCloseTo(
      ((830 * 1.2 - 836 * 1.1) * KG_PER_LB + 7.2 * 0.5) / (netKg - 7.2),
      9,
    );
  });

  test('with fuel aboard is lighter by the fuel, at the tank’s arm', () => {
    const plain = weighingOutcome(draft, exampleAircraft());
    const fuelled = weighingOutcome({ ...draft, aboardL: { front: 10 } }, exampleAircraft());
    if (!plain.ready || !fuelled.ready) throw new Error('both are complete');
    // 10 L at 0.72 kg/L and 1.46 m.
    expect(plain.result.massKg - fuelled.result.massKg).toBeCloseTo(7.2, 9);
    expect(plain.result.momentKgM - fuelled.result.momentKgM).toBeCloseTo(7.2 * 1.46, 9);
  });

  test('waits for what is not typed yet', () => {
    expect(weighingOutcome(newWeighingDraft(exampleAircraft(), '2026-03-14'), exampleAircraft())).toEqual({
      ready: false,
      waits: 'Each wheel needs its arm, its reading and its tare.',
    });
    expect(weighingOutcome({ ...draft, weighedOn: null }, exampleAircraft())).toMatchObject({ ready: false });
  });
});
