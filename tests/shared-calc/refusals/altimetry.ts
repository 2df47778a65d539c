import * as reading from '../../../shared-calc/altimetry/altimeter-reading.ts';
import { groundCheck } from '../../../shared-calc/altimetry/ground-check.ts';
import * as temperature from '../../../shared-calc/altimetry/temperature-error.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const setting = { field: 'altimeterSettingHpa', min: 850, max: 1100, good: 1013.25 };
const indicated = { field: 'indicatedM', min: -1000, max: 9000, good: 300 };
const elevation = { field: 'elevationM', min: -500, max: 6000, good: 300 };
const column = [
  { field: 'temperatureC', min: -60, max: 50, good: 0 },
  { field: 'heightAboveStationM', min: 0, max: 3000, good: 300 },
  { field: 'stationElevationM', min: -500, max: 6000, good: 300 },
];

export const refusals: RoomRefusals = {
  functions: [
    byPosition(reading.indicatedAltitudeM, [
      { field: 'pressureHpa', min: 226.33, max: 1200, good: 900 },
      setting,
    ]),
    byPosition(reading.pressureOfReadingHpa, [indicated, setting]),
    byPosition(reading.staleSettingErrorM, [
      { ...setting, field: 'setHpa' },
      { ...setting, field: 'currentHpa' },
    ]),
    byPosition(reading.settingForElevationHpa, [indicated, setting, elevation]),
    {
      of: groundCheck,
      ranges: [
        { field: 'readingM', min: -1000, max: 9000, call: (v) => groundCheck(v, 300) },
        { ...elevation, call: (v) => groundCheck(300, v) },
      ],
    },
    byPosition(temperature.coldErrorByTableM, [
      { field: 'temperatureC', min: -50, max: 10, good: 0 },
      {
        field: 'heightAboveStationM',
        // 200 and 5,000 ft
        min: 200 * 0.3048,
        max: 5000 * 0.3048,
        good: 300,
      },
    ]),
    byPosition(temperature.coldErrorByFormulaM, column),
    byPosition(temperature.temperatureErrorM, column),
  ],
  takeNoNumber: [],
};
