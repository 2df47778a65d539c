import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isWellFormed, readReport } from '../../../shared-calc/metar/report.ts';
import { toSi } from '../../../shared-calc/units/convert.ts';

// Decoded by hand from the rules of FMH-1 chapter 12 and WMO-No. 306 FM 15; the texts are from NOAA's record of Denver
// International (station 725650-03017, 2012 and 2013, a work of the US government), with the slips that they came with.

test('a report without a blank before the altimeter and without a dew point keeps its tenths', () => {
  const report = readReport(
    'KDEN 120753Z 16018KT 10SM BKN140 09/A2980 RMK AO2 PK WND 16026/0715 WSHFT 0640 TSE0655RAE00 SLP031 P0000 T0094 $',
  );
  expect(report).toMatchObject({
    temperatureC: 9.4,
    dewPointC: null,
    temperatureIsWhole: false,
    malformed: [],
  });
  expect(report.altimeter?.printed).toBe(29.8);
  expect(report.seaLevelPressureHpa).toBe(1003.1);
});

test('a wind that is only its unit is missing, not calm', () => {
  const report = readReport(
    'METAR KDEN 140753Z      KT 10SM BKN230 06/M04 A3024 RMK AO2 SLP209 T00611044 $=',
  );
  expect(report.wind).toBeNull();
  expect(report).toMatchObject({ temperatureC: 6.1, dewPointC: -4.4 });
});

test('calm, variable and missing winds are three things', () => {
  expect(readReport('KXYZ 010000Z 00000KT').wind).toMatchObject({
    fromDeg: null,
    variable: false,
    speed: { speedMs: 0 },
  });
  expect(readReport('KXYZ 010000Z VRB04KT').wind).toMatchObject({ fromDeg: null, variable: true });
  expect(readReport('KXYZ 010000Z /////KT').wind).toMatchObject({
    fromDeg: null,
    variable: false,
    speed: null,
  });
  expect(readReport('KXYZ 010000Z 36010KT').wind?.fromDeg).toBe(360);
  // North is coded 360; 000 with a speed can only mean it. A direction without speed is a direction all the same.
  expect(readReport('KXYZ 010000Z 00005KT').wind?.fromDeg).toBe(360);
  expect(readReport('KXYZ 010000Z 09000KT').wind?.fromDeg).toBe(90);
});

test('a report cut off after the visibility gives what it has', () => {
  const report = readReport('KDEN 040725Z 34018KT 1SM RVRNO RMK');
  expect(report.wind?.speed?.speedMs).toBeCloseTo(toSi(18, 'kt'), 9);
  expect(report).toMatchObject({ temperatureC: null, settingHpa: null, station: 'KDEN' });
});

test('a layer that was cut in typing is malformed, and the rest of the report stands', () => {
  const report = readReport(
    'SPECI KDEN 190002Z 27007KT 10SM TS FEW040 BKN080CB BKN1 20/09 A2990 RMK AO2 TSB00 =',
  );
  expect(report.malformed).toEqual(['BKN1']);
  expect(isWellFormed(report)).toBe(false);
  expect(report).toMatchObject({
    type: 'SPECI',
    temperatureC: 20,
    temperatureIsWhole: true,
    stationType: 'AO2',
  });
});

test('the runway visual range and the runway state are not temperatures', () => {
  const report = readReport(
    'KXYZ 010000Z 35012KT 1/2SM R35L/5000VP6000FT R06L/590230 M02/M03 A3011; RMK AO1',
  );
  expect(report).toMatchObject({ temperatureC: -2, dewPointC: -3, malformed: [], stationType: 'AO1' });
  expect(report.altimeter?.printed).toBe(30.11);
});

test('what follows a trend word is a forecast and is not read', () => {
  const report = readReport('EGXX 010000Z 24004MPS 9999 SCT010 17/16 Q1018 TEMPO 30015MPS 0800 OVC002');
  expect(report.wind?.fromDeg).toBe(240);
  expect(report.ceilingM).toBeNull();
  expect(report.visibility).toEqual({ metres: 10_000, bound: 'more' });
});

// From a year of Kennedy (JFK, 28 April 2020): typed by hand, and nothing in the report says which of the two is meant.
test('a temperature that body and remarks give ten degrees apart is missing, and the dew point on which they agree stands', () => {
  const report = readReport('KJFK 281851Z 30013G19KT 10SM FEW065 FEW250 17/00 A3008 RMK SLP187 T00720000');
  expect(report).toMatchObject({ temperatureC: null, dewPointC: 0, malformed: ['T00720000'] });
});

// WMO-No. 306 FM 15 (from memory): an automatic station codes what it could not observe by slashes.
test('groups of slashes before the temperature are other missing groups', () => {
  const report = readReport('METAR EGXX 010000Z AUTO /////KT //// // ////// 17/16 Q1018=');
  expect(report).toMatchObject({
    temperatureC: 17,
    dewPointC: 16,
    settingHpa: 1018,
    malformed: [],
    visibility: null,
  });
  expect(readReport('METAR EGXX 010000Z AUTO 24004KT //// // ////// ///// Q////')).toMatchObject({
    temperatureC: null,
    dewPointC: null,
    settingHpa: null,
    malformed: [],
  });
  expect(readReport('KXYZ 010000Z / /// 17/M16 A2992')).toMatchObject({ temperatureC: 17, dewPointC: -16 });
});

test('text doubled after the remarks changes nothing', () => {
  const once = 'KDEN 010053Z 33012KT 10SM FEW080 M01/M12 A3020 RMK AO2 SLP217 T10061122';
  expect(readReport(`${once} ${once}`)).toEqual(readReport(once));
});

// FMH-1 prints hundreds of hPa nowhere: the altimeter setting says which is meant.
test('of two pressures that an SLP group can mean the one near the altimeter setting counts', () => {
  expect(readReport('KXYZ 010000Z A3101 RMK SLP512').seaLevelPressureHpa).toBe(1051.2);
  expect(readReport('KXYZ 010000Z A2810 RMK SLP490').seaLevelPressureHpa).toBe(949);
  expect(readReport('KXYZ 010000Z RMK SLP490').seaLevelPressureHpa).toBe(1049);
  expect(readReport('KXYZ 010000Z RMK SLPNO').seaLevelPressureHpa).toBeNull();
});

test('a setting says by how much it may have been rounded down: a hectopascal or a hundredth of an inch', () => {
  expect(readReport('EGXX 010000Z Q1013').altimeter?.truncatedByHpa).toBe(1);
  expect(readReport('KXYZ 010000Z A2992').altimeter?.truncatedByHpa).toBeCloseTo(0.3386389, 7);
});

test.each([
  'KXYZ 320000Z 18010KT',
  'KXYZ 012460Z 18010KT',
  'KXYZ 010000Z 36110KT',
  'KXYZ 010000Z 28010KT 280V361',
  'KXYZ 010000Z 28010KT 361V010',
  'KXYZ 010000Z 18020G10KT',
  'KXYZ 010000Z 180X10KT 1/2/3SM 18/1',
  'KXYZ 010000Z A0992',
  'KXYZ 010000Z Q2992',
  'KXYZ 010000Z 18/120',
  'KXYZ 010000Z 3/2SM',
])('%s holds a group that cannot be: nothing is guessed from it', (text) => {
  const report = readReport(text);
  expect(report.malformed.length > 0 || report.time === null).toBe(true);
  expect(isWellFormed(report)).toBe(false);
  expect(report.settingHpa).toBeNull();
  expect(report.temperatureC).toBeNull();
});

test('a report that does not name its station has none, and its other groups stand', () => {
  expect(readReport('010000Z 18010KT 18/12 A2992')).toMatchObject({
    station: null,
    temperatureC: 18,
    settingHpa: expect.closeTo(1013.2, 1) as number,
  });
});

test('tenths that round to another whole degree by one are still the same temperature', () => {
  expect(readReport('KXYZ 010000Z 18/12 RMK T01700120')).toMatchObject({ temperatureC: 17, malformed: [] });
  expect(readReport('KXYZ 010000Z 18/12 RMK T01690120')).toMatchObject({ temperatureC: null });
});

test('what is no report gives neither station nor time, and never an error', () => {
  expect(isWellFormed(readReport(''))).toBe(false);
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...'0123456789MATQSLPRKVGZ/ =')), (characters) => {
      const report = readReport(characters.join(''));
      for (const value of [report.temperatureC, report.settingHpa, report.seaLevelPressureHpa]) {
        expect(value === null || Number.isFinite(value)).toBe(true);
      }
    }),
    { seed: 71, numRuns: 3000 },
  );
});

test('every temperature in tenths that can be coded is read back', () => {
  const coded = (tenths: number) => `${tenths < 0 ? '1' : '0'}${String(Math.abs(tenths)).padStart(3, '0')}`;
  const whole = (tenths: number) => {
    const degrees = Math.floor(Math.abs(tenths) / 10);
    return `${tenths < 0 ? 'M' : ''}${String(degrees).padStart(2, '0')}`;
  };
  for (let tenths = -450; tenths <= 500; tenths += 1) {
    const text = `KXYZ 010000Z ${whole(tenths)}/${whole(-450)} RMK T${coded(tenths)}${coded(-450)}`;
    expect(readReport(text)).toMatchObject({ temperatureC: tenths / 10 || 0, dewPointC: -45, malformed: [] });
  }
});
