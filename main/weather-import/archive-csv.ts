import { absent, emptyRow, fillReport, type RawValues } from './check-ranges.ts';
import { minuteOfMonth } from './calendar.ts';
import { fixedDigits, hundredths, nothing, numbersFrom, textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { emptyReport } from './month-collector.ts';
import { OneStation } from './one-station.ts';
import type { Kind, Reader } from './reader.ts';
import { splitRow } from './split-row.ts';
import {
  asIs,
  fromFahrenheit,
  fromInchOfMercury,
  fromKnot,
  fromMilePerHour,
  toWhole,
  type Convert,
} from './units.ts';

// Station archive of airport reports as CSV: a header names the columns, whose choice and units differ from export to
// export; M (or nothing) where missing; one row a report, routine and special alike, unmarked.
// Source: column list of the airport archive of the Iowa Environmental Mesonet ("ASOS-AWOS-METAR Data Download").
// Trap: an export can be ordered in local time and does not say so. The whole report, where it is in the file, has
// its own time in UTC; where the two disagree the file is refused (see timeDisagrees).

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

/** Rows whose own report is compared with the row's time, at the file's beginning. */
const comparedRows = 500;

const comma = 44;
const tab = 9;
const letterM = 77;
const hash = 35;

interface Header {
  delimiter: number;
  names: string[];
}

function headerOf(line: string): Header | null {
  const delimiter = line.includes('\t') ? tab : comma;
  const names = line
    .split(delimiter === tab ? '\t' : ',')
    .map((name) => name.trim().replaceAll('"', '').toLowerCase());
  const time = names.some((name) => name === 'valid' || name.startsWith('valid('));
  const temperature = names.includes('tmpf') || names.includes('tmpc');
  return names.includes('station') && time && temperature ? { delimiter, names } : null;
}

export const archiveCsv: Kind = {
  recognises: (head) =>
    textOf(head, 0, Math.min(head.length, 8192))
      .split('\n')
      .filter((line) => !line.startsWith('#'))
      .slice(0, 1)
      .some((line) => headerOf(line) !== null),
  open: (sink, problems, options): Reader => {
    const report = emptyReport();
    const raw = emptyRow();
    const remarks: string[] = ['Special reports are in it and are not marked as such.'];
    const stations = new OneStation(options.stationInFile, problems);
    let columns: Columns | null = null;
    let compared = 0;
    let disagreeing = 0;

    /** Find the header; true when the line was one. */
    function header(bytes: Uint8Array, from: number, to: number, lineNumber: number): boolean {
      if (columns !== null) {
        if (!startsLikeHeader(bytes, from, columns.delimiter)) return false;
        problems.add('header again: line left out', lineNumber, () => textOf(bytes, from, to));
        return true;
      }
      const found = headerOf(textOf(bytes, from, to));
      if (found === null) throw new FileProblem('The header with the names of the columns is missing.');
      columns = columnsOf(found);
      remarks.push(...columns.remarks);
      return true;
    }

    return {
      kind: 'archive-csv',
      kindInWords: 'station archive of airport reports (CSV)',
      nature: 'observed',
      remarks,
      stationsInFile: () => stations.list(),
      line(bytes, from, to, lineNumber) {
        if (to === from || bytes[from] === hash) return;
        if (columns === null || bytes[from] === 115) if (header(bytes, from, to, lineNumber)) return;
        const { starts, ends, roles, delimiter, lastNeeded, stationColumn, timeColumn } = columns as Columns;
        const example = () => textOf(bytes, from, to);

        // What comes after the last column that is read is not looked at.
        const found = splitRow(bytes, from, to, delimiter, starts, ends);
        // A last column that touches the end of a cut row may have lost digits.
        if (found <= lastNeeded || (found === lastNeeded + 1 && columns?.moreBehind === true)) {
          problems.add('row cut short: left out', lineNumber, example);
          return;
        }

        if (
          !stations.takes(
            bytes,
            starts[stationColumn] ?? from,
            ends[stationColumn] ?? from,
            lineNumber,
            example,
          )
        )
          return;

        const timeFrom = starts[timeColumn] ?? from;
        const year = fixedDigits(bytes, timeFrom, 4);
        const month = fixedDigits(bytes, timeFrom + 5, 2);
        const timeLength = (ends[timeColumn] ?? from) - timeFrom;
        const minute =
          timeLength < 16
            ? -1
            : minuteOfMonth(
                year,
                month,
                fixedDigits(bytes, timeFrom + 8, 2),
                fixedDigits(bytes, timeFrom + 11, 2),
                fixedDigits(bytes, timeFrom + 14, 2),
              );
        if (minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }

        for (const role of roles) {
          const start = starts[role.at] ?? from;
          const end = ends[role.at] ?? from;
          if (end - start === 1 && bytes[start] === letterM) {
            raw[role.column] = absent;
            continue;
          }
          const value = hundredths(bytes, start, end);
          if (value >= numbersFrom) raw[role.column] = role.convert(value);
          else if (value === nothing || isNull(bytes, start, end)) raw[role.column] = absent;
          else {
            problems.add(
              `${role.inWords} (${role.name}) is not a number: row left out`,
              lineNumber,
              () => `${role.name} is "${textOf(bytes, start, end)}"`,
            );
            return;
          }
        }
        if (!fillReport(report.values, raw, 0, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        if (columns?.hasReport === true && compared < comparedRows) {
          const agrees = reportAgrees(textOf(bytes, ends[lastNeeded] ?? to, to), minute);
          if (agrees !== null) {
            compared++;
            if (!agrees) disagreeing++;
            if (compared >= 20 && disagreeing * 2 > compared)
              throw new FileProblem(
                'The times of its rows are not those of the reports beside them, which are in UTC: the file was ordered in local time. Fetch it again in UTC.',
              );
          }
        }
        report.monthIndex = year * 12 + month - 1;
        report.minuteOfMonth = minute;
        sink(report);
      },
    };
  },
};

interface Role {
  at: number;
  name: string;
  column: keyof RawValues;
  convert: Convert;
  inWords: string;
}

interface Columns {
  delimiter: number;
  stationColumn: number;
  timeColumn: number;
  roles: Role[];
  lastNeeded: number;
  moreBehind: boolean;
  hasReport: boolean;
  starts: Int32Array;
  ends: Int32Array;
  remarks: string[];
}

function columnsOf({ delimiter, names }: Header): Columns {
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
    lastNeeded,
    moreBehind: names.length - 1 > lastNeeded,
    hasReport: names.indexOf('metar') > lastNeeded,
    starts: new Int32Array(lastNeeded + 1),
    ends: new Int32Array(lastNeeded + 1),
    remarks,
  };
}

function startsLikeHeader(bytes: Uint8Array, from: number, delimiter: number): boolean {
  return textOf(bytes, from, from + 7) === 'station' && bytes[from + 7] === delimiter;
}

function isNull(bytes: Uint8Array, from: number, to: number): boolean {
  return /^(m|null|none)$/i.test(textOf(bytes, from, to).trim());
}

/** Whether a report's own time (KJFK 010051Z) is that of the row; null where no time is found. */
function reportAgrees(rest: string, minuteOfMonthOfRow: number): boolean | null {
  const time = /\b(\d\d)(\d\d)(\d\d)Z\b/.exec(rest);
  if (time === null) return null;
  const [, day, hour, minute] = time;
  return ((Number(day) - 1) * 24 + Number(hour)) * 60 + Number(minute) === minuteOfMonthOfRow;
}
