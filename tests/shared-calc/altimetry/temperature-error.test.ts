import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  coldErrorByFormulaM,
  coldErrorByTableM,
  temperatureErrorM,
} from '../../../shared-calc/altimetry/temperature-error.ts';

const FT = 0.3048;
const HEIGHTS_FT = [200, 300, 400, 500, 600, 700, 800, 900, 1000, 1500, 2000, 3000, 4000, 5000];

// The table was made from the formula with the airport at sea level, rounded up to the next 10 ft (so the note of the
// published cases); the formula is Doc 8168's, so this checks two publications against each other.
test('every printed correction is the formula at sea level, rounded to the next 10 ft or the nearest', () => {
  for (const temperatureC of [10, 0, -10, -20, -30, -40, -50]) {
    for (const heightFt of HEIGHTS_FT) {
      const printedFt = coldErrorByTableM(temperatureC, heightFt * FT) / FT;
      const formulaFt = coldErrorByFormulaM(temperatureC, heightFt * FT, 0) / FT;
      expect(Math.round(printedFt / 10) * 10).toBeCloseTo(printedFt, 6);
      expect(printedFt - formulaFt).toBeGreaterThan(-5);
      expect(printedFt - formulaFt).toBeLessThan(15);
    }
  }
});

// ICAO Doc 8168's formula worked by hand: 1000 (15 + 20) / (273 - 20 - 0.00325 * 1000) = 35,000 / 249.75; from a station at
// 1,000 m at -26.5 degC the air is the same at sea level: 35,000 / (253 - 6.5).
test('the formula gives 140.14 m and 141.99 m', () => {
  expect(coldErrorByFormulaM(-20, 1000, 0)).toBeCloseTo(140.1401, 3);
  expect(coldErrorByFormulaM(-26.5, 1000, 1000)).toBeCloseTo(141.9878, 3);
});

test('between its rows and columns the table is linear', () => {
  // Midway of four entries: -20 and -30 degC, 1,000 and 1,500 ft: 140, 210, 190, 280.
  expect(coldErrorByTableM(-25, 1250 * FT) / FT).toBeCloseTo((140 + 210 + 190 + 280) / 4, 9);
});

/** The true thickness by summing thin layers of the hydrostatic equation: an independent calculation. */
function summedErrorM(temperatureC: number, heightM: number, elevationM: number): number {
  const differenceK = temperatureC - (15 - 0.0065 * elevationM);
  let trueM = 0;
  const layers = 20_000;
  for (let i = 0; i < layers; i += 1) {
    const standardK = 288.15 - 0.0065 * (elevationM + (heightM * (i + 0.5)) / layers);
    // The same pressures are passed in standard air in heightM / layers; the thickness is proportional to temperature.
    trueM += ((heightM / layers) * (standardK + differenceK)) / standardK;
  }
  return heightM - trueM;
}

test.each([
  [-30, 1500, 0],
  [-12, 912, 977],
  [35, 1200, 1655],
  [-55, 3000, 200],
])(
  'by physics at %d degC, %d m above a station at %d m: as the sum of thin layers',
  (t, heightM, elevationM) => {
    expect(temperatureErrorM(t, heightM, elevationM)).toBeCloseTo(summedErrorM(t, heightM, elevationM), 4);
  },
);

// ICAO Doc 8168: 4 % of the height for each 10 degC below standard, "valid to -15 degC".
test('near standard the error is about 4 % of the height per 10 degC, the rule of thumb of Doc 8168', () => {
  expect(temperatureErrorM(5, 1000, 0) / 1000).toBeCloseTo(0.036, 2);
  expect(temperatureErrorM(-5, 1000, 0) / 1000).toBeCloseTo(0.07, 2);
});

test('standard air has no error, warmer air makes the aeroplane higher than it reads, colder lower', () => {
  expect(temperatureErrorM(15, 1000, 0)).toBe(0);
  fc.assert(
    fc.property(
      fc.double({ min: -60, max: 49, noNaN: true }),
      fc.double({ min: 10, max: 3000, noNaN: true }),
      fc.double({ min: 0, max: 3000, noNaN: true }),
      (t, heightM, elevationM) => {
        expect(temperatureErrorM(t + 1, heightM, elevationM)).toBeLessThan(
          temperatureErrorM(t, heightM, elevationM),
        );
        expect(coldErrorByFormulaM(t + 1, heightM, elevationM)).toBeLessThan(
          coldErrorByFormulaM(t, heightM, elevationM),
        );
      },
    ),
    { seed: 51 },
  );
});
