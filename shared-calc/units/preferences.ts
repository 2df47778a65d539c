import type { Quantity, UnitOf } from './quantities.ts';

/** The unit in which a person sees each quantity; kept in the library, one by one changeable. */
export type UnitPreferences = { [Q in Quantity]: UnitOf[Q] };

export type PresetName = 'metric' | 'US';

// Heights in feet, speeds in knots and climb in feet a minute belong to both: so altimeters, airspeed indicators and
// most manuals are marked, whatever the country weighs in.
const COMMON = {
  altitude: 'ft',
  elevation: 'ft',
  range: 'NM',
  temperature: 'degC',
  temperatureDifference: 'C deg',
  speed: 'kt',
  climbRate: 'ft/min',
  angle: 'deg',
  direction: 'deg',
  airDensity: 'kg/m3',
  share: '%',
  chordShare: '%MAC',
  gradient: '%',
  duration: 'min',
  rotation: 'rpm',
  voltage: 'V',
} as const;

export const UNIT_PRESETS: Readonly<Record<PresetName, Readonly<UnitPreferences>>> = {
  metric: {
    ...COMMON,
    mass: 'kg',
    arm: 'mm',
    distance: 'm',
    volume: 'L',
    pressure: 'hPa',
    altimeterSetting: 'hPa',
    fuelFlow: 'L/h',
    fuelDensity: 'kg/L',
    moment: 'kg m',
    area: 'm2',
  },
  US: {
    ...COMMON,
    mass: 'lb',
    arm: 'in',
    distance: 'ft',
    volume: 'US gal',
    pressure: 'inHg',
    altimeterSetting: 'inHg',
    fuelFlow: 'US gal/h',
    fuelDensity: 'lb/US gal',
    moment: 'lb in',
    area: 'ft2',
  },
};
