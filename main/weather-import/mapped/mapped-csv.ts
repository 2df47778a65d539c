import { dewPointFromHumidityC } from '../../../shared-calc/atmosphere/humidity.ts';
import { monthStartEpochS } from '../calendar.ts';
import { absent, emptyRow, fillReport, type RawValues } from '../check-ranges.ts';
import { integer, notANumber, nothing, numbersFrom, textOf } from '../digits.ts';
import { FileProblem } from '../file-problem.ts';
import { putLocalTime } from '../local-standard-time.ts';
import { emptyReport } from '../report-rows.ts';
import { NamedColumns } from '../named-columns.ts';
import { OneStation } from '../one-station.ts';
import type { Kind, Reader } from '../reader.ts';
import { quantities, unitsOf, type Mapping, type Quantity } from './mapping.ts';
import { readParts, readStamp, type PrintedTime } from './stamp.ts';
import { WallClock } from './wall-clock.ts';
import type { Convert } from '../units.ts';

// Any hourly table, read as a person confirmed its columns.

const columnOf: Partial<Record<Quantity, keyof RawValues>> = {
  temperature: 'temperatureC100',
  'dew point': 'dewPointC100',
  'station pressure': 'stationPressureHpa100',
  'altimeter setting': 'altimeterSettingHpa100',
  'sea-level pressure': 'seaLevelPressureHpa100',
  'wind direction': 'windFromDeg',
  'wind speed': 'windSpeedMs100',
  gust: 'gustMs100',
};
const noFigure = /^(na|n\/a|nan|null|none|m|-|--|\*|-9999?(\.0+)?|vrb)$/i;

/** A reader for one mapping. */
export function mappedCsv(mapping: Mapping): Kind {
  return {
    recognises: () => true,
    prepare: async () =>
      mapping.zone.kind === 'clock'
        ? { zoneOf: (await import('../../requests/zone-offsets.ts')).zoneOffsets }
        : {},
    open: (sink, problems, options, wholeHead): Reader => {
      const head = afterLines(wholeHead, mapping.linesBefore);
      const { time, zone, values } = mapping;
      const clockNames =
        time.kind === 'stamp'
          ? [time.column]
          : [time.year, time.month, time.day, time.hour, ...(time.minute === null ? [] : [time.minute])];
      const wanted = [
        ...clockNames,
        ...(mapping.station === null ? [] : [mapping.station]),
        ...values.map(({ column }) => column),
      ];
      const columns = new NamedColumns(head, mapping.delimiter, true, wanted, problems);
      for (const name of wanted)
        if (columns.at(name) < 0)
          throw new FileProblem(`It has no column '${name}', which the mapping names.`);
      const { starts, ends } = columns;
      const clockAt = clockNames.map((name) => columns.at(name));
      const stationAt = mapping.station === null ? -1 : columns.at(mapping.station);
      const cells = values.map(({ quantity, column, unit }) => ({
        quantity,
        at: columns.at(column),
        convert: convertOf(quantity, unit),
      }));
      const clock =
        zone.kind === 'clock' && options.zoneOf !== undefined
          ? new WallClock(zone.timeZone, options.zoneOf)
          : null;
      const report = emptyReport();
      const raw = emptyRow();
      const stations = new OneStation(options.stationInFile, problems);

      function printedTime(bytes: Uint8Array): PrintedTime | null {
        if (time.kind === 'stamp') return readStamp(columns.text(bytes, clockAt[0] ?? -1), time.order);
        const [year = -1, month = -1, day = -1, hour = -1, minute = 0] = clockAt.map((at) =>
          integer(bytes, starts[at] ?? 0, ends[at] ?? 0),
        );
        return readParts(year, month, day, hour, minute);
      }

      return {
        kind: 'mapped-csv',
        kindInWords: 'table with columns as they were mapped',
        nature: mapping.nature,
        remarks: remarksOf(mapping),
        stationsInFile: () => stations.list(),
        line(bytes, from, to, lineNumber) {
          if (lineNumber <= mapping.linesBefore) return;
          if (!columns.row(bytes, from, to, lineNumber)) return;
          const example = () => textOf(bytes, from, to);
          if (
            stationAt >= 0 &&
            !stations.takes(bytes, starts[stationAt] ?? 0, ends[stationAt] ?? 0, lineNumber, example)
          )
            return;
          const moment = printedTime(bytes);
          if (moment === null) {
            problems.add('no such date or time: row left out', lineNumber, example);
            return;
          }
          let offset = moment.offsetMinutes ?? (zone.kind === 'offset' ? zone.minutes : 0);
          if (clock !== null && moment.offsetMinutes === null) {
            const localMinute = monthStartEpochS(moment.year * 12 + moment.month - 1) / 60 + moment.minute;
            const found = clock.offsetAt(localMinute, moment.year);
            if (found === null) {
              problems.add('an hour that its clock never showed: row left out', lineNumber, example);
              return;
            }
            offset = found;
          }
          let humidity100 = absent;
          // What no column gives stays absent; a dew point made from humidity must not outlive its row.
          raw.dewPointC100 = absent;
          for (const { quantity, at, convert } of cells) {
            const start = starts[at] ?? 0;
            const end = ends[at] ?? 0;
            const value = figure(bytes, start, end);
            const column = columnOf[quantity];
            let read = absent;
            if (value >= numbersFrom)
              read = value === -999_900 || value === -99_900 ? absent : Math.round(convert(value));
            else if (value !== nothing && !noFigure.test(textOf(bytes, start, end).trim())) {
              problems.add(`${quantity} is not a number: row left out`, lineNumber, () =>
                columns.text(bytes, at),
              );
              return;
            }
            if (column === undefined) humidity100 = read;
            else raw[column] = read;
          }
          if (humidity100 !== absent && raw.dewPointC100 === absent)
            raw.dewPointC100 = dewPointOf(raw.temperatureC100, humidity100, () => {
              problems.add('humidity outside 1 to 100 %: value left out', lineNumber, example);
            });
          if (!fillReport(report.values, raw, 0, problems, lineNumber, example)) {
            problems.add('no value in it that is kept: row left out', lineNumber, example);
            return;
          }
          putLocalTime(report, moment.year, moment.month, moment.minute, offset);
          sink.add(report);
        },
      };
    },
  };
}

/**
 * Hundredths, not rounded: tables come with fifteen decimals, and rounding belongs behind the conversion. Also of 1e3,
 * as some programs write 1000.
 */
function figure(bytes: Uint8Array, start: number, end: number): number {
  const text = textOf(bytes, start, end).trim();
  if (text === '') return nothing;
  return /^[-+]?(\d{1,7}(\.\d*)?|\.\d+)(e[-+]?\d)?$/i.test(text) ? Number(text) * 100 : notANumber;
}

/** Dew point in hundredths from temperature and humidity in hundredths; absent where either cannot be. */
function dewPointOf(temperatureC100: number, humidity100: number, outside: () => void): number {
  if (temperatureC100 < -4500 || temperatureC100 > 6000) return absent;
  if (humidity100 < 100 || humidity100 > 10_000) {
    outside();
    return absent;
  }
  return Math.round(dewPointFromHumidityC(temperatureC100 / 100, humidity100 / 10_000) * 100);
}

function convertOf(quantity: Quantity, unit: string): Convert {
  const units: Record<string, Convert> = unitsOf[quantities[quantity]];
  const convert = units[unit];
  if (convert === undefined) throw new FileProblem(`'${unit}' is no unit of ${quantity}.`);
  return convert;
}

function remarksOf({ nature, values }: Mapping): string[] {
  const has = (quantity: Quantity) => values.some((value) => value.quantity === quantity);
  const remarks: string[] = [];
  if (nature !== 'observed')
    remarks.push(`It is no record of observations (${nature}): it never answers how many days in ten.`);
  if (!has('dew point') && !has('humidity'))
    remarks.push('It has neither dew point nor humidity, so density altitude cannot be had from it.');
  if (!has('station pressure') && !has('altimeter setting'))
    remarks.push(
      has('sea-level pressure')
        ? 'It has only the pressure reduced to sea level: the least certain way to density altitude.'
        : 'It has no pressure, so density altitude cannot be had from it.',
    );
  if (!has('dew point') && has('humidity'))
    remarks.push('Its dew point is had from temperature and humidity.');
  return remarks;
}

/** The bytes behind so many lines. */
export function afterLines(bytes: Uint8Array, lines: number): Uint8Array {
  let from = 0;
  for (let i = 0; i < lines; i++) {
    const end = bytes.indexOf(10, from);
    if (end < 0) throw new FileProblem('The header with the names of the columns is missing.');
    from = end + 1;
  }
  return bytes.subarray(from);
}
