import { flag } from '../store/observation-columns.ts';
import { minuteOfMonth } from './calendar.ts';
import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { fixedDigits, textOf } from './digits.ts';
import { emptyReport } from './month-collector.ts';
import { OneStation } from './one-station.ts';
import { PlacesSeen } from './places-seen.ts';
import type { Kind, Reader } from './reader.ts';
import { isSpecial, leftOutAs } from './report-kinds.ts';
import { isdVerdict, SourceQuality } from './source-quality.ts';

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
    const stations = new OneStation(options.stationInFile, problems);
    const places = new PlacesSeen();
    const found: Groups = { pressure: -1, gust: -1 };
    const types = new Map<number, { leftOut: string | null; special: boolean }>();

    // The line that is read, kept here so that no row makes functions of its own: there are a million of them.
    let bytes: Uint8Array = new Uint8Array(0);
    let begin = 0;
    let end = 0;
    let line = 0;
    const example = () => textOf(bytes, begin, end);
    const checked = (value: number, code: number, words: string) =>
      value === absent
        ? absent
        : quality.apply(value, isdVerdict(bytes[code] ?? 0), words, flag.suspectBySource, line, example);
    const checkedWind = (value: number, code: number, words: string) =>
      value === absent
        ? absent
        : quality.apply(value, isdVerdict(bytes[code] ?? 0), words, flag.suspectWindBySource, line, example);

    function typeOf(bytes: Uint8Array, at: number): { leftOut: string | null; special: boolean } {
      let key = 0;
      for (let i = at; i < at + 5; i++) key = key * 256 + (bytes[i] ?? 0);
      let known = types.get(key);
      if (known === undefined) {
        const text = textOf(bytes, at, at + 5);
        known = { leftOut: leftOutAs(text), special: isSpecial(text) };
        if (types.size < 1000) types.set(key, known);
      }
      return known;
    }

    return {
      kind: 'isd-fixed',
      kindInWords: 'fixed-width file of the Integrated Surface Data',
      nature: 'observed',
      remarks: [],
      stationsInFile: () => stations.list(),
      placeInFile: () => places.most(),
      line(lineBytes, from, to, lineNumber) {
        if (to === from) return;
        bytes = lineBytes;
        begin = from;
        end = to;
        line = lineNumber;
        const additional = fixedDigits(bytes, from, 4);
        if (to - from < mandatoryEnd || additional < 0 || to - from < mandatoryEnd + additional) {
          problems.add('row cut short: left out', lineNumber, example);
          return;
        }
        if (to - from > mandatoryEnd + additional) {
          problems.add('row longer than it says itself: left out', lineNumber, example);
          return;
        }
        if (!stations.takes(bytes, from + 4, from + 15, lineNumber, example)) return;
        const type = typeOf(bytes, from + 41);
        if (type.leftOut !== null) {
          problems.add(type.leftOut, lineNumber, example);
          return;
        }
        const year = fixedDigits(bytes, from + 15, 4);
        const month = fixedDigits(bytes, from + 19, 2);
        const minute = minuteOfMonth(
          year,
          month,
          fixedDigits(bytes, from + 21, 2),
          fixedDigits(bytes, from + 23, 2),
          fixedDigits(bytes, from + 25, 2),
        );
        if (minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }
        const temperature = signed(bytes, from + 87, 4, 9999);
        const dewPoint = signed(bytes, from + 93, 4, 9999);
        const seaLevel = digits(bytes, from + 99, 5, 99_999);
        const direction = digits(bytes, from + 60, 3, 999);
        const speed = digits(bytes, from + 65, 4, 9999);
        if (
          temperature === notDigits ||
          dewPoint === notDigits ||
          seaLevel === notDigits ||
          direction === notDigits ||
          speed === notDigits
        ) {
          problems.add('a column that is not a number: row left out', lineNumber, example);
          return;
        }

        quality.flags = type.special ? flag.special : 0;
        raw.temperatureC100 = checked(times10(temperature), from + 92, 'temperature');
        raw.dewPointC100 = checked(times10(dewPoint), from + 98, 'dew point');
        raw.seaLevelPressureHpa100 = checked(times10(seaLevel), from + 104, 'sea-level pressure');
        raw.windSpeedMs100 = checkedWind(times10(speed), from + 69, 'wind speed');
        // 999 is missing, variable or, with the speed 0, calm: a speed without direction counts as variable.
        raw.windFromDeg = checkedWind(direction, from + 63, 'wind direction');

        raw.altimeterSettingHpa100 = absent;
        raw.stationPressureHpa100 = absent;
        raw.gustMs100 = absent;
        const groups = additionalGroups(bytes, from + mandatoryEnd, to, found);
        if (groups.pressure >= 0) {
          const at = groups.pressure + 3;
          raw.altimeterSettingHpa100 = checked(
            times10(digits(bytes, at, 5, 99_999)),
            at + 5,
            'altimeter setting',
          );
          raw.stationPressureHpa100 = checked(
            times10(digits(bytes, at + 6, 5, 99_999)),
            at + 11,
            'station pressure',
          );
        }
        if (groups.gust >= 0) {
          const at = groups.gust + 3;
          raw.gustMs100 = checkedWind(times10(digits(bytes, at, 4, 9999)), at + 4, 'gust');
        }

        if (!fillReport(report.values, raw, quality.flags, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        const latitude = signed(bytes, from + 28, 5, 99_999);
        const longitude = signed(bytes, from + 34, 6, 999_999);
        const elevation = signed(bytes, from + 46, 4, 9999);
        if (latitude > absent && longitude > absent)
          places.add(latitude / 1000, longitude / 1000, elevation > absent ? elevation : NaN);
        report.monthIndex = year * 12 + month - 1;
        report.minuteOfMonth = minute;
        sink(report);
      },
    };
  },
};

const notDigits = absent - 1;
const digit1 = 49;
const letterA = 65;
const letterC = 67;
const letterD = 68;
const letterE = 69;
const letterM = 77;
const letterO = 79;
const letterQ = 81;
const letterR = 82;
const minus = 45;
const plus = 43;

/** A whole number of that many digits; absent where it is the one that stands for missing, notDigits where it is none. */
function digits(bytes: Uint8Array, at: number, count: number, missingAs: number): number {
  const value = fixedDigits(bytes, at, count);
  return value === missingAs ? absent : value < 0 ? notDigits : value;
}

/** The same after a sign. */
function signed(bytes: Uint8Array, at: number, count: number, missingAs: number): number {
  const sign = bytes[at];
  if (sign !== minus && sign !== plus) return notDigits;
  const value = fixedDigits(bytes, at + 1, count);
  if (value < 0) return notDigits;
  if (value === missingAs && sign === plus) return absent;
  return sign === minus ? -value : value;
}

/** Tenths to hundredths; what is no number in a group behind counts as not given. */
function times10(value: number): number {
  return value <= absent ? absent : value * 10;
}

interface Groups {
  pressure: number;
  gust: number;
}

/**
 * Where MA1 (pressures) and OC1 (gust) begin, -1 where they do not. Free text behind REM and the edits behind EQD can
 * hold any letters, so the search ends there. What looks like a group but has no figures is part of another.
 */
function additionalGroups(bytes: Uint8Array, from: number, to: number, into: Groups): Groups {
  into.pressure = -1;
  into.gust = -1;
  // The marks are three bytes long, so the third tells how far the next can be: most are digits that end none.
  for (let at = from; at + 2 < to;) {
    const first = bytes[at];
    const second = bytes[at + 1];
    switch (bytes[at + 2]) {
      case digit1:
        if (first === letterM && second === letterA) {
          if (into.pressure < 0 && hasPressures(bytes, at, to)) into.pressure = at;
        } else if (first === letterO && second === letterC && into.gust < 0 && hasGust(bytes, at, to))
          into.gust = at;
        at += 3;
        break;
      case letterM:
        if (first === letterR && second === letterE) return into;
        at += 2;
        break;
      case letterD:
        if (first === letterE && second === letterQ) return into;
        at += 3;
        break;
      case letterO:
      case letterR:
        at += 2;
        break;
      case letterA:
      case letterC:
      case letterE:
      case letterQ:
        at += 1;
        break;
      default:
        at += 3;
    }
  }
  return into;
}

function hasPressures(bytes: Uint8Array, at: number, to: number): boolean {
  return at + 15 <= to && fixedDigits(bytes, at + 3, 5) >= 0 && fixedDigits(bytes, at + 9, 5) >= 0;
}

function hasGust(bytes: Uint8Array, at: number, to: number): boolean {
  return at + 8 <= to && fixedDigits(bytes, at + 3, 4) >= 0;
}
