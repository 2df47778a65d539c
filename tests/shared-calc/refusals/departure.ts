import {
  climbGradientRows,
  climbRows,
  distanceRows,
} from '../../../shared-calc/climate/departure/aeroplane-rows.ts';
import { airAt, airOf } from '../../../shared-calc/climate/departure/air-rows.ts';
import { daylightSpan, timesInDaylight } from '../../../shared-calc/climate/departure/daylight-span.ts';
import {
  asksAir,
  rowsOfLimits,
  type DepartureLimits,
} from '../../../shared-calc/climate/departure/departure-limits.ts';
import {
  departureWindows,
  fallsTo,
  roundedInward,
  shareAt,
  stretchesAbove,
} from '../../../shared-calc/climate/departure/departure-windows.ts';
import { hourOdds, widenedDays } from '../../../shared-calc/climate/departure/hour-odds.ts';
import { judge } from '../../../shared-calc/climate/departure/judge.ts';
import { hoursOf, planDeparture } from '../../../shared-calc/climate/departure/plan-departure.ts';
import { resampledShares } from '../../../shared-calc/climate/departure/resampled-shares.ts';
import { rowsAround } from '../../../shared-calc/climate/departure/rows-around.ts';
import { runwayWind } from '../../../shared-calc/climate/departure/runway-wind.ts';
import { takeAlong } from '../../../shared-calc/climate/departure/take-along.ts';
import { daysOfHour, heaviestKg, shareMeeting } from '../../../shared-calc/climate/departure/one-hour.ts';
import {
  dateAtPlace,
  dateRuns,
  placeInYear,
  runsToTell,
  worksByDate,
  yearOfHour,
} from '../../../shared-calc/climate/departure/through-the-year.ts';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import { examplePerformance } from '../../main/example-performance.ts';
import type { RoomRefusals } from './table.ts';

const air = airOf([{ temperatureC: 20, dewPointC: 10, settingHpa: 1013, windFromDeg: 90, windMs: 3 }], 500);
const noRow = airOf([], 500);
const hour = Int32Array.of(438_000);
const date = { month: 7, day: 19 };
const rows = rowsAround(hour, date);
const judged = { observed: Uint8Array.of(1), failed: Uint8Array.of(0) };
const asked: DepartureLimits = {
  densityAltitudeMostM: 2000,
  takeOff: null,
  landing: null,
  climbRate: null,
  climbGradient: null,
  crosswindMostMs: null,
  tailwindMostMs: null,
  gustMostMs: null,
};
const column = () => Float64Array.of(1);
const zone = { startMinutes: [0], offsetMinutes: [0] };
const place = { latitudeDeg: 40, longitudeDeg: 0 };
const day = { fromH: 6, toH: 20, isAllDay: false };
const site = { elevationM: 500, headingsDeg: [90] };
const steps = { temperaturesC: [20], settingsHpa: [1013] };
const local = (beforeSunriseS: number, afterSunsetS: number) =>
  ({ rule: 'local', beforeSunriseS, afterSunsetS }) as const;
const question = {
  date,
  share: 0.9,
  ...site,
  limits: asked,
  daylight: day,
  times: { fromH: 6, toH: 18 },
  steps,
};
const book = performanceBook(examplePerformance('two-seater'), { bestGlideMs: 28, bestGlideRatio: 9 });
const aeroplane = { book, massKg: 500, elevationM: 500 };
const runway = { availableM: 700, surface: 'paved', slopeRatio: 0 } as const;
const shares = new Array<number>(24).fill(0.8);

export const refusals: RoomRefusals = {
  functions: [
    {
      of: airOf,
      ranges: [
        {
          field: 'stationElevationM',
          min: -500,
          max: 6000,
          call: (v) =>
            airOf([{ temperatureC: 20, dewPointC: 10, settingHpa: 1013, windFromDeg: 0, windMs: 0 }], v),
        },
      ],
    },
    {
      of: distanceRows,
      ranges: [
        {
          field: 'massKg',
          min: 50,
          max: 5000,
          call: (v) => distanceRows({ ...aeroplane, massKg: v }, 'takeOff', [runway]),
        },
        {
          field: 'elevationM',
          min: -500,
          max: 6000,
          call: (v) => distanceRows({ ...aeroplane, elevationM: v }, 'takeOff', [runway]),
        },
      ],
      refused: [
        { when: 'no end', call: () => distanceRows(aeroplane, 'takeOff', []), sentence: /at least one end/ },
      ],
    },
    {
      of: climbRows,
      ranges: [
        { field: 'massKg', min: 50, max: 5000, call: (v) => climbRows({ ...aeroplane, massKg: v }) },
        {
          field: 'elevationM',
          min: -500,
          max: 6000,
          call: (v) => climbRows({ ...aeroplane, elevationM: v }),
        },
      ],
    },
    {
      of: climbGradientRows,
      ranges: [
        { field: 'massKg', min: 50, max: 5000, call: (v) => climbGradientRows({ ...aeroplane, massKg: v }) },
        {
          field: 'elevationM',
          min: -500,
          max: 6000,
          call: (v) => climbGradientRows({ ...aeroplane, elevationM: v }),
        },
      ],
    },
    {
      of: rowsAround,
      ranges: [
        { field: 'month', min: 1, max: 12, call: (v) => rowsAround(hour, { month: v, day: 1 }) },
        { field: 'day', min: 1, max: 31, call: (v) => rowsAround(hour, { month: 7, day: v }) },
        { field: 'halfDays', min: 0, max: 21, call: (v) => rowsAround(hour, date, v) },
      ],
      refused: [
        {
          when: 'a day that no such month has',
          call: () => rowsAround(hour, { month: 2, day: 30 }),
          sentence: /allowed 1 to 29/,
        },
      ],
    },
    {
      of: runwayWind,
      ranges: [{ field: 'headingsDeg[0]', min: 0, max: 360, call: (v) => runwayWind(air, [v]) }],
      refused: [{ when: 'no end', call: () => runwayWind(air, []), sentence: /at least one end/ }],
    },
    {
      of: rowsOfLimits,
      ranges: [
        {
          field: 'densityAltitude',
          min: -2000,
          max: 6000,
          call: (v) => rowsOfLimits(air, [90], { ...asked, densityAltitudeMostM: v }),
        },
        {
          field: 'crosswind',
          min: 0,
          max: 30,
          call: (v) => rowsOfLimits(air, [90], { ...asked, crosswindMostMs: v }),
        },
        {
          field: 'tailwind',
          min: 0,
          max: 30,
          call: (v) => rowsOfLimits(air, [90], { ...asked, tailwindMostMs: v }),
        },
        { field: 'gust', min: 0, max: 60, call: (v) => rowsOfLimits(air, [90], { ...asked, gustMostMs: v }) },
        {
          field: 'takeOff',
          min: 1,
          max: 10_000,
          call: (v) => rowsOfLimits(air, [90], { ...asked, takeOff: { mostM: v, distanceM: column } }),
        },
        {
          field: 'climbRate',
          min: 0,
          max: 30,
          call: (v) => rowsOfLimits(air, [90], { ...asked, climbRate: { leastMs: v, rateMs: column } }),
        },
        {
          field: 'climbGradient',
          min: 0,
          max: 0.5,
          call: (v) =>
            rowsOfLimits(air, [90], { ...asked, climbGradient: { leastRatio: v, gradientRatio: column } }),
        },
      ],
    },
    {
      of: judge,
      refused: [
        { when: 'no limit', call: () => judge([]), sentence: /1 to 8 can be judged/ },
        {
          when: 'columns of different lengths',
          call: () =>
            judge([
              { name: 'takeOff', side: 'most', limit: 1, value: new Float64Array(1) },
              { name: 'gust', side: 'most', limit: 1, value: new Float64Array(2) },
            ]),
          sentence: /has 2 rows; 1 were expected/,
        },
      ],
    },
    {
      of: hourOdds,
      ranges: [{ field: 'halfDays', min: 0, max: 21, call: (v) => hourOdds(rows, judged, 1, v) }],
    },
    {
      of: widenedDays,
      ranges: [
        { field: 'prob', min: 0.5, max: 0.99, call: (v) => widenedDays(rows, judged.observed, [], v) },
      ],
    },
    {
      of: resampledShares,
      ranges: [
        { field: 'drawCount', min: 100, max: 10_000, call: (v) => resampledShares(rows, judged, 7, v) },
        { field: 'seed', min: 0, max: 2 ** 32 - 1, call: (v) => resampledShares(rows, judged, 7, 100, v) },
      ],
    },
    {
      of: daylightSpan,
      ranges: [
        {
          field: 'localDay',
          min: -24_837,
          max: 47_481,
          call: (v) => daylightSpan(v, place, zone, { rule: 'sunset' }),
        },
        {
          field: 'latitudeDeg',
          min: -90,
          max: 90,
          call: (v) => daylightSpan(20_000, { ...place, latitudeDeg: v }, zone, { rule: 'sunset' }),
        },
        {
          field: 'beforeSunriseS',
          min: 0,
          max: 10_800,
          call: (v) => daylightSpan(20_000, place, zone, local(v, 0)),
        },
        {
          field: 'afterSunsetS',
          min: 0,
          max: 10_800,
          call: (v) => daylightSpan(20_000, place, zone, local(0, v)),
        },
      ],
    },
    {
      of: timesInDaylight,
      ranges: [
        {
          field: 'flightS',
          min: 0,
          max: 86_400,
          call: (v) => timesInDaylight(day, { phase: 'take-off', flightS: v, reserveS: 0 }),
        },
        {
          field: 'reserveS',
          min: 0,
          max: 86_400,
          call: (v) => timesInDaylight(day, { phase: 'landing', flightS: 0, reserveS: v }),
        },
      ],
    },
    {
      of: stretchesAbove,
      ranges: [{ field: 'share', min: 0, max: 1, call: (v) => stretchesAbove(shares, v, day) }],
    },
    {
      of: departureWindows,
      ranges: [
        {
          field: 'share',
          min: 0,
          max: 1,
          call: (v) => departureWindows(shares, v, day, { fromH: 6, toH: 18 }),
        },
      ],
    },
    { of: fallsTo, ranges: [{ field: 'share', min: 0, max: 1, call: (v) => fallsTo(shares, v, 9, 20) }] },
    {
      of: takeAlong,
      refused: [
        { when: 'no row', call: () => takeAlong(noRow, steps, site, asked), sentence: /at least one row/ },
        {
          when: 'no step of temperature',
          call: () => takeAlong(air, { ...steps, temperaturesC: [] }, site, asked),
          sentence: /temperaturesC.length is 0; allowed 1 to 400/,
        },
      ],
    },
    {
      of: daysOfHour,
      ranges: [
        {
          field: 'hour',
          min: 0,
          max: 23,
          call: (v) => daysOfHour({ ...air, localHour: hour }, rows, v, 7),
        },
      ],
    },
    { of: yearOfHour, ranges: [{ field: 'hour', min: 0, max: 23, call: (v) => yearOfHour(hour, v) }] },
    {
      of: shareMeeting,
      ranges: [{ field: 'prob', min: 0.5, max: 0.99, call: (v) => shareMeeting(air, [90], asked, v) }],
    },
    {
      of: heaviestKg,
      ranges: [
        {
          field: 'leastKg',
          min: 50,
          max: 5000,
          call: (v) => heaviestKg(air, [90], () => asked, 0.9, v, 5000),
        },
        {
          field: 'mostKg',
          min: 300,
          max: 5000,
          call: (v) => heaviestKg(air, [90], () => asked, 0.9, 300, v),
        },
      ],
    },
    {
      of: worksByDate,
      ranges: [{ field: 'prob', min: 0.5, max: 0.99, call: (v) => worksByDate(Int16Array.of(0), judged, v) }],
    },
    {
      of: planDeparture,
      ranges: [
        {
          field: 'prob',
          min: 0.5,
          max: 0.99,
          call: (v) => planDeparture({ ...air, localHour: hour }, { ...question, share: v }),
        },
      ],
    },
  ],
  takeNoNumber: [
    [airAt, 'picks rows by their places'],
    [asksAir, 'looks at which limits are asked'],
    [shareAt, 'any time of day is a place on the clock'],
    [roundedInward, 'rounds what the windows give'],
    [hoursOf, 'any span of the clock has its full hours'],
    [dateRuns, 'joins what worksByDate gives'],
    [runsToTell, 'joins what dateRuns gives'],
    [placeInYear, 'takes a date of the calendar'],
    [dateAtPlace, 'takes a place that worksByDate gives'],
  ],
};
