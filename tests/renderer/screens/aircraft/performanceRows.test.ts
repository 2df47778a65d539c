import { describe, expect, test } from 'vitest';
import { linesOf, massesOf, middlePlace } from '../../../../renderer/screens/aircraft/performanceLines.ts';
import { pastedRows, withPasted } from '../../../../renderer/screens/aircraft/pastedRows.ts';
import { columnsOf, tableUnits, type PrintedRow } from '../../../../renderer/screens/aircraft/printedRows.ts';
import { emptyPerformance } from '../../../../shared-calc/performance/records.ts';
import { toSi } from '../../../../shared-calc/units/convert.ts';
import { examplePerformance } from '../../../main/example-performance.ts';

const printed = { ...emptyPerformance('x').printed, distance: 'ft', temperature: 'degF' } as const;
const columns = columnsOf(
  'takeOff',
  ['massKg', 'pressureAltitudeM', 'temperatureC'],
  tableUnits('lb', printed),
);
const kg = (pounds: number) => toSi(pounds, 'lb');
const m = (feet: number) => toSi(feet, 'ft');

describe('rows pasted from a spreadsheet', () => {
  test('are read in the units of the manual, heads left out, merged places carried down, dashes left blank', () => {
    const text = [
      'Weight\tPress alt\tOAT\tRoll\t50 ft',
      '1320\t0\t32\t555\t1150',
      '\t\t86\t650\t1 340',
      '\t2000\t32\t640\t–',
      '',
    ].join('\r\n');
    const { rows, faults, hasHead } = pastedRows(text, columns);
    expect(faults).toEqual([]);
    expect(hasHead).toBe(true);
    expect(rows).toEqual([
      row(1320, 0, 32, 555, 1150),
      row(1320, 0, 86, 650, 1340),
      row(1320, 2000, 32, 640, null),
    ]);
  });

  test('are not taken while a cell cannot be read, is out of range or too many; each is named by line and column', () => {
    const text = ['1320\t0\t32\t555\t1150', '1320\t0\tcold\t555\t1150', '1320\t0\t32\t5550000\t1150\t7'].join(
      '\n',
    );
    const { faults } = pastedRows(text, columns);
    expect(faults).toHaveLength(3);
    expect(faults[0]).toMatch(/^Line 2, temperature: /);
    expect(faults[1]).toBe('Line 3 has 6 cells; the table has 5 columns.');
    expect(faults[2]).toMatch(/^Line 3, ground roll: 5550000 is outside .* to .*ft\.$/);
    expect(pastedRows('\t0\t32\t555\t1150', columns).faults).toEqual([
      'Line 1, mass: nothing stands here, nor in the row above.',
    ]);
    expect(pastedRows(' \n ', columns).faults).toEqual(['There is no row in it.']);
  });

  test('replace the rows of the same place and leave the others', () => {
    const before = [row(1320, 0, 32, 555, 1150), row(1320, 0, 86, 650, 1340)];
    expect(withPasted(before, [row(1320, 0, 86, 655, 1345)], columns)).toEqual([
      row(1320, 0, 32, 555, 1150),
      row(1320, 0, 86, 655, 1345),
    ]);
  });
});

describe('a table drawn for checking', () => {
  const { takeOff, landing } = examplePerformance('two-seater');
  const metric = tableUnits('kg', emptyPerformance('x').printed);

  test('has a line for each pressure altitude at the mass in hand, along the temperature', () => {
    const all = columnsOf('takeOff', ['massKg', 'pressureAltitudeM', 'temperatureC'], metric);
    const over = all.at(-1);
    if (over === undefined || takeOff === null) throw new Error('no table');
    const { along, by, lines } = linesOf(takeOff.rows, all, over, 600);
    expect([along.key, by?.key]).toEqual(['temperatureC', 'pressureAltitudeM']);
    // The blank row at 8 000 ft has no point and no line.
    expect(lines.map(({ key, points }) => [key, points.map(({ x, y, row: at }) => [x, y, at])])).toEqual([
      [
        0,
        [
          [0, 350, 2],
          [30, 410, 3],
        ],
      ],
      [
        1219.2,
        [
          [0, 480, 4],
          [25, 570, 5],
        ],
      ],
    ]);
    expect(massesOf(takeOff.rows)).toEqual([500, 600]);
    // Steps 0, 1 219.2, 2 438.4 m and 0, 20, 25, 30 °C.
    expect(middlePlace(takeOff.rows, all)).toEqual({
      massKg: 600,
      pressureAltitudeM: 609.6,
      temperatureC: 22.5,
    });
  });

  test('without temperatures has a line for each mass, along the pressure altitude', () => {
    const all = columnsOf('landing', ['massKg', 'pressureAltitudeM'], metric);
    const over = all.at(-1);
    if (over === undefined || landing === null) throw new Error('no table');
    const { along, by, lines } = linesOf(landing.rows, all, over, null);
    expect([along.key, by?.key, lines.length]).toEqual(['pressureAltitudeM', 'massKg', 1]);
  });
});

function row(
  pounds: number,
  feet: number,
  fahrenheit: number,
  rollFt: number,
  overFt: number | null,
): PrintedRow {
  return {
    asPrinted: false,
    massKg: kg(pounds),
    pressureAltitudeM: m(feet),
    temperatureC: toSi(fahrenheit, 'degF'),
    groundRollM: m(rollFt),
    overObstacleM: overFt === null ? null : m(overFt),
  };
}
