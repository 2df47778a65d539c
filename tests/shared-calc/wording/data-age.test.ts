import { expect, test } from 'vitest';
import { dataAgeWords } from '../../../shared-calc/wording/data-age.ts';

test('the age of the data is one line of days, with what is missing among them', () => {
  expect(
    dataAgeWords({
      aeroplane: {
        weighedOn: '2026-03-12',
        gauges: [
          { name: 'left tank', adoptedOn: '2026-05-03' },
          { name: 'right tank', adoptedOn: null },
        ],
        tables: [
          {
            name: 'take-off',
            enteredOn: '2026-06-02',
            source: { from: 'manual', comparedOn: '2026-06-04' },
          },
          { name: 'climb', enteredOn: null, source: { from: 'manual', comparedOn: null } },
        ],
      },
      lastObservation: '2025-12-31',
    }),
  ).toBe(
    'weighed 12 March 2026; gauge calibrated 3 May 2026 (left tank); gauge not calibrated (right tank); take-off table entered 2 June 2026, compared with the manual 4 June 2026; climb table entered on a day that was not kept, not compared with the manual; last observation 31 December 2025',
  );
  const day = '2026-03-28';
  const source = { from: 'manual', comparedOn: day } as const;
  expect(
    dataAgeWords({
      aeroplane: {
        weighedOn: null,
        gauges: [
          { name: 'left tank', adoptedOn: day },
          { name: 'right tank', adoptedOn: day },
        ],
        tables: [
          { name: 'take-off', enteredOn: day, source },
          { name: 'climb', enteredOn: day, source },
        ],
      },
      lastObservation: '2025-12-31',
    }),
  ).toBe(
    'not weighed; gauge calibrated 28 March 2026; take-off and climb tables entered 28 March 2026, compared with the manual 28 March 2026; last observation 31 December 2025',
  );
  expect(dataAgeWords({ aeroplane: null, lastObservation: null })).toBe('not from observations');
  expect(dataAgeWords({ aeroplane: null, lastObservation: '2025-12-31' })).toBe(
    'last observation 31 December 2025',
  );
});
