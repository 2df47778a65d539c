import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Mapping } from '../../../main/weather-import/mapped/mapping.ts';
import { sample } from './samples.ts';
import { tmy2File } from './tmy2-lines.ts';

/** One short real sample of each kind as text, and what its lines look like. */
export interface EverySample {
  name: string;
  text: string;
  /** Lines before the first row. */
  headerLines: number;
  /** Whether a repeated header is counted as one. */
  namesColumns: boolean;
  /** A row's line with another date (of the calendar or not) and hour; the first form of its kind. */
  redated(line: string, year: string, month: string, day: string, hour: string): string;
  /** The line as of another station; null where rows name none. */
  ofOther: ((line: string) => string) | null;
  /** Whether 24:00 is a time of this kind. */
  knows24: boolean;
  /** Subtracted from a year that the lines cannot have. */
  yearsBack?: number;
  mapping?: Mapping;
}

const read = (name: string) =>
  (name.endsWith('.gz') ? gunzipSync(readFileSync(sample(name))) : readFileSync(sample(name))).toString(
    'latin1',
  );
const iso = (separator: string) => (line: string, year: string, month: string, day: string, hour: string) =>
  line.replace(
    new RegExp(`\\d{4}-\\d\\d-\\d\\d${separator}\\d\\d`),
    `${year}-${month}-${day}${separator === '[ T]' ? ' ' : separator}${hour}`,
  );
const put = (line: string, at: number, text: string) =>
  line.slice(0, at) + text + line.slice(at + text.length);
const nth = (line: string, delimiter: string, cells: Record<number, string>) =>
  line
    .split(delimiter)
    .map((cell, i) => cells[i] ?? cell)
    .join(delimiter);

const nyMapping: Mapping = {
  delimiter: ',',
  linesBefore: 0,
  time: { kind: 'stamp', column: 'time_hour', order: 'year first' },
  zone: { kind: 'offset', minutes: 0 },
  station: 'origin',
  values: [
    { quantity: 'temperature', column: 'temp', unit: 'degF' },
    { quantity: 'dew point', column: 'dewp', unit: 'degF' },
    { quantity: 'sea-level pressure', column: 'pressure', unit: 'hPa' },
    { quantity: 'wind speed', column: 'wind_speed', unit: 'mph' },
  ],
  nature: 'observed',
};

export const everySample: readonly EverySample[] = [
  {
    name: '725300-94846-2016.gz',
    text: read('725300-94846-2016.gz').split('\n').slice(0, 200).join('\n') + '\n',
    headerLines: 0,
    namesColumns: false,
    redated: (line, ...parts) => put(line, 0, parts.join(' ')),
    ofOther: null,
    knows24: false,
  },
  {
    name: '725650-03017-2010_excerpt.gz',
    text: read('725650-03017-2010_excerpt.gz').split('\n').slice(0, 200).join('\n') + '\n',
    headerLines: 0,
    namesColumns: false,
    redated: (line, ...parts) => put(line, 15, parts.join('')),
    ofOther: (line) => put(line, 4, '999999'),
    knows24: false,
  },
  {
    name: 'KATL_2025_excerpt.csv',
    text: read('KATL_2025_excerpt.csv'),
    headerLines: 1,
    namesColumns: true,
    redated: iso('T'),
    ofOther: (line) => put(line, 1, '999'),
    knows24: false,
  },
  {
    name: 'LCDv1_KATL_2020_excerpt.csv',
    text: read('LCDv1_KATL_2020_excerpt.csv'),
    headerLines: 1,
    namesColumns: true,
    redated: iso('T'),
    ofOther: (line) => put(line, 0, '999'),
    knows24: false,
  },
  {
    name: 'LCDv2_KLNK_2023_excerpt.csv',
    text: read('LCDv2_KLNK_2023_excerpt.csv'),
    headerLines: 1,
    namesColumns: true,
    redated: iso('T'),
    ofOther: (line) => put(line, 3, '999'),
    knows24: false,
  },
  {
    name: 'GHCNh_USW00013967_por_excerpt.psv',
    text: read('GHCNh_USW00013967_por_excerpt.psv'),
    headerLines: 1,
    namesColumns: true,
    redated: (line, year, month, day, hour) => nth(line, '|', { 2: year, 3: month, 4: day, 5: hour }),
    ofOther: (line) => put(line, 3, '999'),
    knows24: false,
  },
  {
    name: 'KDEN_typical_excerpt.epw',
    text: read('KDEN_typical_excerpt.epw'),
    headerLines: 8,
    namesColumns: false,
    redated: (line, year, month, day, hour) => nth(line, ',', { 0: year, 1: month, 2: day, 3: hour }),
    ofOther: null,
    knows24: true,
  },
  {
    name: 'KGSO_TMY3_excerpt.csv',
    text: read('KGSO_TMY3_excerpt.csv'),
    headerLines: 2,
    namesColumns: false,
    redated: (line, year, month, day, hour) =>
      nth(line, ',', { 0: `${month}/${day}/${year}`, 1: `${hour}:00` }),
    ofOther: null,
    knows24: true,
  },
  {
    name: 'a year by the layout of TMY2',
    text: tmy2File(3),
    headerLines: 1,
    namesColumns: false,
    yearsBack: 32,
    redated: (line, year, ...rest) => put(line, 1, [String(Number(year) - 32).slice(2), ...rest].join('')),
    ofOther: null,
    knows24: true,
  },
  {
    name: 'KDEN_2013_dated_excerpt.txt',
    text: read('KDEN_2013_dated_excerpt.txt').split('\n').slice(0, 100).join('\n') + '\n',
    headerLines: 0,
    namesColumns: false,
    redated: (line, ...parts) => put(line, 0, parts.join('')),
    ofOther: (line) => line.replace('KDEN', 'KXXX'),
    knows24: false,
  },
  {
    name: 'JFK_2020_excerpt.csv',
    text: read('JFK_2020_excerpt.csv'),
    headerLines: 1,
    namesColumns: true,
    redated: iso('[ T]'),
    ofOther: (line) => put(line, 0, 'ZZZ'),
    knows24: false,
  },
  {
    name: 'EWR_LGA_2013_excerpt.csv',
    text: read('EWR_LGA_2013_excerpt.csv')
      .split('\n')
      .filter((line) => !line.startsWith('LGA'))
      .join('\n'),
    headerLines: 1,
    namesColumns: true,
    redated: iso('T'),
    ofOther: (line) => put(line, 0, 'ZZZ'),
    knows24: true,
    mapping: nyMapping,
  },
];
