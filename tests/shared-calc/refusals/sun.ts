import { isNight } from '../../../shared-calc/sun/night.ts';
import {
  elevationDeg,
  hourAngleRad,
  requirePlace,
  solarElevationDeg,
} from '../../../shared-calc/sun/solar-elevation.ts';
import { sunDay } from '../../../shared-calc/sun/sun-day.ts';
import { byPosition } from './table.ts';
import type { RoomRefusals } from './table.ts';

const PLACE = [
  { field: 'latitudeDeg', min: -90, max: 90, good: 45 },
  { field: 'longitudeDeg', min: -180, max: 180, good: 10 },
];

export const refusals: RoomRefusals = {
  functions: [
    byPosition(solarElevationDeg, [
      { field: 'epochS', min: -2208988800, max: 4133980800, good: 1e9 },
      ...PLACE,
    ]),
    {
      of: isNight,
      ranges: [
        { field: 'epochS', min: -2208988800, max: 4133980800, call: (v) => isNight(v, 45, 10) },
        { field: 'latitudeDeg', min: -90, max: 90, call: (v) => isNight(1e9, v, 10) },
        { field: 'longitudeDeg', min: -180, max: 180, call: (v) => isNight(1e9, 45, v) },
      ],
    },
    byPosition(requirePlace, PLACE),
    byPosition(sunDay, [
      { field: 'clockNoonEpochS', min: -2208902400, max: 4133894400, good: 1e9 },
      ...PLACE,
    ]),
  ],
  takeNoNumber: [
    [elevationDeg, 'the unchecked inside of solarElevationDeg, for searches in time'],
    [hourAngleRad, 'the unchecked inside of sunDay'],
  ],
};
