import fc from 'fast-check';
import { expect, test } from 'vitest';
import { performanceTable, readTable } from '../../../shared-calc/performance/performance-table.ts';
import type { TableCell } from '../../../shared-calc/performance/performance-table.ts';
import { readTableInto } from '../../../shared-calc/performance/table-column.ts';

/** Ragged and with a blank, worse towards less headwind. Values invented. */
const CELLS: TableCell[] = [
  ...[0, 15, 40].flatMap((temperatureC) =>
    [0, 5].map((headwindMs) => ({
      at: { pressureAltitudeM: 0, temperatureC, headwindMs },
      value: 200 + 2 * temperatureC - 8 * headwindMs,
    })),
  ),
  { at: { pressureAltitudeM: 1000, temperatureC: 10, headwindMs: 0 }, value: 270 },
  { at: { pressureAltitudeM: 1000, temperatureC: 10, headwindMs: 5 }, value: 240 },
  { at: { pressureAltitudeM: 1000, temperatureC: 30, headwindMs: 0 }, value: 330 },
  { at: { pressureAltitudeM: 1000, temperatureC: 30, headwindMs: 5 }, value: null },
];
const table = performanceTable(['pressureAltitudeM', 'temperatureC', 'headwindMs'], CELLS);

test('a column is row for row what one reading at a time gives', () => {
  const place = fc.record({
    pressureAltitudeM: fc.oneof(fc.double({ min: -500, max: 1500, noNaN: true }), fc.constantFrom(0, 1000)),
    temperatureC: fc.oneof(fc.double({ min: -20, max: 50, noNaN: true }), fc.constantFrom(0, 10, 15, 30, 40)),
    headwindMs: fc.oneof(fc.double({ min: -5, max: 10, noNaN: true }), fc.constantFrom(0, 5)),
  });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (places) => {
      const out = new Float64Array(places.length);
      readTableInto(
        out,
        table,
        {
          pressureAltitudeM: Float64Array.from(places, (one) => one.pressureAltitudeM),
          temperatureC: Float64Array.from(places, (one) => one.temperatureC),
          headwindMs: Float64Array.from(places, (one) => one.headwindMs),
        },
        Infinity,
      );
      places.forEach((one, row) => {
        const answer = readTable(table, one);
        const value = out[row] ?? NaN;
        if (answer.kind === 'value') expect(value).toBeCloseTo(answer.value, 9);
        else expect(value).toBe(Infinity);
      });
    }),
  );
});

test('one value serves all rows, and what is missing stays missing', () => {
  const out = new Float64Array(3);
  readTableInto(
    out,
    table,
    { pressureAltitudeM: 0, temperatureC: Float64Array.of(15, NaN, 41), headwindMs: 0 },
    Infinity,
  );
  // By hand: 200 + 2 x 15; missing; hotter than the table.
  expect([...out]).toEqual([230, NaN, Infinity]);
});
