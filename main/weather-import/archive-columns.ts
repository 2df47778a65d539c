import type { RawValues } from './check-ranges.ts';
import { FileProblem } from './file-problem.ts';
import {
  asIs,
  fromFahrenheit,
  fromInchOfMercury,
  fromKnot,
  fromMilePerHour,
  toWhole,
  type Convert,
} from './units.ts';

// The columns of a station archive CSV, by the names in its header.

const comma = 44;
const tab = 9;

const known: Record<string, { column: keyof RawValues; convert: Convert; inWords: string }> = {
  tmpf: { column: 'temperatureC100', convert: fromFahrenheit, inWords: 'temperature' },
  tmpc: { column: 'temperatureC100', convert: asIs, inWords: 'temperature' },
  dwpf: { column: 'dewPointC100', convert: fromFahrenheit, inWords: 'dew point' },
  dwpc: { column: 'dewPointC100', convert: asIs, inWords: 'dew point' },
  alti: { column: 'altimeterSettingHpa100', convert: fromInchOfMercury, inWords: 'altimeter setting' },
  mslp: { column: 'seaLevelPressureHpa100', convert: asIs, inWords: 'sea-level pressure' },
  drct: { column: 'windFromDeg', convert: toWhole, inWords: 'wind direction' },
  sknt: { column: 'windSpeedMs100', convert: fromKnot, inWords: 'wind speed' },
  sped: { column: 'windSpeedMs100', convert: fromMilePerHour, inWords: 'wind speed' },
  gust: { column: 'gustMs100', convert: fromKnot, inWords: 'gust' },
  gust_mph: { column: 'gustMs100', convert: fromMilePerHour, inWords: 'gust' },
};

export interface Header {
  delimiter: number;
  names: string[];
}

/** The names of the columns, or null where the line is no header of this kind. */
export function headerOf(line: string): Header | null {
  const delimiter = line.includes('\t') ? tab : comma;
  const names = line
    .split(delimiter === tab ? '\t' : ',')
    .map((name) => name.trim().replaceAll('"', '').toLowerCase());
  const time = names.some((name) => name === 'valid' || name.startsWith('valid('));
  const temperature = names.includes('tmpf') || names.includes('tmpc');
  return names.includes('station') && time && temperature ? { delimiter, names } : null;
}

export interface Role {
  at: number;
  name: string;
  column: keyof RawValues;
  convert: Convert;
  inWords: string;
}

export interface Columns {
  delimiter: number;
  stationColumn: number;
  timeColumn: number;
  /** In the order of the columns. */
  roles: Role[];
  /** The same by what they give; undefined for what no column gives. */
  roleOf: Partial<Record<keyof RawValues, Role>>;
  lastNeeded: number;
  moreBehind: boolean;
  hasReport: boolean;
  starts: Int32Array;
  ends: Int32Array;
  remarks: string[];
}

/** @throws FileProblem where its times are not in UTC */
export function columnsOf({ delimiter, names }: Header): Columns {
  const timeName = names.find((name) => name === 'valid' || name.startsWith('valid('));
  if (timeName !== 'valid' && timeName !== 'valid(utc)')
    throw new FileProblem(
      `Its times are in '${String(timeName)}'; only UTC can be read. Fetch it again in UTC.`,
    );
  const roles: Role[] = [];
  const taken = new Set<string>();
  names.forEach((name, at) => {
    const role = known[name];
    // The first of two columns for one value counts: tmpf before tmpc as they stand.
    if (role === undefined || taken.has(role.column)) return;
    taken.add(role.column);
    roles.push({ at, name, ...role });
  });
  const stationColumn = names.indexOf('station');
  const timeColumn = names.indexOf(timeName);
  const lastNeeded = Math.max(stationColumn, timeColumn, ...roles.map((role) => role.at));
  const remarks: string[] = [];
  if (!taken.has('dewPointC100'))
    remarks.push('It has no dew point, so density altitude cannot be had from it.');
  if (!taken.has('altimeterSettingHpa100'))
    remarks.push(
      taken.has('seaLevelPressureHpa100')
        ? 'It has only the pressure reduced to sea level: the least certain way to density altitude.'
        : 'It has no pressure, so density altitude cannot be had from it.',
    );
  return {
    delimiter,
    stationColumn,
    timeColumn,
    roles,
    roleOf: Object.fromEntries(roles.map((role) => [role.column, role])),
    lastNeeded,
    moreBehind: names.length - 1 > lastNeeded,
    hasReport: names.indexOf('metar') > lastNeeded,
    starts: new Int32Array(lastNeeded + 1),
    ends: new Int32Array(lastNeeded + 1),
    remarks,
  };
}
