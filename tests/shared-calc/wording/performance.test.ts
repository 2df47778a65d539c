import { expect, test } from 'vitest';
import { performanceTable, readTable } from '../../../shared-calc/performance/performance-table.ts';
import type { TablePlace } from '../../../shared-calc/performance/performance-table.ts';
import { distanceSteps, noteChange } from '../../../shared-calc/performance/runway-distances.ts';
import { factorChange } from '../../../shared-calc/performance/published-factors.ts';
import { cellsUsedWords, distanceStepWords, tableNote } from '../../../shared-calc/wording/performance.ts';

const UNITS = { mass: 'lb', altitude: 'ft', temperature: 'degC', speed: 'kt' } as const;
const FT_M = 0.3048;
const table = performanceTable(
  ['pressureAltitudeM', 'temperatureC', 'headwindMs'],
  [
    { at: { pressureAltitudeM: 0, temperatureC: 0, headwindMs: 0 }, value: 200 },
    { at: { pressureAltitudeM: 0, temperatureC: 30, headwindMs: 0 }, value: 240 },
    { at: { pressureAltitudeM: 2000 * FT_M, temperatureC: 0, headwindMs: 0 }, value: 230 },
    { at: { pressureAltitudeM: 2000 * FT_M, temperatureC: 30, headwindMs: 0 }, value: null },
  ],
);
const note = (place: TablePlace) =>
  tableNote(readTable(table, { headwindMs: 0, ...place }), UNITS).replaceAll('\u00a0', ' ');

test('inside the table nothing has to be added', () => {
  expect(note({ pressureAltitudeM: 0, temperatureC: 12 })).toBe('');
});

test('colder, lower and more headwind say that nothing better is promised', () => {
  expect(note({ pressureAltitudeM: -100 * FT_M, temperatureC: -5, headwindMs: (5 * 1852) / 3600 })).toBe(
    'No better than this: the table begins at 0 ft, −100 ft was asked; the table begins at 0 °C, −5 °C was asked; ' +
      'the table ends at 0 kt headwind, 5 kt headwind was asked.',
  );
});

test('hotter, and a blank cell, are no figure and count as a limit not met', () => {
  expect(note({ pressureAltitudeM: 0, temperatureC: 35 })).toBe(
    'No figure: 35 °C is hotter than the table goes, 30 °C at 0 ft. Counted as a limit that is not met.',
  );
  expect(note({ pressureAltitudeM: 2000 * FT_M, temperatureC: 12 })).toBe(
    'No figure: the manual leaves the cell at 2000 ft, 30 °C, 0 kt headwind blank. Counted as a limit that is not met.',
  );
  expect(note({ pressureAltitudeM: 0, temperatureC: 0, headwindMs: (-3 * 1852) / 3600 })).toMatch(
    /3 kt tailwind is more tailwind than the table goes, 0 kt headwind at 0 ft, 0 °C/,
  );
});

test('the cells used are named with their share', () => {
  const answer = readTable(table, { pressureAltitudeM: 0, temperatureC: 7.5, headwindMs: 0 });
  if (answer.kind !== 'value') throw new Error(answer.kind);
  expect(
    cellsUsedWords(answer.cellsUsed, UNITS, (value) => `${String(value)} m`).map((text) =>
      text.replaceAll('\u00a0', ' '),
    ),
  ).toEqual(['200 m at 0 ft, 0 °C, 0 kt headwind (75 %)', '240 m at 0 ft, 30 °C, 0 kt headwind (25 %)']);
});

test('each step names its factor, its kind and its source', () => {
  const start = { groundRollM: 200, overObstacleM: 400 };
  const steps = distanceSteps(start, [
    noteChange(
      { name: 'dry grass', per: { of: 'surface' }, changeRatio: 0.2, shareOf: 'groundRoll' },
      1,
      start,
      'figure 5-4',
    ),
    factorChange('slope', 'takeOff', 0.02, []),
    factorChange('wetPaved', 'takeOff', 1, []),
  ]);
  expect(steps.map((step) => distanceStepWords(step, { distance: 'm' }).replaceAll('\u00a0', ' '))).toEqual([
    "dry grass: + 40 m (the manual's note; figure 5-4)",
    'slope, uphill at take-off or downhill at landing: × 1.10 (published factor; UK CAA SafetySense Leaflet 7)',
    'wet paved surface: no change (published factor; UK CAA SafetySense Leaflet 7)',
  ]);
});
