import { readAltimeter, readSeaLevelPressure, type AltimeterGroup } from './pressure-group.ts';
import { readReportTime, type ReportTime } from './report-time.ts';
import { ceilingM, readSky, type SkyLayer } from './sky-group.ts';
import {
  readDayExtremes,
  readTemperatures,
  readTenths,
  type Extremes,
  type TemperatureGroup,
} from './temperature-group.ts';
import { readMetres, readMiles, type Visibility } from './visibility-group.ts';
import { readVariableSector, readWind, type VariableSector, type WindGroup } from './wind-group.ts';

/** What a METAR or SPECI reports; null where it is missing, malformed or not said. */
export type WeatherReport = {
  type: 'METAR' | 'SPECI' | null;
  station: string | null;
  time: ReportTime | null;
  corrected: boolean;
  auto: boolean;
  /** The report says that there is none. */
  nil: boolean;
  wind: WindGroup | null;
  variableSector: VariableSector | null;
  visibility: Visibility | null;
  sky: SkyLayer[];
  /** lowest broken or overcast layer or vertical visibility, above the field */
  ceilingM: number | null;
  /** in tenths where the remarks have them, else in whole degrees */
  temperatureC: number | null;
  dewPointC: number | null;
  temperatureIsWhole: boolean;
  /** the body's whole degrees, whatever the remarks say */
  body: TemperatureGroup | null;
  altimeter: AltimeterGroup | null;
  /** altimeter setting, of either group */
  settingHpa: number | null;
  seaLevelPressureHpa: number | null;
  dayExtremes: Extremes | null;
  /** AO1: automatic without, AO2 with a precipitation sensor; AO2A: augmented by an observer */
  stationType: 'AO1' | 'AO2' | 'AO2A' | null;
  /** groups that look like one of the above and are not: each left out, none guessed */
  malformed: string[];
};

/**
 * Read the observation groups of one METAR or SPECI, wherever in the body they stand. What is not read (weather, runway
 * visual range, trends, other remarks) is passed over; of a group that comes twice the first counts.
 *
 * Temperatures of the remarks (tenths) win over the body's, unless the two differ by more than one degree: then one of them
 * is a slip ("17/00 ... T00720000"), nobody knows which, and that temperature is missing.
 * @param text one report, without the date that lists put before it; an "=" may end it
 * @returns a report in which all may be null; text that is no report at all has neither station nor time
 * @example "KMEM 230853Z AUTO 18014G18KT 10SM CLR 16/M02 A3008 RMK AO2 SLP117 T01561022": 15.6 and -2.2 degC
 * @source FMH-1 (FCM-H1), chapter 12; WMO-No. 306, FM 15 and FM 16
 */
export function readReport(text: string): WeatherReport {
  const tokens = tokensOf(text);
  const remarksAt = tokens.indexOf('RMK');
  const beforeRemarks = remarksAt === -1 ? tokens : tokens.slice(0, remarksAt);
  const trendAt = beforeRemarks.findIndex((token) => TREND.test(token));
  const report = emptyReport();
  readBody(trendAt === -1 ? beforeRemarks : beforeRemarks.slice(0, trendAt), report);
  if (remarksAt !== -1) readRemarks(tokens.slice(remarksAt + 1), report);
  return report;
}

/** No group of the report looked like one and was none, and it names its station and time. */
export function isWellFormed(report: WeatherReport): boolean {
  return report.malformed.length === 0 && report.station !== null && report.time !== null;
}

const TREND = /^(BECMG|TEMPO|NOSIG)$/;

function emptyReport(): WeatherReport {
  return {
    type: null,
    station: null,
    time: null,
    corrected: false,
    auto: false,
    nil: false,
    wind: null,
    variableSector: null,
    visibility: null,
    sky: [],
    ceilingM: null,
    temperatureC: null,
    dewPointC: null,
    temperatureIsWhole: false,
    body: null,
    altimeter: null,
    settingHpa: null,
    seaLevelPressureHpa: null,
    dayExtremes: null,
    stationType: null,
    malformed: [],
  };
}

/** Groups; a mark of punctuation at a group's end and a blank left out before the altimeter ("09/A2980") are slips met in lists. */
function tokensOf(text: string): string[] {
  return text
    .toUpperCase()
    .replace(/(^|\s)(M?\d{2}\/(?:M?\d{2})?)([AQ]\d{4})/g, '$1$2 $3')
    .split(/\s+/)
    .map((token) => token.replace(/[=;,]+$/, ''))
    .filter((token) => token !== '');
}

/** Text that means to be a group which is read here. */
const LOOKS_LIKE: readonly RegExp[] = [
  /^[\dVRBPG/]{3,}(KT|MPS|KMH)$/,
  /^M?\d{1,3}\/M?\d{0,3}$/,
  /^M?\d{0,3}\/M?\d{1,3}$/,
  /^\d{3}V\d{3}$/,
  /^[AQ]\d{3,5}$/,
  /^\d{4,}Z$/,
  /^[PM]?[\d/]+SM$/,
  /^(FEW|SCT|BKN|OVC|VV)\d{1,5}$/,
];

function readBody(tokens: readonly string[], report: WeatherReport): void {
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] ?? '';
    const next = tokens[i + 1];
    // "1 3/4SM" is one group of two parts.
    if (/^[PM]?\d{1,2}$/.test(token) && next !== undefined && readMiles(`${token} ${next}`) !== undefined) {
      report.visibility ??= readMiles(`${token} ${next}`) ?? null;
      i += 1;
    } else if (!readHeader(token, report) && !readObserved(token, report)) {
      if (LOOKS_LIKE.some((pattern) => pattern.test(token))) report.malformed.push(token);
    }
  }
  report.ceilingM = ceilingM(report.sky);
  report.settingHpa = report.altimeter?.settingHpa ?? null;
  report.temperatureC = report.body?.temperatureC ?? null;
  report.dewPointC = report.body?.dewPointC ?? null;
  report.temperatureIsWhole = report.temperatureC !== null;
}

function readHeader(token: string, report: WeatherReport): boolean {
  if (token === 'METAR' || token === 'SPECI') report.type ??= token;
  else if (token === 'COR') report.corrected = true;
  else if (token === 'AUTO') report.auto = true;
  else if (token === 'NIL') report.nil = true;
  else if (report.station === null && report.time === null && /^[A-Z][A-Z0-9]{3}$/.test(token)) {
    report.station = token;
  } else {
    const time = report.time === null ? readReportTime(token) : undefined;
    if (time === undefined) return false;
    report.time = time;
  }
  return true;
}

function readObserved(token: string, report: WeatherReport): boolean {
  const wind = readWind(token);
  if (wind !== undefined) return setFirst(report, 'wind', wind);
  const sector = readVariableSector(token);
  if (sector !== undefined) return setFirst(report, 'variableSector', sector);
  const visibility = token === 'CAVOK' ? readMetres('9999') : (readMiles(token) ?? readMetres(token));
  if (visibility !== undefined) return setFirst(report, 'visibility', visibility);
  const layer = readSky(token);
  if (layer !== undefined) return report.sky.push(layer) > 0;
  const temperatures = readTemperatures(token);
  if (temperatures !== undefined) {
    // Slashes stand for any missing group; the first with a figure in it is the temperature.
    if (report.body === null || isEmpty(report.body)) report.body = temperatures;
    return true;
  }
  const altimeter = readAltimeter(token);
  if (altimeter !== undefined) return setFirst(report, 'altimeter', altimeter);
  return false;
}

function isEmpty({ temperatureC, dewPointC }: TemperatureGroup): boolean {
  return temperatureC === null && dewPointC === null;
}

function setFirst<K extends keyof WeatherReport>(
  report: WeatherReport,
  key: K,
  value: WeatherReport[K],
): true {
  report[key] ??= value;
  return true;
}

function readRemarks(tokens: readonly string[], report: WeatherReport): void {
  let tenths: TemperatureGroup | undefined;
  for (const token of tokens) {
    if (token === 'AO1' || token === 'AO2' || token === 'AO2A') report.stationType ??= token;
    report.dayExtremes ??= readDayExtremes(token) ?? null;
    report.seaLevelPressureHpa ??= readSeaLevelPressure(token, report.settingHpa) ?? null;
    if (tenths === undefined) {
      tenths = readTenths(token);
      if (tenths !== undefined) useTenths(token, tenths, report);
    }
  }
}

/** A body of whole degrees is at most half a degree from its tenths, by its own rounding; more than one is a slip. */
const MOST_DIFFERENCE_C = 1;

function useTenths(token: string, tenths: TemperatureGroup, report: WeatherReport): void {
  const temperature = agreed(tenths.temperatureC, report.temperatureC);
  const dewPoint = agreed(tenths.dewPointC, report.dewPointC);
  if (temperature === 'contradictory' || dewPoint === 'contradictory') report.malformed.push(token);
  report.temperatureC = temperature === 'contradictory' ? null : temperature;
  report.dewPointC = dewPoint === 'contradictory' ? null : dewPoint;
  report.temperatureIsWhole = report.temperatureC !== null && tenths.temperatureC === null;
}

function agreed(tenthsC: number | null, wholeC: number | null): number | null | 'contradictory' {
  if (tenthsC === null) return wholeC;
  if (wholeC === null || Math.abs(tenthsC - wholeC) <= MOST_DIFFERENCE_C) return tenthsC;
  return 'contradictory';
}
