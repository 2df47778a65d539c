import { changeOverYears } from '../../../shared-calc/climate/through-years.ts';
import { civilDate, dayNumber } from '../../../shared-calc/climate/civil-date.ts';
import {
  dayCounts,
  dayQuantiles,
  daysBeyond,
  dayWindow,
  dayWorst,
} from '../../../shared-calc/climate/day-window.ts';
import { coverageOf } from '../../../shared-calc/climate/coverage.ts';
import { hindcast, restOfDay, type CourseOfDay } from '../../../shared-calc/climate/days-alike.ts';
import { daysNeeded } from '../../../shared-calc/climate/days-needed.ts';
import {
  fieldDensityAltitudeM,
  fieldSettingHpa,
  pressureFrom,
  seaLevelBandM,
} from '../../../shared-calc/climate/field-density-altitude.ts';
import { fieldDensityAltitudeInto } from '../../../shared-calc/climate/field-density-altitude-into.ts';
import { nearDate } from '../../../shared-calc/climate/near-date.ts';
import { hourReports } from '../../../shared-calc/climate/hour-reports.ts';
import { quantileReordering, quantilesOf } from '../../../shared-calc/climate/quantile.ts';
import { beyondFrom, finiteOrNull, probBelow, worstOf } from '../../../shared-calc/climate/safe-side.ts';
import {
  seasonBeyond,
  seasonCells,
  seasonOrder,
  seasonQuantiles,
  seasonWorst,
} from '../../../shared-calc/climate/season.ts';
import { daylightOf, sunLines } from '../../../shared-calc/climate/sun-lines.ts';
import { offsetAtMinutes, requireZone, type ZoneOffsets } from '../../../shared-calc/climate/zone-offsets.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const oneHour = () => Float64Array.of(10);
const utc: ZoneOffsets = { startMinutes: [0], offsetMinutes: [0] };
const backwards: ZoneOffsets = { startMinutes: [5, 5], offsetMinutes: [0, 60] };
const uneven: ZoneOffsets = { startMinutes: [0], offsetMinutes: [] };
const noCells = seasonCells(seasonOrder(new Int32Array(0)), new Float64Array(0));
const noHours = (month: number, day: number, prob: number) =>
  dayWindow(new Int32Array(0), new Float64Array(0), { month, day }, [prob]);
const noDays = noHours(6, 19, 0.5);
const course = (hours: number): CourseOfDay => ({
  year: 2020,
  daysOff: 0,
  air: { temperatureC: 20, dewPointC: 8, settingHpa: 1015 },
  figure: new Float64Array(hours),
});
const morning = { temperatureC: 20, dewPointC: 8, settingHpa: 1015 };
const air = {
  temperatureC: 30,
  dewPointC: 10,
  stationPressureHpa: NaN,
  altimeterSettingHpa: 1013,
  seaLevelPressureHpa: NaN,
};
const share = { min: 0.5, max: 0.99 };
const elevation = { min: -500, max: 6000 };

export const refusals: RoomRefusals = {
  functions: [
    byPosition(daysNeeded, [{ field: 'prob', ...share, good: 0.9 }]),
    byPosition(seaLevelBandM, [{ field: 'stationElevationM', ...elevation, good: 0 }]),
    {
      of: fieldDensityAltitudeM,
      ranges: [
        { field: 'stationElevationM', ...elevation, call: (v) => fieldDensityAltitudeM(air, v, 0) },
        { field: 'fieldElevationM', ...elevation, call: (v) => fieldDensityAltitudeM(air, 0, v) },
      ],
    },
    {
      of: fieldSettingHpa,
      ranges: [{ field: 'stationElevationM', ...elevation, call: (v) => fieldSettingHpa(air, v) }],
    },
    {
      of: quantileReordering,
      ranges: [{ field: 'prob', min: 0, max: 1, call: (v) => quantileReordering(Float64Array.of(1, 2), v) }],
      refused: [
        {
          when: 'no values',
          call: () => quantileReordering(new Float64Array(0), 0.5),
          sentence: /at least one value/,
        },
      ],
    },
    {
      of: quantilesOf,
      ranges: [{ field: 'prob', min: 0, max: 1, call: (v) => quantilesOf(Float64Array.of(1, 2), [v]) }],
      refused: [
        {
          when: 'no values',
          call: () => quantilesOf(new Float64Array(0), [0.5]),
          sentence: /at least one value/,
        },
      ],
    },
    {
      of: fieldDensityAltitudeInto,
      ranges: [
        {
          field: 'elevationM',
          ...elevation,
          call: (v) => {
            fieldDensityAltitudeInto(oneHour(), oneHour(), oneHour(), oneHour(), v);
          },
        },
      ],
    },
    {
      of: seasonQuantiles,
      ranges: [{ field: 'prob', ...share, call: (v) => seasonQuantiles(noCells, [v]) }],
    },
    {
      of: dayWindow,
      ranges: [
        { field: 'month', min: 0, max: 11, call: (v) => noHours(v, 1, 0.9) },
        { field: 'day', min: 1, max: 31, call: (v) => noHours(6, v, 0.9) },
        { field: 'prob', ...share, call: (v) => noHours(6, 1, v) },
      ],
    },
    {
      of: dayQuantiles,
      ranges: [{ field: 'prob', ...share, call: (v) => dayQuantiles(noDays, v, 'up') }],
    },
    {
      of: restOfDay,
      ranges: [
        {
          field: 'temperatureC',
          min: -10_000,
          max: 10_000,
          call: (v) => restOfDay([], { ...morning, temperatureC: v }, 0),
        },
        {
          field: 'dewPointC',
          min: -10_000,
          max: 10_000,
          call: (v) => restOfDay([], { ...morning, dewPointC: v }, 0),
        },
        {
          field: 'settingHpa',
          min: -10_000,
          max: 10_000,
          call: (v) => restOfDay([], { ...morning, settingHpa: v }, 0),
        },
        { field: 'todayFigure', min: -10_000, max: 10_000, call: (v) => restOfDay([], morning, v) },
      ],
      refused: [
        {
          when: 'courses of unequal length',
          call: () => restOfDay([course(3), course(4)], morning, 0),
          sentence: /same hours/,
        },
      ],
    },
    {
      of: hindcast,
      refused: [
        {
          when: 'courses of unequal length',
          call: () => hindcast([course(3), course(4)]),
          sentence: /same hours/,
        },
      ],
    },
    {
      of: sunLines,
      ranges: [
        { field: 'year', min: 1902, max: 2099, call: (v) => sunLines(v, 40, 0, utc) },
        { field: 'latitudeDeg', min: -90, max: 90, call: (v) => sunLines(2026, v, 0, utc) },
        { field: 'longitudeDeg', min: -180, max: 180, call: (v) => sunLines(2026, 40, v, utc) },
      ],
    },
    {
      of: daylightOf,
      ranges: [
        { field: 'localDay', min: -24_837, max: 47_481, call: (v) => daylightOf(v, 40, 0, utc) },
        { field: 'latitudeDeg', min: -90, max: 90, call: (v) => daylightOf(20_000, v, 0, utc) },
        { field: 'longitudeDeg', min: -180, max: 180, call: (v) => daylightOf(20_000, 40, v, utc) },
      ],
    },
    {
      of: requireZone,
      refused: [
        {
          when: 'starts that do not rise',
          call: () => {
            requireZone(backwards);
          },
          sentence: /later than the one before/,
        },
        {
          when: 'columns of unequal length',
          call: () => {
            requireZone(uneven);
          },
          sentence: /one start and one offset/,
        },
      ],
    },
    {
      of: offsetAtMinutes,
      refused: [
        { when: 'a table out of order', call: () => offsetAtMinutes(backwards, 0), sentence: /later than/ },
      ],
    },
    {
      of: coverageOf,
      ranges: [
        { field: 'leastHours', min: 1, max: 1e9, call: (v) => coverageOf(Int32Array.of(0), v, 1) },
        { field: 'mostGaps', min: 0, max: 1e9, call: (v) => coverageOf(Int32Array.of(0), 1, v) },
      ],
      refused: [
        {
          when: 'hours that do not rise',
          call: () => coverageOf(Int32Array.of(2, 2), 1, 1),
          sentence: /not rising/,
        },
      ],
    },
    {
      of: hourReports,
      refused: [
        {
          when: 'a table out of order',
          call: () => hourReports(Int32Array.of(0), Uint8Array.of(1), backwards),
          sentence: /later than/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [changeOverYears, 'theilSen refuses what is no number'],
    [pressureFrom, 'only says which pressure is there'],
    [civilDate, 'every whole number is a day of the calendar'],
    [dayNumber, 'a date that does not exist runs over into the next month, as it says'],
    [nearDate, 'finds the places of a date that rowsAround and dayWindow have checked'],
    [dayCounts, 'counts what a window holds'],
    [dayWorst, 'takes what a window holds'],
    [daysBeyond, 'compares what a window holds with any number'],
    [beyondFrom, 'any number may be a limit'],
    [finiteOrNull, 'tells infinities from numbers'],
    [worstOf, 'any numbers, also none'],
    [seasonWorst, 'takes what the cells hold'],
    [seasonBeyond, 'compares what the cells hold with any number'],
    [probBelow, 'a share that the quantile has accepted'],
    [seasonOrder, 'every whole number is an hour of the clock'],
    [seasonCells, 'takes columns; what is no number leaves its hour out'],
  ],
};
