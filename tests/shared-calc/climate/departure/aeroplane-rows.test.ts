import { expect, test } from 'vitest';
import { airOf } from '../../../../shared-calc/climate/departure/air-rows.ts';
import {
  climbGradientRows,
  climbRows,
  distanceRows,
} from '../../../../shared-calc/climate/departure/aeroplane-rows.ts';
import { runwayWind } from '../../../../shared-calc/climate/departure/runway-wind.ts';
import { performanceBook } from '../../../../shared-calc/performance/departure-book.ts';
import { departureFigures } from '../../../../shared-calc/performance/departure-figures.ts';
import { examplePerformance } from '../../../main/example-performance.ts';

const record = examplePerformance('two-seater');
const book = performanceBook(record, { bestGlideMs: 28, bestGlideRatio: 9 });
const runway = { availableM: 900, surface: 'paved', slopeRatio: 0 } as const;
const aeroplane = { book, massKg: 600, elevationM: 300 };
const states = [
  { temperatureC: 20, dewPointC: 8, settingHpa: 1013.25, windFromDeg: 90, windMs: 4 },
  { temperatureC: 22, dewPointC: 9, settingHpa: 1002, windFromDeg: 270, windMs: 1 },
  { temperatureC: 58, dewPointC: 12, settingHpa: 1002, windFromDeg: 90, windMs: 4 },
  { temperatureC: 20, dewPointC: 8, settingHpa: NaN, windFromDeg: 90, windMs: 4 },
  { temperatureC: 20, dewPointC: 8, settingHpa: 1013.25, windFromDeg: 90, windMs: NaN },
];
const air = airOf(states, 300);
const wind = runwayWind(air, [90]);

// Altitudes by hand: at 1013.25 hPa the field's own 300 m; 27.4 ft lie in each hPa near 1 000 hPa and 300 m.
test('each row is what one departure in that air gives, lengthened by the 95 % of the reading', () => {
  const [calm, hot] = [300, 300 + (1013.25 - 1002) * 27.4 * 0.3048];
  const distance = distanceRows(aeroplane, 'takeOff', [runway])(air, wind);
  const climb = climbRows(aeroplane)(air, wind);
  [calm, hot].forEach((pressureAltitudeM, row) => {
    const state = states[row];
    if (state === undefined) throw new Error('no state');
    const one = departureFigures(book, {
      massKg: 600,
      pressureAltitudeM,
      temperatureC: state.temperatureC,
      dewPointC: state.dewPointC,
      headwindMs: row === 0 ? 4 : -1,
      runway,
    });
    const spread = 1 + 1.644854 * (record.takeOff?.readingSdRatio ?? NaN);
    // Two metres: the hand's pressure altitude is good to some 3 m.
    expect(Math.abs((distance[row] ?? NaN) - one.takeOff.requiredM * spread)).toBeLessThan(2);
    const lessSpread = 1 - 1.644854 * (record.climb?.readingSdRatio ?? NaN);
    expect(Math.abs((climb[row] ?? NaN) - one.climb.climbRateMs * lessSpread)).toBeLessThan(0.02);
  });
});

test('hotter than the table is a limit not met; missing pressure or wind is no observation; climb asks no wind', () => {
  const distance = distanceRows(aeroplane, 'takeOff', [runway])(air, wind);
  const climb = climbRows(aeroplane)(air, wind);
  expect([distance[2], distance[3], distance[4]]).toEqual([Infinity, NaN, NaN]);
  expect([climb[2], climb[3], Number.isFinite(climb[4])]).toEqual([-Infinity, NaN, true]);
});

test('a slope lengthens the take-off uphill by the published tenth for each 2 %, gives nothing downhill, and either end may count in calm air', () => {
  // UK CAA SafetySense Leaflet 7: uphill slope of 2 %, take-off distance by 1.1; the example's notes say nothing of slope.
  const around = airOf(
    [90, 270, 90].map((windFromDeg, row) => ({
      temperatureC: 20,
      dewPointC: 8,
      settingHpa: 1013.25,
      windFromDeg,
      windMs: row === 2 ? 0 : 4,
    })),
    300,
  );
  const blowing = runwayWind(around, [90, 270]);
  const from = (firstRatio: number) => [
    { ...runway, slopeRatio: firstRatio },
    { ...runway, slopeRatio: -firstRatio },
  ];
  const level = distanceRows(aeroplane, 'takeOff', from(0))(around, blowing);
  const sloped = distanceRows(aeroplane, 'takeOff', from(0.02))(around, blowing);
  const ratios = [0, 1, 2].map((row) => (sloped[row] ?? NaN) / (level[row] ?? NaN));
  expect(ratios[0]).toBeCloseTo(1.1, 9);
  expect(ratios[1]).toBeCloseTo(1, 9);
  expect(ratios[2]).toBeCloseTo(1.1, 9);
});

test('the gradient is that of one departure less the reading’s spread; without wind it is no observation', () => {
  const { climb } = record;
  if (climb === null) throw new Error('no climb');
  const withSpeed = performanceBook(
    { ...record, climb: { ...climb, rows: climb.rows.map((row) => ({ ...row, speedMs: 33 })) } },
    { bestGlideMs: 28, bestGlideRatio: 9 },
  );
  const gradient = climbGradientRows({ ...aeroplane, book: withSpeed })(air, wind);
  // Calm air counts: a headwind gains nothing. By hand from the rate: 33 m/s indicated are 33.7 m/s true at 300 m and 20 °C.
  const rate = climbRows({ ...aeroplane, book: withSpeed })(air, wind);
  const trueMs = 33 / Math.sqrt(1.163 / 1.225);
  expect(Math.abs((gradient[0] ?? NaN) - (rate[0] ?? NaN) / trueMs)).toBeLessThan(0.002);
  expect([gradient[2], gradient[3], gradient[4]]).toEqual([-Infinity, NaN, NaN]);
  // Without a printed speed there is no gradient: a limit on it is not met.
  const noSpeeds = performanceBook(
    { ...record, climb: { ...climb, rows: climb.rows.map((row) => ({ ...row, speedMs: null })) } },
    { bestGlideMs: 28, bestGlideRatio: 9 },
  );
  expect(climbGradientRows({ ...aeroplane, book: noSpeeds })(air, wind)[0]).toBe(-Infinity);
});
