import { flag } from '../store/observation-columns.ts';
import { daysInMonth } from './calendar.ts';
import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { textOf } from './digits.ts';
import { findGroups, noGroups } from './isd-groups.ts';
import { OneStation } from './one-station.ts';
import { PlacesSeen } from './places-seen.ts';
import type { Kind, Reader } from './reader.ts';
import { isSpecial, leftOutAs } from './report-kinds.ts';
import { emptyReport } from './report-rows.ts';
import { isdPasses, isdVerdict, SourceQuality } from './source-quality.ts';
import { fiveDigits, fourDigits, sixDigits, threeDigits, twoDigits } from './words.ts';

// Integrated Surface Data, fixed-width archive format: control section (positions 1-60), mandatory section (61-105),
// groups of the additional section, remarks. UTC; every figure a scaled integer with a quality code behind it.
// Source: "Federal Climate Complex Data Documentation for Integrated Surface Data (ISD)", NOAA/NCEI. Offsets here are
// its positions less one.

const mandatoryEnd = 105;
const beginning = /^\d{4}[A-Z\d]\d{5}[A-Z\d]{5}\d{12}.[+-]\d{5}[+-]\d{6}.{5}[+-]\d{4}.{9}\d{3}./;

export const isdFixed: Kind = {
  recognises: (head) => beginning.test(textOf(head, 0, Math.min(head.length, 200))),
  open: (sink, problems, options): Reader => {
    const report = emptyReport();
    const raw = emptyRow();
    const quality = new SourceQuality(problems);
    const stations = new OneStation(options.stationInFile, problems, options.carried?.station);
    const places = new PlacesSeen();
    const groups = noGroups();
    const types = new Map<string, { leftOut: string | null; special: boolean }>();

    // The line that is read, kept here so that no row makes functions of its own: there are a million of them.
    let bytes: Uint8Array = new Uint8Array(0);
    let view = new DataView(bytes.buffer);
    let begin = 0;
    let end = 0;
    let line = 0;
    const example = () => textOf(bytes, begin, end);
    const checked = (value: number, code: number, words: string, suspect: number) =>
      value === absent || isdPasses(bytes[code] ?? 0)
        ? value
        : quality.apply(value, isdVerdict(bytes[code] ?? 0), words, suspect, line, example);
    const air = (value: number, code: number, words: string) =>
      checked(value, code, words, flag.suspectBySource);
    const wind = (value: number, code: number, words: string) =>
      checked(value, code, words, flag.suspectWindBySource);

    // Rows repeat most of what is before the values, so what was made of it last is kept with its bytes.
    const station = new LastBytes(11);
    const reportType = new LastBytes(5);
    let type = { leftOut: null as string | null, special: false };
    const yearAndMonth = new LastBytes(6);
    let monthIndex = 0;
    let days = 0;
    const coordinates = new LastBytes(13);
    const height = new LastBytes(5);
    let isPlaced = false;

    function typeOf(text: string): { leftOut: string | null; special: boolean } {
      let known = types.get(text);
      if (known === undefined) {
        known = { leftOut: leftOutAs(text), special: isSpecial(text) };
        if (types.size < 1000) types.set(text, known);
      }
      return known;
    }

    /** Days of no month are none, so that no day is one of it. */
    function readMonth(at: number): void {
      const year = fourDigits(view, at);
      const month = twoDigits(view, at + 4);
      monthIndex = year * 12 + month - 1;
      days = year < 1900 || year > 2100 || month < 1 || month > 12 ? 0 : daysInMonth(year, month);
    }

    /** Whether the row is an observation of the station that is read, at a time that there is. */
    function isOurs(from: number): boolean {
      if (station.areAt(view, from + 4)) stations.takeAgain();
      else {
        if (!stations.takes(bytes, from + 4, from + 15, line, example)) return false;
        station.keep(view, from + 4);
      }
      if (!reportType.areAt(view, from + 41)) {
        reportType.keep(view, from + 41);
        type = typeOf(textOf(bytes, from + 41, from + 46));
      }
      if (type.leftOut !== null) {
        problems.add(type.leftOut, line, example);
        return false;
      }
      if (!yearAndMonth.areAt(view, from + 15)) {
        yearAndMonth.keep(view, from + 15);
        readMonth(from + 15);
      }
      const dayAndHour = fourDigits(view, from + 21);
      const day = Math.floor(dayAndHour / 100);
      const hour = dayAndHour - day * 100;
      const minute = twoDigits(view, from + 25);
      if (day < 1 || day > days || hour > 23 || minute < 0 || minute > 59) {
        problems.add('no such date or time: row left out', line, example);
        return false;
      }
      report.minuteOfMonth = ((day - 1) * 24 + hour) * 60 + minute;
      return true;
    }

    /** The mandatory section; false where a figure in it is none. */
    function readMandatory(from: number): boolean {
      const temperature = signed(view, from + 87, fourDigits(view, from + 88), 9999);
      const dewPoint = signed(view, from + 93, fourDigits(view, from + 94), 9999);
      const seaLevel = given(fiveDigits(view, from + 99), 99_999);
      const direction = given(threeDigits(view, from + 60), 999);
      const speed = given(fourDigits(view, from + 65), 9999);
      if (
        temperature === notDigits ||
        dewPoint === notDigits ||
        seaLevel === notDigits ||
        direction === notDigits ||
        speed === notDigits
      )
        return false;
      quality.flags = type.special ? flag.special : 0;
      raw.temperatureC100 = air(times10(temperature), from + 92, 'temperature');
      raw.dewPointC100 = air(times10(dewPoint), from + 98, 'dew point');
      raw.seaLevelPressureHpa100 = air(times10(seaLevel), from + 104, 'sea-level pressure');
      raw.windSpeedMs100 = wind(times10(speed), from + 69, 'wind speed');
      // 999 is missing, variable or, with the speed 0, calm: a speed without direction counts as variable.
      raw.windFromDeg = wind(direction, from + 63, 'wind direction');
      return true;
    }

    function readAdditional(from: number, to: number): void {
      findGroups(view, from, to, groups);
      const { pressureAt, gustAt } = groups;
      if (pressureAt < 0) {
        raw.altimeterSettingHpa100 = absent;
        raw.stationPressureHpa100 = absent;
      } else {
        const setting = times10(given(groups.setting, 99_999));
        const pressure = times10(given(groups.stationPressure, 99_999));
        raw.altimeterSettingHpa100 = air(setting, pressureAt + 8, 'altimeter setting');
        raw.stationPressureHpa100 = air(pressure, pressureAt + 14, 'station pressure');
      }
      raw.gustMs100 = gustAt < 0 ? absent : wind(times10(given(groups.gust, 9999)), gustAt + 7, 'gust');
    }

    function notePlace(from: number): void {
      if (coordinates.areAt(view, from + 28) && height.areAt(view, from + 46)) {
        if (isPlaced) places.addAgain();
        return;
      }
      coordinates.keep(view, from + 28);
      height.keep(view, from + 46);
      const latitude = signed(view, from + 28, fiveDigits(view, from + 29), 99_999);
      const longitude = signed(view, from + 34, sixDigits(view, from + 35), 999_999);
      const elevation = signed(view, from + 46, fourDigits(view, from + 47), 9999);
      isPlaced = latitude > absent && longitude > absent;
      if (isPlaced) places.add(latitude / 1000, longitude / 1000, elevation > absent ? elevation : NaN);
    }

    return {
      kind: 'isd-fixed',
      kindInWords: 'fixed-width file of the Integrated Surface Data',
      nature: 'observed',
      remarks: [],
      stationsInFile: () => stations.list(),
      placeInFile: () => places.most(),
      stretches: {
        carried: () => {
          const carried = stations.carried();
          return carried === null ? null : { station: carried, header: null };
        },
        seen: () => ({ stations: stations.list(), places: places.list() }),
        take: (seen) => {
          if (!stations.canTake(seen) || !places.canTake(seen)) return false;
          stations.take(seen);
          places.take(seen);
          return true;
        },
      },
      line(lineBytes, from, to, lineNumber) {
        if (to === from) return;
        if (lineBytes !== bytes) {
          bytes = lineBytes;
          view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
        }
        begin = from;
        end = to;
        line = lineNumber;
        const additional = to - from < mandatoryEnd ? -1 : fourDigits(view, from);
        if (additional < 0 || to - from < mandatoryEnd + additional) {
          problems.add('row cut short: left out', lineNumber, example);
          return;
        }
        if (to - from > mandatoryEnd + additional) {
          problems.add('row longer than it says itself: left out', lineNumber, example);
          return;
        }
        if (!isOurs(from)) return;
        if (!readMandatory(from)) {
          problems.add('a column that is not a number: row left out', lineNumber, example);
          return;
        }
        readAdditional(from + mandatoryEnd, to);
        if (!fillReport(report.values, raw, quality.flags, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        notePlace(from);
        report.monthIndex = monthIndex;
        sink.add(report);
      },
    };
  },
};

const notDigits = absent - 1;
const minus = 45;
const plus = 43;

/** A whole number; absent where it is the one that stands for missing, notDigits where it is none. */
function given(value: number, missingAs: number): number {
  return value === missingAs ? absent : value < 0 ? notDigits : value;
}

/** The same after a sign. */
function signed(view: DataView, at: number, value: number, missingAs: number): number {
  const sign = view.getUint8(at);
  if (value < 0 || (sign !== minus && sign !== plus)) return notDigits;
  if (sign === minus) return -value;
  return value === missingAs ? absent : value;
}

/** Tenths to hundredths; what is no number in a group behind counts as not given. */
function times10(value: number): number {
  return value <= absent ? absent : value * 10;
}

/** Some bytes of a row, to tell whether the next row has the same at that place. */
class LastBytes {
  readonly #length: number;
  #isKept = false;
  #first = 0;
  #second = 0;
  #third = 0;
  #last = 0;

  /** @param length 4 to 16 */
  constructor(length: number) {
    this.#length = length;
  }

  areAt(view: DataView, at: number): boolean {
    const length = this.#length;
    return (
      this.#isKept &&
      view.getInt32(at, true) === this.#first &&
      (length <= 8 || view.getInt32(at + 4, true) === this.#second) &&
      (length <= 12 || view.getInt32(at + 8, true) === this.#third) &&
      // The last four, of which some may have been compared already.
      view.getInt32(at + length - 4, true) === this.#last
    );
  }

  keep(view: DataView, at: number): void {
    const length = this.#length;
    this.#isKept = true;
    this.#first = view.getInt32(at, true);
    this.#second = length <= 8 ? 0 : view.getInt32(at + 4, true);
    this.#third = length <= 12 ? 0 : view.getInt32(at + 8, true);
    this.#last = view.getInt32(at + length - 4, true);
  }
}
