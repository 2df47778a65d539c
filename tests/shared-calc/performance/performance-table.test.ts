import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  performanceTable,
  readTable,
  tableOddities,
} from '../../../shared-calc/performance/performance-table.ts';
import type { TableAxis, TableCell } from '../../../shared-calc/performance/performance-table.ts';
import interpolated from './interpolated.json';

const AXES: TableAxis[] = ['massKg', 'pressureAltitudeM', 'temperatureC'];
const CELLS: TableCell[] = interpolated.massKg.flatMap((massKg, i) =>
  interpolated.pressureAltitudeM.flatMap((pressureAltitudeM, j) =>
    interpolated.temperatureC.map((temperatureC, k) => ({
      at: { massKg, pressureAltitudeM, temperatureC },
      value: interpolated.valuesM[i]?.[j]?.[k] ?? null,
    })),
  ),
);
const full = performanceTable(AXES, CELLS);

/** As some manuals print it: fewer temperatures at the higher altitude. Values invented. */
const ragged = performanceTable(
  ['pressureAltitudeM', 'temperatureC'],
  [
    { at: { pressureAltitudeM: 0, temperatureC: 0 }, value: 200 },
    { at: { pressureAltitudeM: 0, temperatureC: 20 }, value: 230 },
    { at: { pressureAltitudeM: 0, temperatureC: 40 }, value: 270 },
    { at: { pressureAltitudeM: 1000, temperatureC: 10 }, value: 260 },
    { at: { pressureAltitudeM: 1000, temperatureC: 30 }, value: 310 },
  ],
);

describe('between the printed cells', () => {
  test('mass, altitude and temperature together agree with scipy', () => {
    expect(interpolated.queries).toHaveLength(12);
    for (const { valueM, ...place } of interpolated.queries) {
      const answer = readTable(full, place);
      // Printed to six decimals.
      expect(answer.kind === 'value' ? answer.value : NaN).toBeCloseTo(valueM, 5);
      expect(answer).toMatchObject({ heldAtEdge: [] });
    }
  });

  test("a ragged table uses each row's own temperatures", () => {
    // By hand: at 0 m and 25 degC 230 + 0.25 x 40 = 240; at 1000 m 260 + 0.75 x 50 = 297.5; half way 268.75.
    const answer = readTable(ragged, { pressureAltitudeM: 500, temperatureC: 25 });
    expect(answer).toEqual({
      kind: 'value',
      value: 268.75,
      heldAtEdge: [],
      cellsUsed: [
        { at: { pressureAltitudeM: 0, temperatureC: 20 }, value: 230, weightRatio: 0.375 },
        { at: { pressureAltitudeM: 0, temperatureC: 40 }, value: 270, weightRatio: 0.125 },
        { at: { pressureAltitudeM: 1000, temperatureC: 10 }, value: 260, weightRatio: 0.125 },
        { at: { pressureAltitudeM: 1000, temperatureC: 30 }, value: 310, weightRatio: 0.375 },
      ],
    });
  });

  test('on a printed cell that cell alone is used, also after a conversion of units', () => {
    const feet = performanceTable(
      ['pressureAltitudeM'],
      [
        { at: { pressureAltitudeM: 2000 * 0.3048 }, value: 340 },
        { at: { pressureAltitudeM: 3000 * 0.3048 }, value: 375 },
      ],
    );
    const answer = readTable(feet, { pressureAltitudeM: 2000 * 0.3048 * (1 - 1e-12) });
    expect(answer).toMatchObject({ value: 340, heldAtEdge: [], cellsUsed: [{ weightRatio: 1 }] });
  });
});

describe('at the edges', () => {
  test('colder and lower are answered as no better than the edge, and said', () => {
    const answer = readTable(ragged, { pressureAltitudeM: -150, temperatureC: -5 });
    expect(answer).toMatchObject({
      kind: 'value',
      value: 200,
      heldAtEdge: [
        { axis: 'pressureAltitudeM', asked: -150, edge: 0 },
        { axis: 'temperatureC', asked: -5, edge: 0 },
      ],
    });
  });

  test('lighter and more headwind than printed gain nothing either', () => {
    const table = performanceTable(
      ['massKg', 'headwindMs'],
      [
        { at: { massKg: 500, headwindMs: 0 }, value: 200 },
        { at: { massKg: 500, headwindMs: 5 }, value: 170 },
        { at: { massKg: 600, headwindMs: 0 }, value: 280 },
        { at: { massKg: 600, headwindMs: 5 }, value: 240 },
      ],
    );
    expect(readTable(table, { massKg: 450, headwindMs: 8 })).toMatchObject({
      kind: 'value',
      value: 170,
      heldAtEdge: [{ axis: 'massKg' }, { axis: 'headwindMs', asked: 8, edge: 5 }],
    });
    expect(readTable(table, { massKg: 550, headwindMs: -1 })).toMatchObject({
      kind: 'beyondTable',
      axis: 'headwindMs',
      edge: 0,
    });
    expect(readTable(table, { massKg: 601, headwindMs: 2 })).toMatchObject({
      kind: 'beyondTable',
      axis: 'massKg',
      asked: 601,
      edge: 600,
    });
  });

  test('hotter than a higher row goes is refused between the rows too, and says under which', () => {
    expect(readTable(ragged, { pressureAltitudeM: 500, temperatureC: 35 })).toEqual({
      kind: 'beyondTable',
      axis: 'temperatureC',
      asked: 35,
      edge: 30,
      under: { pressureAltitudeM: 1000 },
    });
    // At sea level alone the row goes far enough.
    expect(readTable(ragged, { pressureAltitudeM: 0, temperatureC: 35 })).toMatchObject({
      kind: 'value',
      value: 260,
    });
  });

  test('a limit met exactly is met', () => {
    expect(readTable(ragged, { pressureAltitudeM: 1000, temperatureC: 30 })).toMatchObject({
      kind: 'value',
      value: 310,
    });
  });

  test('a cell that the manual leaves blank is not filled in', () => {
    const blank = performanceTable(
      ['temperatureC'],
      [
        { at: { temperatureC: 0 }, value: 200 },
        { at: { temperatureC: 20 }, value: null },
      ],
    );
    expect(readTable(blank, { temperatureC: 10 })).toEqual({ kind: 'blankCell', at: { temperatureC: 20 } });
    expect(readTable(blank, { temperatureC: 0 })).toMatchObject({ kind: 'value', value: 200 });
  });
});

describe('typing', () => {
  test('a figure that gets better with heat is named', () => {
    const cells: TableCell[] = [
      { at: { temperatureC: 0 }, value: 200 },
      { at: { temperatureC: 20 }, value: 320 },
      { at: { temperatureC: 40 }, value: 260 },
    ];
    expect(tableOddities(cells, ['temperatureC'], 'less')).toEqual([
      {
        axis: 'temperatureC',
        easier: { at: { temperatureC: 20 }, value: 320 },
        harder: { at: { temperatureC: 40 }, value: 260 },
      },
    ]);
    expect(tableOddities(cells, ['temperatureC'], 'more')).toHaveLength(1);
    expect(tableOddities(CELLS, AXES, 'less')).toEqual([]);
  });

  test('a place on an axis of the table has to be given', () => {
    expect(() => readTable(ragged, { pressureAltitudeM: 0 })).toThrow('temperatureC: is missing');
  });
});

describe('for any place inside', () => {
  const inside = fc.record({
    massKg: fc.double({ min: 480, max: 600, noNaN: true }),
    pressureAltitudeM: fc.double({ min: 0, max: 1829, noNaN: true }),
    temperatureC: fc.double({ min: 0, max: 40, noNaN: true }),
  });

  test('the answer is the weighted mean of the cells it names, and their shares are one', () => {
    fc.assert(
      fc.property(inside, (place) => {
        const answer = readTable(full, place);
        if (answer.kind !== 'value') throw new Error(answer.kind);
        const shares = answer.cellsUsed.reduce((sum, cell) => sum + cell.weightRatio, 0);
        const mean = answer.cellsUsed.reduce((sum, cell) => sum + cell.weightRatio * cell.value, 0);
        expect(shares).toBeCloseTo(1, 9);
        expect(mean).toBeCloseTo(answer.value, 6);
      }),
    );
  });

  test('neither the order of typing nor the order of the axes matters for a full table', () => {
    const shuffled = performanceTable(['temperatureC', 'massKg', 'pressureAltitudeM'], CELLS.toReversed());
    fc.assert(
      fc.property(inside, (place) => {
        const [a, b] = [readTable(full, place), readTable(shuffled, place)];
        expect(a.kind === 'value' ? a.value : NaN).toBeCloseTo(b.kind === 'value' ? b.value : -1, 6);
      }),
    );
  });

  test('more heat never shortens', () => {
    fc.assert(
      fc.property(inside, fc.double({ min: 0, max: 1, noNaN: true }), (place, share) => {
        const hotter = { ...place, temperatureC: place.temperatureC + share * (40 - place.temperatureC) };
        const [a, b] = [readTable(full, place), readTable(full, hotter)];
        expect(b.kind === 'value' ? b.value : NaN).toBeGreaterThanOrEqual(
          (a.kind === 'value' ? a.value : NaN) - 1e-9,
        );
      }),
    );
  });
});
