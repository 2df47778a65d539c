import {
  HPA_PER_INHG,
  KG_PER_LB,
  L_PER_IMP_GAL,
  L_PER_US_GAL,
  MS_PER_FT_MIN,
  MS_PER_KT,
  MS_PER_MPH,
  M_PER_FT,
  M_PER_IN,
  M_PER_NM,
  M_PER_SM,
  RAD_PER_DEG,
  ZERO_CELSIUS_K,
} from './constants.ts';

export type MassUnit = 'kg' | 'lb';
export type LengthUnit = 'm' | 'mm' | 'cm' | 'km' | 'in' | 'ft' | 'NM' | 'SM';
export type VolumeUnit = 'L' | 'US gal' | 'imp gal';
export type PressureUnit = 'hPa' | 'inHg' | 'mmHg' | 'Pa';
export type TemperatureUnit = 'degC' | 'degF' | 'K';
/** A difference of temperatures: no offset between the scales. */
export type TemperatureDifferenceUnit = 'C deg' | 'F deg';
export type SpeedUnit = 'm/s' | 'kt' | 'km/h' | 'mph' | 'ft/min';
export type AngleUnit = 'rad' | 'deg';
export type FuelFlowUnit = 'L/h' | 'US gal/h' | 'imp gal/h';
export type DensityUnit = 'kg/m3' | 'kg/L' | 'lb/US gal' | 'lb/imp gal' | 'lb/ft3';
export type PlainMomentUnit = 'kg m' | 'kg cm' | 'kg mm' | 'lb in';
/** Manuals print moments divided by a hundred or a thousand, to save noughts. */
export type MomentUnit = PlainMomentUnit | 'lb ft' | `${PlainMomentUnit}/${'100' | '1000'}`;
export type AreaUnit = 'm2' | 'ft2';
export type RatioUnit = '1' | '%' | '%MAC' | 'ft/NM';
export type DurationUnit = 's' | 'min' | 'h';
export type RotationUnit = 'rpm';
export type VoltageUnit = 'V';

export type Unit =
  | MassUnit
  | LengthUnit
  | VolumeUnit
  | PressureUnit
  | TemperatureUnit
  | TemperatureDifferenceUnit
  | SpeedUnit
  | AngleUnit
  | FuelFlowUnit
  | DensityUnit
  | MomentUnit
  | AreaUnit
  | RatioUnit
  | DurationUnit
  | RotationUnit
  | VoltageUnit;

export type Dimension =
  | 'mass'
  | 'length'
  | 'volume'
  | 'pressure'
  | 'temperature'
  | 'temperature difference'
  | 'speed'
  | 'angle'
  | 'fuel flow'
  | 'density'
  | 'moment'
  | 'area'
  | 'ratio'
  | 'duration'
  | 'rotation'
  | 'voltage';

/**
 * How one unit stands to the unit that the program keeps inside: kept = (value - zero) * times / per.
 * At most one of `times` and `per` differs from 1, so that each way rounds once.
 */
export type UnitInfo = {
  dimension: Dimension;
  times: number;
  per: number;
  /** where this scale stands when the kept scale is at 0; only temperatures have one */
  zero: number;
  /** as written after a figure */
  label: string;
  /** what people type, in small letters without blanks around */
  spellings: readonly string[];
};

function unit(
  dimension: Dimension,
  label: string,
  spellings: readonly string[],
  { times = 1, per = 1, zero = 0 }: { times?: number; per?: number; zero?: number } = {},
): UnitInfo {
  return { dimension, label, spellings, times, per, zero };
}

/** The unit in which the program keeps each dimension inside, in calculations, requests and the library. */
export const SI_UNIT: Readonly<Record<Dimension, Unit>> = {
  mass: 'kg',
  length: 'm',
  volume: 'L',
  pressure: 'hPa',
  temperature: 'degC',
  'temperature difference': 'C deg',
  speed: 'm/s',
  angle: 'rad',
  'fuel flow': 'L/h',
  density: 'kg/m3',
  moment: 'kg m',
  area: 'm2',
  ratio: '1',
  duration: 's',
  rotation: 'rpm',
  voltage: 'V',
};

/** "lb in/1000": so many thousand of them. */
function dividedMoment(of: PlainMomentUnit, per: 100 | 1000, kgM: number): UnitInfo {
  const name = `${of}/${String(per)}`;
  return unit('moment', name, [name], { times: kgM * per });
}

export const UNITS: Readonly<Record<Unit, UnitInfo>> = {
  kg: unit('mass', 'kg', ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms']),
  lb: unit('mass', 'lb', ['lb', 'lbs', 'lb.', 'lbs.', 'pound', 'pounds'], { times: KG_PER_LB }),

  m: unit('length', 'm', ['m', 'metre', 'metres', 'meter', 'meters']),
  mm: unit('length', 'mm', ['mm'], { per: 1000 }),
  cm: unit('length', 'cm', ['cm'], { per: 100 }),
  km: unit('length', 'km', ['km'], { times: 1000 }),
  in: unit('length', 'in', ['in', 'in.', '"', "''", 'inch', 'inches'], { times: M_PER_IN }),
  ft: unit('length', 'ft', ['ft', 'ft.', "'", 'foot', 'feet'], { times: M_PER_FT }),
  NM: unit('length', 'NM', ['nm', 'nmi'], { times: M_PER_NM }),
  SM: unit('length', 'SM', ['sm', 'mi', 'mile', 'miles'], { times: M_PER_SM }),

  L: unit('volume', 'L', ['l', 'ltr', 'litre', 'litres', 'liter', 'liters']),
  'US gal': unit('volume', 'US gal', ['us gal', 'us gals', 'usg', 'us gallon', 'us gallons', 'u.s. gal'], {
    times: L_PER_US_GAL,
  }),
  'imp gal': unit(
    'volume',
    'imp gal',
    ['imp gal', 'imp gals', 'uk gal', 'imp gallon', 'imp gallons', 'imp. gal'],
    {
      times: L_PER_IMP_GAL,
    },
  ),

  hPa: unit('pressure', 'hPa', ['hpa', 'mb', 'mbar', 'millibar', 'millibars']),
  inHg: unit(
    'pressure',
    'inHg',
    ['inhg', 'in hg', 'in.hg', 'in. hg', '"hg', '" hg', 'in', 'in.', '"', 'inches'],
    {
      times: HPA_PER_INHG,
    },
  ),
  mmHg: unit('pressure', 'mmHg', ['mmhg', 'mm hg'], { times: HPA_PER_INHG / 25.4 }),
  Pa: unit('pressure', 'Pa', ['pa'], { per: 100 }),

  degC: unit('temperature', '°C', ['c', '°c', 'degc', 'deg c', '° c', 'celsius', '°']),
  degF: unit('temperature', '°F', ['f', '°f', 'degf', 'deg f', '° f', 'fahrenheit'], {
    times: 5,
    per: 9,
    zero: 32,
  }),
  K: unit('temperature', 'K', ['k', 'kelvin'], { zero: ZERO_CELSIUS_K }),
  'C deg': unit('temperature difference', '°C', ['c', '°c', 'degc', 'deg c', 'k', '°']),
  'F deg': unit('temperature difference', '°F', ['f', '°f', 'degf', 'deg f'], { per: 1.8 }),

  'm/s': unit('speed', 'm/s', ['m/s', 'mps', 'ms']),
  kt: unit('speed', 'kt', ['kt', 'kts', 'kn', 'knot', 'knots'], { times: MS_PER_KT }),
  'km/h': unit('speed', 'km/h', ['km/h', 'kmh', 'kph'], { per: 3.6 }),
  mph: unit('speed', 'mph', ['mph', 'mi/h'], { times: MS_PER_MPH }),
  'ft/min': unit('speed', 'ft/min', ['ft/min', 'fpm', 'ft/m'], { times: MS_PER_FT_MIN }),

  rad: unit('angle', 'rad', ['rad', 'radian', 'radians']),
  deg: unit('angle', '°', ['°', 'deg', 'degree', 'degrees'], { times: RAD_PER_DEG }),

  'L/h': unit('fuel flow', 'L/h', ['l/h', 'lph', 'l/hr', 'litres/h', 'litres per hour']),
  'US gal/h': unit('fuel flow', 'US gal/h', ['us gal/h', 'us gal/hr', 'usgph', 'us gph'], {
    times: L_PER_US_GAL,
  }),
  'imp gal/h': unit('fuel flow', 'imp gal/h', ['imp gal/h', 'imp gal/hr', 'imp gph', 'uk gal/h'], {
    times: L_PER_IMP_GAL,
  }),

  'kg/m3': unit('density', 'kg/m³', ['kg/m3', 'kg/m³', 'g/l']),
  'kg/L': unit('density', 'kg/L', ['kg/l', 'g/cm3', 'g/ml'], { times: 1000 }),
  'lb/US gal': unit('density', 'lb/US gal', ['lb/us gal', 'lbs/us gal', 'lb/usg'], {
    times: (KG_PER_LB / L_PER_US_GAL) * 1000,
  }),
  'lb/imp gal': unit('density', 'lb/imp gal', ['lb/imp gal', 'lbs/imp gal', 'lb/uk gal'], {
    times: (KG_PER_LB / L_PER_IMP_GAL) * 1000,
  }),
  'lb/ft3': unit('density', 'lb/ft³', ['lb/ft3', 'lb/ft³'], { times: KG_PER_LB / M_PER_FT ** 3 }),

  'kg m': unit('moment', 'kg m', ['kg m', 'kgm', 'kg.m', 'kg*m', 'm kg', 'mkg']),
  'kg m/100': dividedMoment('kg m', 100, 1),
  'kg m/1000': dividedMoment('kg m', 1000, 1),
  'kg cm': unit('moment', 'kg cm', ['kg cm', 'kgcm', 'cm kg'], { per: 100 }),
  'kg cm/100': dividedMoment('kg cm', 100, 0.01),
  'kg cm/1000': dividedMoment('kg cm', 1000, 0.01),
  'kg mm': unit('moment', 'kg mm', ['kg mm', 'kgmm', 'mm kg'], { per: 1000 }),
  'kg mm/100': dividedMoment('kg mm', 100, 0.001),
  'kg mm/1000': dividedMoment('kg mm', 1000, 0.001),
  'lb in': unit('moment', 'lb in', ['lb in', 'lb-in', 'lbin', 'in lb', 'in-lb', 'lb.in'], {
    times: KG_PER_LB * M_PER_IN,
  }),
  'lb in/100': dividedMoment('lb in', 100, KG_PER_LB * M_PER_IN),
  'lb in/1000': dividedMoment('lb in', 1000, KG_PER_LB * M_PER_IN),
  'lb ft': unit('moment', 'lb ft', ['lb ft', 'lb-ft', 'ft lb', 'ft-lb'], { times: KG_PER_LB * M_PER_FT }),

  m2: unit('area', 'm²', ['m2', 'm²', 'sq m']),
  ft2: unit('area', 'ft²', ['ft2', 'ft²', 'sq ft'], { times: M_PER_FT * M_PER_FT }),

  '1': unit('ratio', '', []),
  '%': unit('ratio', '%', ['%', 'percent', 'per cent'], { per: 100 }),
  '%MAC': unit('ratio', '% MAC', ['% mac', '%mac', '%'], { per: 100 }),
  'ft/NM': unit('ratio', 'ft/NM', ['ft/nm'], { times: M_PER_FT / M_PER_NM }),

  s: unit('duration', 's', ['s', 'sec', 'second', 'seconds']),
  min: unit('duration', 'min', ['min', 'mins', 'minute', 'minutes', "'"], { times: 60 }),
  h: unit('duration', 'h', ['h', 'hr', 'hrs', 'hour', 'hours'], { times: 3600 }),

  rpm: unit('rotation', 'rpm', ['rpm', 'r/min', '1/min']),
  V: unit('voltage', 'V', ['v', 'volt', 'volts']),
};

/** The lowest value that a unit can have: absolute zero, or none. */
export function lowestIn(unitName: Unit): number {
  if (unitName === 'K') return 0;
  if (unitName === 'degC') return -ZERO_CELSIUS_K;
  if (unitName === 'degF') return -459.67;
  return -Infinity;
}
