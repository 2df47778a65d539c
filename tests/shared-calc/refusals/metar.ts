import { readAltimeter, readSeaLevelPressure } from '../../../shared-calc/metar/pressure-group.ts';
import { readReportTime, reportEpochS } from '../../../shared-calc/metar/report-time.ts';
import { isWellFormed, readReport } from '../../../shared-calc/metar/report.ts';
import { ceilingM, readSky } from '../../../shared-calc/metar/sky-group.ts';
import * as temperature from '../../../shared-calc/metar/temperature-group.ts';
import { readMetres, readMiles } from '../../../shared-calc/metar/visibility-group.ts';
import { readVariableSector, readWind, readWindSpeed } from '../../../shared-calc/metar/wind-group.ts';
import type { RoomRefusals } from './table.ts';

const time = { day: 1, hour: 0, minute: 0 };
const group = 'takes text; answers undefined for what is no such group';

export const refusals: RoomRefusals = {
  functions: [
    {
      of: reportEpochS,
      ranges: [
        { field: 'time.day', min: 1, max: 31, call: (v) => reportEpochS({ ...time, day: v }, 0) },
        { field: 'time.hour', min: 0, max: 23, call: (v) => reportEpochS({ ...time, hour: v }, 0) },
        { field: 'time.minute', min: 0, max: 59, call: (v) => reportEpochS({ ...time, minute: v }, 0) },
        {
          field: 'aboutEpochS',
          min: -2_208_988_800,
          max: 7_258_118_400,
          call: (v) => reportEpochS(time, v),
        },
      ],
    },
  ],
  takeNoNumber: [
    [readReport, 'takes text; lists what is malformed'],
    [isWellFormed, 'takes a report as read'],
    [readReportTime, group],
    [readAltimeter, group],
    [readSeaLevelPressure, group],
    [readSky, group],
    [ceilingM, 'takes layers as read'],
    [temperature.readWholeDegrees, group],
    [temperature.readTemperatures, group],
    [temperature.readTenths, group],
    [temperature.readDayExtremes, group],
    [readMiles, group],
    [readMetres, group],
    [readWindSpeed, group],
    [readWind, group],
    [readVariableSector, group],
  ],
};
