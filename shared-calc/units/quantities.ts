import type {
  AngleUnit,
  AreaUnit,
  DensityUnit,
  DurationUnit,
  FuelFlowUnit,
  LengthUnit,
  MassUnit,
  MomentUnit,
  PressureUnit,
  RatioUnit,
  RotationUnit,
  SpeedUnit,
  TemperatureDifferenceUnit,
  TemperatureUnit,
  Unit,
  VoltageUnit,
  VolumeUnit,
} from './unit-table.ts';

/**
 * What a figure is, as the person sees it: it decides which units are offered and to how many digits it is shown.
 * The same dimension may be several quantities: an arm is read in millimetres, a runway in steps of five metres.
 */
export type UnitOf = {
  mass: MassUnit;
  /** along the aeroplane: arms, CG, margins of CG, wheel distances, chord */
  arm: Extract<LengthUnit, 'm' | 'mm' | 'cm' | 'in' | 'ft'>;
  /** computed heights and altitudes: pressure and density altitude, height lost */
  altitude: Extract<LengthUnit, 'm' | 'ft'>;
  /** surveyed heights: field elevation, parking spot */
  elevation: Extract<LengthUnit, 'm' | 'ft'>;
  /** on the ground: runway, ground roll, over the obstacle */
  distance: Extract<LengthUnit, 'm' | 'ft'>;
  /** through the air or on the map: glide, leg, visibility */
  range: Extract<LengthUnit, 'NM' | 'SM' | 'km' | 'm' | 'ft'>;
  volume: VolumeUnit;
  /** station pressure, vapour pressure */
  pressure: PressureUnit;
  altimeterSetting: Extract<PressureUnit, 'hPa' | 'inHg'>;
  temperature: TemperatureUnit;
  temperatureDifference: TemperatureDifferenceUnit;
  speed: Extract<SpeedUnit, 'kt' | 'km/h' | 'mph' | 'm/s'>;
  climbRate: Extract<SpeedUnit, 'ft/min' | 'm/s'>;
  /** a bank, a climb angle, a latitude */
  angle: AngleUnit;
  /** a wind or runway direction, written with three figures */
  direction: AngleUnit;
  fuelFlow: FuelFlowUnit;
  airDensity: Extract<DensityUnit, 'kg/m3' | 'lb/ft3'>;
  fuelDensity: Extract<DensityUnit, 'kg/L' | 'kg/m3' | 'lb/US gal' | 'lb/imp gal'>;
  moment: MomentUnit;
  area: AreaUnit;
  /** a share or probability kept as a ratio */
  share: Extract<RatioUnit, '%'>;
  chordShare: Extract<RatioUnit, '%MAC'>;
  gradient: Extract<RatioUnit, '%' | 'ft/NM'>;
  duration: DurationUnit;
  rotation: RotationUnit;
  voltage: VoltageUnit;
};

export type Quantity = keyof UnitOf;

/** `resolution`: the step that figures are rounded to. `step`: what one press of an arrow key adds. Both in the unit itself. */
export type Digits = { unit: Unit; resolution: number; step: number };

export type QuantityInfo = {
  /** in a sentence: "a mass was expected" */
  words: string;
  /** the units offered, the first being the metric one */
  units: readonly Digits[];
};

function info(words: string, ...units: [unit: Unit, resolution: number, step: number][]): QuantityInfo {
  return { words, units: units.map(([unit, resolution, step]) => ({ unit, resolution, step })) };
}

/**
 * Digits by quantity and unit: metric ones by the project's look (kg 0.1, mm 1, L 0.1, ft 10, degC 1, runway m 5);
 * the others are the nearest step of about the same size (0.05 in is 1.3 mm, 0.01 inHg is 0.3 hPa).
 */
export const QUANTITIES: Readonly<Record<Quantity, QuantityInfo>> = {
  mass: info('a mass', ['kg', 0.1, 0.5], ['lb', 0.1, 1]),
  arm: info(
    'an arm',
    ['mm', 1, 1],
    ['cm', 0.1, 0.1],
    ['m', 0.001, 0.001],
    ['in', 0.05, 0.05],
    ['ft', 0.005, 0.005],
  ),
  altitude: info('an altitude', ['m', 5, 50], ['ft', 10, 100]),
  elevation: info('an elevation', ['m', 1, 1], ['ft', 1, 10]),
  distance: info('a distance', ['m', 5, 5], ['ft', 10, 10]),
  range: info(
    'a distance',
    ['km', 0.1, 0.5],
    ['NM', 0.1, 0.5],
    ['SM', 0.1, 0.5],
    ['m', 50, 100],
    ['ft', 100, 500],
  ),
  volume: info('a volume', ['L', 0.1, 0.5], ['US gal', 0.1, 0.1], ['imp gal', 0.1, 0.1]),
  pressure: info('a pressure', ['hPa', 0.1, 1], ['inHg', 0.01, 0.01], ['mmHg', 0.1, 1], ['Pa', 10, 100]),
  altimeterSetting: info('an altimeter setting', ['hPa', 1, 1], ['inHg', 0.01, 0.01]),
  temperature: info('a temperature', ['degC', 1, 1], ['degF', 1, 1], ['K', 1, 1]),
  temperatureDifference: info('a difference of temperatures', ['C deg', 1, 1], ['F deg', 1, 1]),
  speed: info('a speed', ['kt', 1, 1], ['km/h', 1, 1], ['mph', 1, 1], ['m/s', 0.1, 0.5]),
  climbRate: info('a climb rate', ['m/s', 0.1, 0.1], ['ft/min', 10, 10]),
  angle: info('an angle', ['deg', 1, 1], ['rad', 0.01, 0.01]),
  direction: info('a direction', ['deg', 1, 10], ['rad', 0.01, 0.01]),
  fuelFlow: info('a fuel flow', ['L/h', 0.1, 0.5], ['US gal/h', 0.1, 0.1], ['imp gal/h', 0.1, 0.1]),
  airDensity: info('a density', ['kg/m3', 0.001, 0.001], ['lb/ft3', 0.0001, 0.0001]),
  fuelDensity: info(
    'a density of fuel',
    ['kg/L', 0.001, 0.001],
    ['kg/m3', 1, 1],
    ['lb/US gal', 0.01, 0.01],
    ['lb/imp gal', 0.01, 0.01],
  ),
  moment: info(
    'a moment',
    ['kg m', 0.1, 1],
    ['kg cm', 10, 100],
    ['kg mm', 100, 1000],
    ['lb in', 10, 100],
    ['lb ft', 1, 10],
    ['kg m/100', 0.001, 0.01],
    ['kg m/1000', 0.0001, 0.001],
    ['kg cm/100', 0.1, 1],
    ['kg cm/1000', 0.01, 0.1],
    ['kg mm/100', 1, 10],
    ['kg mm/1000', 0.1, 1],
    ['lb in/100', 0.1, 1],
    ['lb in/1000', 0.01, 0.1],
  ),
  area: info('an area', ['m2', 0.01, 0.1], ['ft2', 0.1, 1]),
  share: info('a share', ['%', 1, 1]),
  chordShare: info('a share of the chord', ['%MAC', 0.1, 0.1]),
  gradient: info('a gradient', ['%', 0.1, 0.1], ['ft/NM', 10, 10]),
  duration: info('a time', ['min', 1, 5], ['h', 0.1, 0.1], ['s', 1, 1]),
  rotation: info('a speed of rotation', ['rpm', 1, 10]),
  voltage: info('a voltage', ['V', 0.1, 0.1]),
};

/** Resolution and arrow step of a quantity in one of its units. */
export function digitsOf<Q extends Quantity>(quantity: Q, unit: UnitOf[Q]): Digits {
  const found = QUANTITIES[quantity].units.find((one) => one.unit === unit);
  // The types admit no other unit; a name read from a file might be one.
  if (found === undefined) throw new Error(`${QUANTITIES[quantity].words} has no unit ${unit}`);
  return found;
}
