import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changesToPoint } from '../../../shared-calc/loading/changes-to-point.ts';

const place = (name: string, armM: number, loadedKg: number, mostKg: number | null = null) => ({
  name,
  armM,
  loadedKg,
  mostKg,
});

test('one load at one place is found, and nothing else is asked for', () => {
  // 500 kg at 1.9 m and 20 kg at 2.5 m more: (950 + 50) / 520 = 1.923 m.
  const ways = changesToPoint(
    { massKg: 500, armM: 1.9 },
    { massKg: 520, armM: 1000 / 520 },
    [place('Shelf', 2.5, 0), place('Seat', 2.0, 80)],
    3,
  );
  expect(ways[0]).toHaveLength(1);
  expect(ways[0]?.[0]?.name).toBe('Shelf');
  expect(ways[0]?.[0]?.changeKg).toBeCloseTo(20, 9);
});

test('a shift between two places is the shift formula of the handbook', () => {
  // FAA-H-8083-1B, chapter 4: weight shifted / total weight = change of CG / distance shifted. 30 kg of 600 kg over 2 m
  // move the CG by 0.1 m.
  const ways = changesToPoint(
    { massKg: 600, armM: 2 },
    { massKg: 600, armM: 2.1 },
    [place('Front', 1, 50), place('Rear', 3, 0)],
    3,
  );
  expect(ways).toHaveLength(1);
  expect(ways[0]?.map(({ changeKg }) => Math.round(changeKg * 1e6) / 1e6)).toEqual([-30, 30]);
});

test('no place goes below nothing or above its most', () => {
  const from = { massKg: 600, armM: 2 };
  const to = { massKg: 600, armM: 2.1 };
  expect(changesToPoint(from, to, [place('Front', 1, 29), place('Rear', 3, 0)], 3)).toEqual([]);
  expect(changesToPoint(from, to, [place('Front', 1, 50), place('Rear', 3, 0, 29)], 3)).toEqual([]);
});

test('every way given ends at the place that was asked for', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -30, max: 30, noNaN: true }),
      fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      (massKg, armM) => {
        const places = [
          place('A', 1.9, 80, 110),
          place('B', 2.5, 5, 15),
          place('C', 2.9, 4, 12),
          place('D', 1.4, 20),
        ];
        const from = { massKg: 550, armM: 1.92 };
        const to = { massKg: 550 + massKg, armM: 1.92 + armM };
        for (const way of changesToPoint(from, to, places, 20)) {
          let [mass, moment] = [from.massKg, from.massKg * from.armM];
          for (const { name, changeKg } of way) {
            mass += changeKg;
            moment += changeKg * (places.find((each) => each.name === name)?.armM ?? NaN);
          }
          // What is left out as nothing is less than 0.05 kg at a place.
          expect(Math.abs(mass - to.massKg)).toBeLessThan(0.051);
          expect(Math.abs(moment - to.massKg * to.armM)).toBeLessThan(0.051 * 3);
        }
      },
    ),
  );
});
