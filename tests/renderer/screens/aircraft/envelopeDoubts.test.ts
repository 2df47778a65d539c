import { expect, test } from 'vitest';
import { envelopeDoubts } from '../../../../renderer/screens/aircraft/envelopeDoubts.ts';
import { manualUnits } from '../../../../renderer/screens/aircraft/printedUnits.ts';
import {
  usualEmptyKg,
  usualMaximumKg,
  USUAL_PERSON_KG,
} from '../../../../shared-calc/loading/usual-masses.ts';
import type { EnvelopeRecord } from '../../../../shared-calc/loading/records.ts';
import { exampleAircraft } from '../../../main/example-aircraft.ts';

const aircraft = exampleAircraft();
const units = manualUnits(aircraft.printed);
const [envelope] = aircraft.envelopes;
if (envelope === undefined) throw new Error('no envelope');
const doubts = (change: Partial<EnvelopeRecord>) =>
  envelopeDoubts({ ...envelope, ...change }, aircraft, units).map((text) => text.replaceAll('\u00a0', ' '));

test('an envelope as printed raises no doubt', () => {
  expect(doubts({})).toEqual([]);
});

test('masses in pounds beside a maximum in kilograms are asked about', () => {
  const vertices = envelope.vertices.map(({ across, massKg }) => ({ across, massKg: massKg / 0.45359237 }));
  expect(doubts({ vertices })[0]).toMatch(/^It reaches 1322.*; the maximum at take-off is 600 kg\. Is one/);
});

test('limits beyond every place and wheel are asked about, in whatever coordinate they are printed', () => {
  const far = envelope.vertices.map(({ across, massKg }) => ({ across: across + 2, massKg }));
  expect(doubts({ vertices: far })[0]).toMatch(
    /^It runs from 3766 mm to 3890 mm; every station, tank and wheel lies/,
  );
  const moments = far.map(({ across, massKg }) => ({ across: across * massKg, massKg }));
  expect(doubts({ across: 'moment', vertices: moments })).toHaveLength(1);
  expect(
    doubts({
      across: 'mac',
      vertices: envelope.vertices.map((v) => ({ ...v, across: 180 + v.massKg / 100 })),
    }),
  ).toHaveLength(1);
});

// By definition of the pound, 0.45359237 kg.
test('a factor of a pound leads out of what is usual, whichever way it was mistaken', () => {
  const isIn = (massKg: number, [from, to]: readonly [number, number]) => massKg >= from && massKg <= to;
  for (const [emptyKg, mostKg] of [
    [318, 600],
    [262, 472.5],
    [520, 760],
    [680, 1157],
  ] as const) {
    for (const [usual, right] of [
      [usualMaximumKg(emptyKg), mostKg],
      [usualEmptyKg(mostKg), emptyKg],
    ] as const) {
      expect(isIn(right, usual)).toBe(true);
      expect(isIn(right / 0.45359237, usual)).toBe(false);
      expect(isIn(right * 0.45359237, usual)).toBe(false);
    }
  }
  for (const person of [65, 80, 110]) {
    expect(isIn(person, USUAL_PERSON_KG)).toBe(true);
    expect(isIn(person / 0.45359237, USUAL_PERSON_KG)).toBe(person < 64);
  }
});
