import { expect, test } from 'vitest';
import { airOf } from '../../../../shared-calc/climate/departure/air-rows.ts';
import { climbRows, distanceRows } from '../../../../shared-calc/climate/departure/aeroplane-rows.ts';
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
  const distance = distanceRows(aeroplane, 'takeOff', runway)(air, wind);
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
  const distance = distanceRows(aeroplane, 'takeOff', runway)(air, wind);
  const climb = climbRows(aeroplane)(air, wind);
  expect([distance[2], distance[3], distance[4]]).toEqual([Infinity, NaN, NaN]);
  expect([climb[2], climb[3], Number.isFinite(climb[4])]).toEqual([-Infinity, NaN, true]);
});
