import { expect, test } from 'vitest';
import {
  isolines,
  scaleOf,
  SHARE_SCALE,
  paddedSeason,
  sunPieces,
  tintOf,
  tooFewRuns,
} from '../../../../renderer/screens/weather/seasonPicture.ts';

const cells = Array.from({ length: 288 }, (_, cell): number | null => cell);

test('the day and the year come round at the edges of the picture', () => {
  const { values, columns, rows } = paddedSeason(cells);
  expect([columns, rows]).toEqual([26, 14]);
  const at = (row: number, column: number) => values[row * columns + column];
  // Inside, the cells themselves.
  expect(at(1, 1)).toBe(0);
  expect(at(12, 24)).toBe(287);
  // Before 00:00 stands 23:00, after 23:00 stands 00:00 of the same month.
  expect(at(1, 0)).toBe(23);
  expect(at(1, 25)).toBe(0);
  // Before January stands December.
  expect(at(0, 1)).toBe(11 * 24);
  expect(at(13, 1)).toBe(0);
});

test('a cell without a figure borrows its neighbour in the same month, and is drawn as too few', () => {
  const holed = cells.map((value, cell) => (cell === 24 + 5 || cell === 24 + 6 ? null : value));
  const { values } = paddedSeason(holed);
  expect(values[2 * 26 + 1 + 5]).toBe(24 + 4);
  expect(values[2 * 26 + 1 + 6]).toBe(24 + 7);
  expect(tooFewRuns(holed)).toEqual([{ month: 1, fromHour: 5, toHour: 7 }]);
  expect(tooFewRuns(cells)).toEqual([]);
});

test('isolines are the multiples of the step between least and most', () => {
  expect(isolines([2900, 4100, null], 500)).toEqual([3000, 3500, 4000]);
  expect(isolines([3000, 3400], 500)).toEqual([]);
  expect(isolines([-700, 200], 500)).toEqual([-500, 0]);
  expect(isolines([null, null], 500)).toEqual([]);
});

test('a tint is counted from the field, so that the same step looks the same everywhere', () => {
  const units = {
    altitude: 'ft',
    temperature: 'degC',
    speed: 'kt',
    distance: 'm',
    climbRate: 'ft/min',
  } as const;
  const tint = (value: number, elevation: number) =>
    tintOf(value, scaleOf('densityAltitude', units, elevation));
  expect(tint(4500, 4501)).toBe(2);
  expect(tint(5000, 4501)).toBe(3);
  expect(tint(0, 13)).toBe(2);
  expect(tint(-3000, 13)).toBe(0);
  expect(tint(20_000, 13)).toBe(10);
  // From -10 degC on one step is 5 degrees: 30 is the eighth after the first.
  expect(tintOf(30, scaleOf('temperature', units, 0))).toBe(9);
  expect(tintOf(100, SHARE_SCALE)).toBe(10);
  expect(tintOf(0, SHARE_SCALE)).toBe(0);
});

test('a line of daylight is cut where the sun does not cross and where it passes midnight', () => {
  const line = (hours: (number | null)[]) => hours.map((hour, i) => ({ monthOfYear: i, hour }));
  expect(sunPieces(line([6, 5, null, 5, 6])).map((piece) => piece.length)).toEqual([2, 2]);
  expect(sunPieces(line([23, 23.5, 24.5, 25]))).toEqual([
    [
      [23, 0],
      [23.5, 1],
    ],
    [
      [0.5, 2],
      [1, 3],
    ],
  ]);
});
