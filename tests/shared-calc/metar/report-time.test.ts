import { expect, test } from 'vitest';
import { readReportTime, reportEpochS } from '../../../shared-calc/metar/report-time.ts';

const utc = (...parts: [number, number, number, number, number]) => Date.UTC(...parts) / 1000;

function at(group: string, aboutEpochS: number): string {
  const time = readReportTime(group);
  if (time === undefined) throw new Error(`${group} is no time`);
  return new Date(reportEpochS(time, aboutEpochS) * 1000).toISOString();
}

// By the calendar: the day of the month that lies nearest.
test.each([
  ['010053Z', utc(2012, 0, 1, 0, 53), '2012-01-01T00:53:00.000Z'],
  ['312353Z', utc(2012, 0, 1, 0, 53), '2011-12-31T23:53:00.000Z'],
  ['010053Z', utc(2012, 1, 29, 23, 53), '2012-03-01T00:53:00.000Z'],
  ['290000Z', utc(2012, 2, 1, 0, 0), '2012-02-29T00:00:00.000Z'],
  // No 29 February in 2013: 28 days ahead is nearer than 31 back.
  ['290000Z', utc(2013, 2, 1, 0, 0), '2013-03-29T00:00:00.000Z'],
  ['281200Z', utc(2013, 2, 2, 0, 0), '2013-02-28T12:00:00.000Z'],
  ['310000Z', utc(2013, 1, 20, 0, 0), '2013-01-31T00:00:00.000Z'],
])('%s near a known instant is the nearest such day', (group, aboutEpochS, expected) => {
  expect(at(group, aboutEpochS)).toBe(expected);
});
