import { describe, expect, test } from 'vitest';
import { cellLoading, isSameLoading } from '../../../../shared-calc/loading/review-table/cell-loading.ts';
import { columnFuel } from '../../../../shared-calc/loading/review-table/column-fuel.ts';
import { beginTable, termsOf } from '../../../../shared-calc/loading/review-table/begin-table.ts';
import type {
  FuelSplit,
  ReviewColumnRecord,
  ReviewTableRecord,
} from '../../../../shared-calc/loading/review-table/table-record.ts';
import { reserveOf } from '../../../../shared-calc/loading/reserve.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../../main/example-aircraft.ts';

// The example holds 48.5 L usable in front and 44 L in the rear tank; it burns 18 L/h after 1.5 L of taxi, without a climb
// kept apart, and keeps 45 min in reserve. Expected figures are sums by hand.
const aircraft = exampleAircraft();

function tableOf(split: FuelSplit, fuelDoubtL = 0): ReviewTableRecord {
  return {
    aircraftId: aircraft.id,
    terms: termsOf(exampleLoading()),
    split,
    fuelDoubtL,
    rows: [],
    columns: [],
  };
}

function litres(split: FuelSplit, column: ReviewColumnRecord, doubtL = 0): number[] {
  const filled = columnFuel(aircraft, tableOf(split, doubtL), column);
  if (!filled.fits) throw new Error('it fits');
  return filled.fuel.map(({ bestL }) => bestL);
}

const total = (totalL: number): ReviewColumnRecord => ({ id: 'c', kind: 'total', totalL });
const flight = (hours: number): ReviewColumnRecord => ({ id: 'c', kind: 'flight', flightS: hours * 3600 });

describe('the fuel of a column', () => {
  test('in equal parts is level until the smaller tank is full', () => {
    expect(litres('even', total(60))).toEqual([30, 30]);
    expect(litres('even', total(90))).toEqual([46, 44]);
  });

  test('in proportion fills both tanks to the same share', () => {
    expect(litres('capacity', total(46.25))).toEqual([24.25, 22]);
  });

  test('in the order of burning fills the first before the second has any', () => {
    expect(litres('order', total(60))).toEqual([48.5, 11.5]);
    expect(litres('order', total(40))).toEqual([40, 0]);
  });

  test('is all that is usable for full tanks, whatever the doubt', () => {
    const filled = columnFuel(aircraft, tableOf('even', 1), { id: 'c', kind: 'full' });
    expect(filled.fits && filled.fuel).toEqual([
      { tankId: 'front', lowL: 47.5, bestL: 48.5, highL: 48.5 },
      { tankId: 'rear', lowL: 43, bestL: 44, highL: 44 },
    ]);
  });

  test('an empty tank is known to be empty', () => {
    const filled = columnFuel(aircraft, tableOf('order', 1), total(40));
    expect(filled.fits && filled.fuel[1]).toEqual({ tankId: 'rear', lowL: 0, bestL: 0, highL: 0 });
  });

  test('for a flight is taxi, cruise and reserve, by the low figures', () => {
    // 1.5 + 2 h × 18 + 0.75 h × 18 = 51 L; two tanks that may each hold a litre less: 53 L.
    expect(litres('even', flight(2)).reduce((sum, l) => sum + l)).toBeCloseTo(51, 9);
    expect(litres('even', flight(2), 1).reduce((sum, l) => sum + l)).toBeCloseTo(53, 9);
  });

  test('for a flight is refused where the tanks hold less, with what would be needed', () => {
    // 1.5 + 6 × 18 + 13.5 = 123 L of 92.5 L.
    const filled = columnFuel(aircraft, tableOf('even'), flight(6));
    expect(filled).toMatchObject({ fits: false, usableL: 92.5 });
    expect(!filled.fits && filled.neededL).toBeCloseTo(123, 9);
  });

  test('of more than the tanks hold is refused, also in one tank alone', () => {
    expect(columnFuel(aircraft, tableOf('even'), total(92.6)).fits).toBe(false);
    const rear: ReviewColumnRecord = { id: 'c', kind: 'tanks', fuel: [{ tankId: 'rear', litresL: 44.1 }] };
    expect(columnFuel(aircraft, tableOf('even'), rear).fits).toBe(false);
  });
});

describe('the loading of a cell', () => {
  test.each([0.25, 0.5, 1, 1.7, 2.5, 4])(
    'keeps its reserve for a flight of %f h, and would not with a tenth of a litre less',
    (hours) => {
      for (const [split, doubtL] of [
        ['even', 0],
        ['order', 1],
        ['capacity', 2.5],
      ] as const) {
        const table = tableOf(split, doubtL);
        const filled = columnFuel(aircraft, table, flight(hours));
        if (!filled.fits) throw new Error('it fits');
        const loading = cellLoading(aircraft, table, { items: [] }, filled, { id: 'x', name: 'x' });
        expect(loading.flight.landingAfterS).toBe(hours * 3600);
        expect(reserveOf(loading)?.kept).toBe(true);
        const less = loading.fuel.map((each, i) =>
          i === 0 ? { ...each, lowL: Math.max(0, each.lowL - 0.11) } : each,
        );
        expect(reserveOf({ ...loading, fuel: less })?.kept).toBe(false);
      }
    },
  );

  test('gives a tank that has fuel a place in the order of burning, and forgets a lost one', () => {
    const table = tableOf('even');
    table.terms.burn = { ...table.terms.burn, tankIds: ['gone', 'rear'] };
    const filled = columnFuel(aircraft, table, total(20));
    if (!filled.fits) throw new Error('it fits');
    const loading = cellLoading(aircraft, table, { items: [] }, filled, { id: 'x', name: 'x' });
    expect(loading.burn.tankIds).toEqual(['rear', 'front']);
  });

  test('is the same as another whatever both are called, and not with another load or fuel', () => {
    const one = exampleLoading();
    const other = { ...exampleLoading(), id: 'other', name: 'Other' };
    expect(isSameLoading(one, other)).toBe(true);
    expect(isSameLoading(one, { ...other, items: one.items.slice(1) })).toBe(false);
    expect(isSameLoading(one, { ...other, flight: { ...one.flight, reserveMin: 30 } })).toBe(false);
    const colder = one.fuel.map((each) => ({ ...each, temperatureC: -5 }));
    expect(isSameLoading(one, { ...other, fuel: colder })).toBe(false);
  });
});

describe('a first table', () => {
  let count = 0;
  const newId = () => `id-${String(++count)}`;

  test('has a row for each loading and columns in round steps up to full', () => {
    const table = beginTable(aircraft, [exampleLoading()], [], exampleLoading(), newId);
    expect(table.rows.map(({ name }) => name)).toEqual(['Two friends']);
    // A fifth of 92.5 L is 18.5 L: steps of 20 L.
    expect(table.columns.map((column) => (column.kind === 'total' ? column.totalL : column.kind))).toEqual([
      20,
      40,
      60,
      80,
      'full',
    ]);
    // Low 47 of best 48, low 33.5 of 34.3: the widest is 1 L.
    expect(table.fuelDoubtL).toBe(1);
  });

  test('without loadings seats the first person alone and with each of the others', () => {
    const people = [
      examplePerson('mara', 'Mara', 68),
      examplePerson('jo', 'Jo', 80),
      examplePerson('ed', 'Ed', 90),
    ];
    const table = beginTable(aircraft, [], people, exampleLoading(), newId);
    expect(table.rows.map(({ name }) => name)).toEqual(['Mara alone', 'Mara and Jo', 'Mara and Ed']);
    expect(table.rows[1]?.items.map(({ stationId, personId }) => [stationId, personId])).toEqual([
      ['left-seat', 'mara'],
      ['right-seat', 'jo'],
    ]);
  });
});
