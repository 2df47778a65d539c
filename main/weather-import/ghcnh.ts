import { flag } from '../store/observation-columns.ts';
import { minuteOfMonth } from './calendar.ts';
import { absent, emptyRow, fillReport, type RawValues } from './check-ranges.ts';
import { hundredths, integer, nothing, numbersFrom, textOf } from './digits.ts';
import { readIsoStamp, type Stamp } from './iso-stamp.ts';
import { emptyReport } from './report-rows.ts';
import { NamedColumns } from './named-columns.ts';
import { OneStation } from './one-station.ts';
import { PlacesSeen } from './places-seen.ts';
import type { Kind, Reader } from './reader.ts';
import { isSpecial, leftOutAs } from './report-kinds.ts';
import { SourceQuality, type Verdict } from './source-quality.ts';
import { firstLine, headerNames } from './split-row.ts';
import { asIs, toWhole, type Convert } from './units.ts';

// Global Historical Climatology Network hourly: pipe-separated, no quoting, UTC, six columns an element. Three layouts
// are about; all goes by header names. degC, hPa, m/s; missing is blank.
// Source: "Global Historical Climatology Network hourly (GHCNh) Documentation", NOAA/NCEI, versions 1.0.1 and 1.1.0,
// sections III to VII.

interface Element {
  name: string;
  column: keyof RawValues;
  inWords: string;
  wind: boolean;
  convert: Convert;
}

const elements: readonly Element[] = [
  { name: 'temperature', column: 'temperatureC100', inWords: 'temperature', wind: false, convert: asIs },
  { name: 'dew_point_temperature', column: 'dewPointC100', inWords: 'dew point', wind: false, convert: asIs },
  {
    name: 'station_level_pressure',
    column: 'stationPressureHpa100',
    inWords: 'station pressure',
    wind: false,
    convert: asIs,
  },
  {
    name: 'sea_level_pressure',
    column: 'seaLevelPressureHpa100',
    inWords: 'sea-level pressure',
    wind: false,
    convert: asIs,
  },
  {
    name: 'altimeter',
    column: 'altimeterSettingHpa100',
    inWords: 'altimeter setting',
    wind: false,
    convert: asIs,
  },
  { name: 'wind_speed', column: 'windSpeedMs100', inWords: 'wind speed', wind: true, convert: asIs },
  { name: 'wind_gust', column: 'gustMs100', inWords: 'gust', wind: true, convert: asIs },
  { name: 'wind_direction', column: 'windFromDeg', inWords: 'wind direction', wind: true, convert: toWhole },
];
const clock = ['Year', 'Month', 'Day', 'Hour', 'Minute'];
const ours = (name: string) => ['', '_Quality_Code', '_Report_Type', '_Source_Code'].map((end) => name + end);
const wanted = [
  'STATION',
  'Station_ID',
  'Station_name',
  'DATE',
  'LATITUDE',
  'LONGITUDE',
  'ELEVATION',
  ...clock,
  ...elements.flatMap(({ name }) => ours(name)),
];

export const ghcnh: Kind = {
  recognises: (head) => {
    const names = headerNames(firstLine(head) ?? '', '|').map((name) => name.toLowerCase());
    return (
      (names.includes('station') || names.includes('station_id')) &&
      names.includes('temperature') &&
      names.includes('dew_point_temperature') &&
      (names.includes('date') || clock.every((name) => names.includes(name.toLowerCase())))
    );
  },
  open: (sink, problems, options, head): Reader => {
    const columns = new NamedColumns(head, '|', false, wanted, problems);
    const { starts, ends } = columns;
    const station = Math.max(columns.at('STATION'), columns.at('Station_ID'));
    const [name, date, lat, lon, elev] = ['Station_name', 'DATE', 'LATITUDE', 'LONGITUDE', 'ELEVATION'].map(
      (each) => columns.at(each),
    ) as [number, number, number, number, number];
    const clockAt = clock.map((each) => columns.at(each));
    const hasClock = clockAt.every((at) => at >= 0);
    const cells = elements
      .map((element) => {
        const [at, code, type, source] = ours(element.name).map((each) => columns.at(each)) as [
          number,
          number,
          number,
          number,
        ];
        return { ...element, at, code, type, source };
      })
      .filter(({ at }) => at >= 0);
    const report = emptyReport();
    const raw = emptyRow();
    const quality = new SourceQuality(problems);
    const stations = new OneStation(options.stationInFile, problems);
    const places = new PlacesSeen();
    const stamp: Stamp = { year: 0, month: 0, minute: 0 };

    function readClock(bytes: Uint8Array): void {
      if (!hasClock) {
        readIsoStamp(bytes, starts[date] ?? 0, ends[date] ?? 0, stamp);
        return;
      }
      const [year = -1, month = -1, day = -1, hour = -1, minute = -1] = clockAt.map((at) =>
        integer(bytes, starts[at] ?? 0, ends[at] ?? 0),
      );
      stamp.year = year;
      stamp.month = month;
      stamp.minute = minuteOfMonth(year, month, day, hour, minute);
    }

    return {
      kind: 'ghcnh',
      kindInWords: 'global hourly file of the Global Historical Climatology Network',
      nature: 'observed',
      remarks: ["A value that failed a check of the network's own (a letter) is kept and marked as suspect."],
      stationsInFile: () => stations.list(),
      placeInFile: () => places.most(),
      line(bytes, from, to, lineNumber) {
        if (!columns.row(bytes, from, to, lineNumber)) return;
        const example = () => textOf(bytes, from, to);
        if (!stations.takes(bytes, starts[station] ?? 0, ends[station] ?? 0, lineNumber, example)) return;
        readClock(bytes);
        if (stamp.minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }
        quality.flags = 0;
        let rowType: string | null = null;
        for (const { at, code, type, source, column, inWords, wind, convert } of cells) {
          raw[column] = absent;
          const start = starts[at] ?? 0;
          const end = ends[at] ?? 0;
          if (start === end) continue;
          const value = hundredths(bytes, bytes[start] === 43 ? start + 1 : start, end);
          if (value < numbersFrom) {
            // VRB as a direction: a speed without one counts as variable.
            if (value === nothing || (column === 'windFromDeg' && textOf(bytes, start, end) === 'VRB'))
              continue;
            problems.add(`${inWords} is not a number: row left out`, lineNumber, () =>
              columns.text(bytes, at),
            );
            return;
          }
          // 999 with the code C or V says that there is no direction.
          if (column === 'windFromDeg' && value === 99_900) continue;
          rowType ??= columns.text(bytes, type);
          raw[column] = quality.apply(
            convert(value),
            verdictOf(columns.text(bytes, code), columns.text(bytes, source)),
            inWords,
            wind ? flag.suspectWindBySource : flag.suspectBySource,
            lineNumber,
            example,
          );
        }
        const leftOut = rowType === null ? null : leftOutAs(rowType);
        if (leftOut !== null) {
          problems.add(leftOut, lineNumber, example);
          return;
        }
        if (rowType !== null && isSpecial(rowType)) quality.flags |= flag.special;
        if (!fillReport(report.values, raw, quality.flags, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        places.addTexts(columns.text(bytes, lat), columns.text(bytes, lon), columns.text(bytes, elev));
        if (name >= 0) places.named(columns.text(bytes, name));
        report.monthIndex = stamp.year * 12 + stamp.month - 1;
        report.minuteOfMonth = stamp.minute;
        sink.add(report);
      },
    };
  },
};

/** Sources whose digits mean: 0 not checked, 1 good, 2 suspect, 3 erroneous, 4 calculated, 5 removed (section VI). */
const plainDigitSources = new Set(['220', '221', '222', '223', '347', '348']);

/**
 * What a quality code says. Letters are checks of the network's own that the value failed, among them f, derived from
 * a value that did; digits are the source's: those of the Integrated Surface Data, or plain ones for some sources.
 */
export function verdictOf(code: string, source: string): Verdict {
  // '9-Missing' of version 1.0 spells a digit out.
  const text = code.trim().replace(/^(\d)-.*$/, '$1');
  let verdict: Verdict = 'good';
  for (const mark of text) {
    const said = /[A-Za-z]/.test(mark)
      ? 'suspect'
      : plainDigitSources.has(source.trim())
        ? plain(mark)
        : ofSurfaceData(mark);
    if (said === null) continue;
    if (said === 'unknown' || said === 'erroneous') return said;
    if (said === 'suspect') verdict = said;
  }
  return verdict;
}

function plain(digit: string): Verdict | null {
  if ('014'.includes(digit)) return 'good';
  if (digit === '2') return 'suspect';
  if (digit === '3' || digit === '5') return 'erroneous';
  return /[\s,;]/.test(digit) ? null : 'unknown';
}

function ofSurfaceData(digit: string): Verdict | null {
  if ('01459'.includes(digit)) return 'good';
  if ('26'.includes(digit)) return 'suspect';
  if ('37'.includes(digit)) return 'erroneous';
  return /[\s,;]/.test(digit) ? null : 'unknown';
}
