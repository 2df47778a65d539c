import { flag } from '../store/observation-columns.ts';
import { absent, emptyRow, fillReport, type RawValues } from './check-ranges.ts';
import { hundredths, nothing, numbersFrom, textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { readIsoStamp, type Stamp } from './iso-stamp.ts';
import { lcdStandardTime } from './lcd-offset.ts';
import { putLocalTime } from './local-standard-time.ts';
import { emptyReport } from './report-rows.ts';
import { NamedColumns } from './named-columns.ts';
import { OneStation } from './one-station.ts';
import { PlacesSeen } from './places-seen.ts';
import type { Kind, Reader } from './reader.ts';
import { isSpecial, leftOutAs } from './report-kinds.ts';
import { SourceQuality } from './source-quality.ts';
import { firstLine, headerNames } from './split-row.ts';
import { asIs, fromFahrenheit, fromInchOfMercury, fromMilePerHour, toWhole, type Convert } from './units.ts';

// Local climatological data: one row a report, over a hundred columns of which a person may have chosen some. Local
// standard time all year. The first layout is in degF, inHg and mph, the second, under the same names, in degC, hPa
// and m/s: told apart by the station's identifier (72219013874 or USW00014939) and by the size of the pressures.
// Source: "Local Climatological Data (LCD) Dataset Documentation", NOAA/NCEI: conventions, hourly observations,
// special indicators.

const temperatureName = 'HourlyDryBulbTemperature';
const pressureNames = ['HourlyAltimeterSetting', 'HourlySeaLevelPressure', 'HourlyStationPressure'];

interface Column {
  name: string;
  column: keyof RawValues;
  inWords: string;
  wind: boolean;
  /** Of the first and of the second layout. */
  convert: [Convert, Convert];
}

const read: readonly Column[] = [
  {
    name: temperatureName,
    column: 'temperatureC100',
    inWords: 'temperature',
    wind: false,
    convert: [fromFahrenheit, asIs],
  },
  {
    name: 'HourlyDewPointTemperature',
    column: 'dewPointC100',
    inWords: 'dew point',
    wind: false,
    convert: [fromFahrenheit, asIs],
  },
  {
    name: 'HourlyAltimeterSetting',
    column: 'altimeterSettingHpa100',
    inWords: 'altimeter setting',
    wind: false,
    convert: [fromInchOfMercury, asIs],
  },
  {
    name: 'HourlySeaLevelPressure',
    column: 'seaLevelPressureHpa100',
    inWords: 'sea-level pressure',
    wind: false,
    convert: [fromInchOfMercury, asIs],
  },
  {
    name: 'HourlyStationPressure',
    column: 'stationPressureHpa100',
    inWords: 'station pressure',
    wind: false,
    convert: [fromInchOfMercury, asIs],
  },
  {
    name: 'HourlyWindSpeed',
    column: 'windSpeedMs100',
    inWords: 'wind speed',
    wind: true,
    convert: [fromMilePerHour, asIs],
  },
  {
    name: 'HourlyWindGustSpeed',
    column: 'gustMs100',
    inWords: 'gust',
    wind: true,
    convert: [fromMilePerHour, asIs],
  },
  {
    name: 'HourlyWindDirection',
    column: 'windFromDeg',
    inWords: 'wind direction',
    wind: true,
    convert: [toWhole, toWhole],
  },
];
const others = ['STATION', 'DATE', 'datetime', 'REPORT_TYPE', 'LATITUDE', 'LONGITUDE', 'ELEVATION', 'NAME'];

export const lcd: Kind = {
  recognises: (head) => {
    const names = headerNames(firstLine(head) ?? '', ',');
    return (
      names.includes(temperatureName) &&
      names.includes('STATION') &&
      (names.includes('DATE') || names.includes('datetime'))
    );
  },
  prepare: async (head, options) => ({
    standardTime: await lcdStandardTime(head, options.standardOffsetMinutes),
  }),
  open: (sink, problems, options, head): Reader => {
    const columns = new NamedColumns(head, ',', true, [...others, ...read.map(({ name }) => name)], problems);
    const layout = layoutOf(head);
    const offset = options.standardTime;
    if (offset === undefined) throw new Error('lcd.prepare finds the zone before lcd.open.');
    const cells = read
      .map(({ name, convert, ...rest }) => ({ at: columns.at(name), convert: convert[layout], ...rest }))
      .filter(({ at }) => at >= 0);
    const [station, date, datetime, type, lat, lon, elev, name] = others.map((each) => columns.at(each)) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const time = date >= 0 ? date : datetime;
    const { starts, ends } = columns;
    const report = emptyReport();
    const raw = emptyRow();
    const quality = new SourceQuality(problems);
    const stations = new OneStation(options.stationInFile, problems);
    const places = new PlacesSeen();
    const stamp: Stamp = { year: 0, month: 0, minute: 0 };
    /** Whether the cell read last carried the suspect mark. */
    let lastIsSuspect = false;

    return {
      kind: layout === 0 ? 'lcd-1' : 'lcd-2',
      kindInWords: `local climatological data (CSV), ${layout === 0 ? 'first layout: degF, inHg, mph' : 'second layout: degC, hPa, m/s'}`,
      nature: 'observed',
      remarks: [
        `Its times are local standard time all year, taken as UTC${utcText(offset.minutes)} ${offset.from}.`,
      ],
      stationsInFile: () => stations.list(),
      placeInFile: () => places.most(),
      line(bytes, from, to, lineNumber) {
        if (!columns.row(bytes, from, to, lineNumber)) return;
        const example = () => textOf(bytes, from, to);
        if (!stations.takes(bytes, starts[station] ?? 0, ends[station] ?? 0, lineNumber, example)) return;
        const reportType = columns.text(bytes, type);
        const leftOut = leftOutAs(reportType);
        if (leftOut !== null) {
          problems.add(leftOut, lineNumber, example);
          return;
        }
        readIsoStamp(bytes, starts[time] ?? 0, ends[time] ?? 0, stamp);
        if (stamp.minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }
        quality.flags = isSpecial(reportType) ? flag.special : 0;
        for (const { at, column, convert, inWords, wind } of cells) {
          const value = cell(bytes, starts[at] ?? 0, ends[at] ?? 0);
          if (value === spoilt) {
            problems.add(`${inWords} is not a number: row left out`, lineNumber, () =>
              columns.text(bytes, at),
            );
            return;
          }
          raw[column] =
            value === absent
              ? absent
              : quality.apply(
                  convert(value),
                  lastIsSuspect ? 'suspect' : 'good',
                  inWords,
                  wind ? flag.suspectWindBySource : flag.suspectBySource,
                  lineNumber,
                  example,
                );
        }
        if (!fillReport(report.values, raw, quality.flags, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        places.addTexts(columns.text(bytes, lat), columns.text(bytes, lon), columns.text(bytes, elev));
        if (name >= 0) places.named(columns.text(bytes, name));
        putLocalTime(report, stamp.year, stamp.month, stamp.minute, offset.minutes);
        sink.add(report);
      },
    };

    /**
     * Hundredths, absent or spoilt. Marks glued to values: s suspect, V variable; alone: *, M, T, NA, VRB and blank are
     * no figure.
     */
    function cell(bytes: Uint8Array, start: number, end: number): number {
      lastIsSuspect = false;
      let value = hundredths(bytes, start, end);
      if (value >= numbersFrom) return value;
      if (value === nothing) return absent;
      const mark = bytes[end - 1];
      if (mark === letterS || mark === letterV) {
        value = hundredths(bytes, start, end - 1);
        lastIsSuspect = mark === letterS;
        if (value >= numbersFrom) return value;
      }
      return /^(\*|M|T|NA|VRB)$/.test(textOf(bytes, start, end).trim()) ? absent : spoilt;
    }
  },
};

const letterS = 115;
const letterV = 86;
const spoilt = absent - 1;

/** 0 for the first layout, 1 for the second. @throws FileProblem where identifier and pressures disagree */
function layoutOf(head: Uint8Array): 0 | 1 {
  const lines = textOf(head, 0, head.length).split('\n');
  const names = headerNames(lines[0] ?? '', ',');
  const rows = lines
    .slice(1, -1)
    .filter((line) => line !== '' && line !== lines[0])
    .map((line) => headerNames(line, ','));
  const identifier = rows[0]?.[names.indexOf('STATION')] ?? '';
  const byIdentifier = /^[A-Z]{2}/.test(identifier) ? 1 : 0;
  const pressure = rows
    .flatMap((row) => pressureNames.map((name) => Number.parseFloat(row[names.indexOf(name)] ?? '')))
    .find((value) => value > 0);
  // Between the two units lies everything from 33 to 400: no air pressure at all.
  const byPressure = pressure === undefined ? byIdentifier : pressure > 200 ? 1 : 0;
  if (byPressure !== byIdentifier)
    throw new FileProblem(
      `Station '${identifier}' is written as in the ${byIdentifier === 0 ? 'first layout (inHg)' : 'second layout (hPa)'}, but its pressures (${String(pressure)}) are not in that unit. The units cannot be told.`,
    );
  return byIdentifier;
}

function utcText(minutes: number): string {
  const size = Math.abs(minutes);
  const clock = `${String(Math.floor(size / 60))}${size % 60 === 0 ? '' : `:${String(size % 60).padStart(2, '0')}`}`;
  return `${minutes < 0 ? '-' : '+'}${clock}`;
}
