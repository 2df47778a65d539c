import { readAltimeter, readSeaLevelPressure } from '../../shared-calc/metar/pressure-group.ts';
import { isWellFormed, readReport, type WeatherReport } from '../../shared-calc/metar/report.ts';
import {
  readDayExtremes,
  readTemperatures,
  readWholeDegrees,
} from '../../shared-calc/metar/temperature-group.ts';
import { readMiles } from '../../shared-calc/metar/visibility-group.ts';
import { readWindSpeed } from '../../shared-calc/metar/wind-group.ts';
import { fromSi } from '../../shared-calc/units/convert.ts';
import { alike, numbered, publishedChecks, textOf, type Actual } from './cases.ts';

function twoFigures(value: number): string {
  return String(value).padStart(2, '0');
}

const inKt = (speedMs: number | undefined) => (speedMs === undefined ? null : fromSi(speedMs, 'kt'));
const inFt = (lengthM: number | null) => (lengthM === null ? null : fromSi(lengthM, 'ft'));

/** Every name that a case on a whole report may ask for. */
function named(report: WeatherReport): Actual {
  const { time, wind, visibility, altimeter } = report;
  return {
    station: report.station,
    day: time?.day ?? null,
    time: time === null ? null : `${twoFigures(time.hour)}:${twoFigures(time.minute)}Z`,
    corrected: report.corrected,
    auto: report.auto,
    nil: report.nil,
    valid: isWellFormed(report),
    wind_dir: wind?.fromDeg ?? null,
    wind_speed: inKt(wind?.speed?.speedMs),
    wind_gust: inKt(wind?.gust?.speedMs),
    wind_var_from: report.variableSector?.fromDeg ?? null,
    wind_var_to: report.variableSector?.toDeg ?? null,
    visibility: visibility === null ? null : fromSi(visibility.metres, 'SM'),
    visibility_m: visibility?.metres ?? null,
    temperature: report.temperatureC,
    dew_point: report.dewPointC,
    temperature_body: report.body?.temperatureC ?? null,
    dew_point_body: report.body?.dewPointC ?? null,
    altimeter: altimeter?.unit === 'inHg' ? altimeter.printed : null,
    qnh: altimeter?.unit === 'hPa' ? altimeter.printed : null,
    slp: report.seaLevelPressureHpa,
    ceiling: inFt(report.ceilingM),
  };
}

function only(all: Actual, expected: object): Actual {
  return Object.fromEntries(Object.entries(all).filter(([name]) => name in expected));
}

publishedChecks('METAR', {
  ...alike(numbered('METAR', 1, 17), (c) => only(named(readReport(textOf(c, 'report'))), c.expected)),
  ...alike(numbered('METAR', 18, 19), (c) => {
    const { temperatureC, dewPointC } = readTemperatures(textOf(c, 'group')) ?? {};
    return { temperature: temperatureC ?? null, dew_point: dewPointC ?? null };
  }),
  // Body and remark in a report around them, as they are met.
  'METAR-020': (c) => {
    const [body = '', remark = ''] = textOf(c, 'group').split(' ');
    return only(named(readReport(`KXYZ 010000Z ${body} RMK ${remark}`)), c.expected);
  },
  'METAR-021': (c) => {
    const { highestC, lowestC } = readDayExtremes(textOf(c, 'group')) ?? {};
    return { max_24h: highestC ?? null, min_24h: lowestC ?? null };
  },
  'METAR-022': (c) => ({ slp: readSeaLevelPressure(textOf(c, 'group'), null) ?? null }),
  // A truncated 995 stands for every setting from 995 to less than 996: 995.6 is one of them.
  'METAR-023': (c) => {
    const { settingHpa = null, truncatedByHpa = 0 } = readAltimeter(textOf(c, 'group')) ?? {};
    const stoodFor = 995.6;
    const covers = settingHpa !== null && stoodFor >= settingHpa && stoodFor < settingHpa + truncatedByHpa;
    return { qnh: settingHpa, encodes: covers ? stoodFor : null };
  },
  'METAR-024': (c) => ({ altimeter: readAltimeter(textOf(c, 'group'))?.printed ?? null }),
  'METAR-025': (c) => ({ temperature: readWholeDegrees(textOf(c, 'group')) ?? null }),
  'METAR-026': (c) => {
    const visibility = readMiles(textOf(c, 'group'));
    return {
      visibility_greater_than: visibility?.bound === 'more' ? fromSi(visibility.metres, 'SM') : null,
    };
  },
  'METAR-027': (c) => {
    const speed = readWindSpeed(textOf(c, 'group'));
    return { wind_speed_at_least: speed?.atLeast === true ? fromSi(speed.speedMs, 'kt') : null };
  },
});
