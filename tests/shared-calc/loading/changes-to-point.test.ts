import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeablePlaces } from '../../../shared-calc/loading/changeable-places.ts';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import { caseOf } from '../../../shared-calc/loading/case-of.ts';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../main/example-aircraft.ts';
import { weighingOf } from '../wording/example-weighing.ts';
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

test('one change that ends near enough is given instead of two that end there exactly', () => {
  const from = { massKg: 500, armM: 1.9 };
  // 20 kg more at 2.5 m end at 1.92308 m; a millimetre beside it only two places do.
  const to = { massKg: 520, armM: 1000 / 520 + 0.001 };
  const places = [place('Shelf', 2.5, 0), place('Seat', 2.0, 80), place('Nose', 1, 10)];
  expect(changesToPoint(from, to, places, 3)[0]).toHaveLength(2);
  const near = changesToPoint(from, to, places, 3, { massKg: 1, armM: 0.002 });
  expect(near.map((way) => way.map(({ name }) => name))).toEqual([['Shelf']]);
});

// The example's rear tank has a table of arms; both tanks give up litres and take them up to their capacity. What the
// assessment of the changed loading makes of it is the outside check: it never sees the question.
test('changes of stations and tanks bring the take-off there by the assessment itself, and within capacity', () => {
  const aircraft = exampleAircraft();
  const people = [examplePerson('mara', 'Mara', 68)];
  const start = { ...exampleLoading(), fuel: [fuel('front', 30), fuel('rear', 20)] };
  const assessed = (loading: LoadingRecord) => {
    const prepared = caseOf({ aircraft, weighing: weighingOf(aircraft.id), loading, people });
    if (!prepared.ready) throw new Error('it is ready');
    return assessLoading(prepared.aeroplane, prepared.loading);
  };
  const result = assessed(start);
  const places = changeablePlaces(result);
  expect(places.map(({ name }) => name)).toEqual([
    'Left seat',
    'Right seat',
    'Baggage',
    'Front tank',
    'Rear tank',
  ]);
  let tried = 0;
  let withTank = 0;
  for (let dm = -30; dm <= 30; dm += 6)
    for (let da = -0.03; da <= 0.03; da += 0.006) {
      const { massKg, armM } = result.takeOff;
      const to = { massKg: massKg + dm, armM: armM + da };
      for (const way of changesToPoint({ massKg, armM }, to, places, 20)) {
        const changed = structuredClone(start);
        for (const { index, name, changeKg } of way) {
          const density = places[index]?.densityKgPerL ?? null;
          const tank = changed.fuel[index - 3];
          if (density !== null && tank !== undefined) {
            withTank += 1;
            const litresL = tank.bestL + changeKg / density;
            // 48.5 and 44 L are usable.
            expect(litresL).toBeGreaterThanOrEqual(-1e-6);
            expect(litresL).toBeLessThanOrEqual((index === 3 ? 48.5 : 44) + 1e-6);
            Object.assign(tank, fuel(tank.tankId, Math.min(index === 3 ? 48.5 : 44, litresL)));
          } else
            changed.items.push({
              id: name,
              stationId: aircraft.stations[index]?.id ?? '',
              seatArmM: null,
              personId: null,
              typed: {
                name,
                massKg: Math.max(0, changeKg),
                known: 'weighed',
                sdKg: 0,
                biasKg: Math.min(0, changeKg),
              },
            });
        }
        // A load cannot weigh less than nothing: such ways are held by the sums above.
        if (changed.items.some(({ typed }) => typed !== null && typed.massKg + typed.biasKg < 0)) continue;
        tried += 1;
        const { takeOff } = assessed(changed);
        expect(Math.abs(takeOff.massKg - to.massKg)).toBeLessThan(0.051);
        expect(Math.abs(takeOff.armM - to.armM)).toBeLessThan(0.0005);
      }
    }
  expect(tried).toBeGreaterThan(100);
  expect(withTank).toBeGreaterThan(100);

  function fuel(tankId: string, litresL: number) {
    return { tankId, lowL: litresL, bestL: litresL, highL: litresL };
  }
});
