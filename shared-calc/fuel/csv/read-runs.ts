import { readNumber } from '../../units/parse-number.ts';
import type { GaugeReading, RunStart } from '../fill-run.ts';
import type { GaugeScale } from '../gauge-scale.ts';
import { parseReading } from '../parse-reading.ts';
import type { ContainerRecord, FillRunRecord } from '../records.ts';
import { csvRows, type CsvRow } from './cells.ts';
import { ENDS, readingUnit, STARTS, VOLUME_UNITS } from './columns.ts';

/** What cannot be taken in, by its place in the file. Nothing of the file is taken then. */
export interface CsvRefusal {
  readonly line: number;
  readonly field: string;
  /** As it stands in the file. */
  readonly value: string;
  readonly expected: string;
}

export type RunsFromCsv =
  | { readonly ok: true; readonly runs: FillRunRecord[]; readonly pourCount: number }
  | { readonly ok: false; readonly refusals: readonly CsvRefusal[] };

export interface RunsOfFile {
  readonly text: string;
  /** The gauge on which the file's readings were taken. */
  readonly scale: GaugeScale;
  readonly containers: readonly Pick<ContainerRecord, 'id' | 'name'>[];
  /** Gives each run and pour its id. */
  readonly newId: () => string;
  /** For pours without a time. */
  readonly nowEpochS: number;
}

const DIRECTIONS = { filling: 'filling', draining: 'draining' } as const;
const LARGEST_VOLUME_L = 1000;
const LONGEST_STICK_MM = 2000;
const LONGEST_FILE = 500;

/**
 * Runs of a fill test from a CSV with units in its header: `volume_L` (or `volume_US_gal`, `volume_imp_gal`) and
 * `reading_...` as the gauge prints it are needed, the other columns of `RUN_COLUMNS` may be there.
 * @returns the runs, or every figure that is not taken with its line, field and value
 * @throws RangeProblem for a scale outside its ranges
 * @see runsToCsv the other way round
 */
export function runsFromCsv(file: RunsOfFile): RunsFromCsv {
  const [header, ...rows] = csvRows(file.text);
  if (header === undefined) return refusedFile(1, 'header', '', 'a line of column names');
  const named = columnsOf(header, file.scale);
  if ('refusals' in named) return { ok: false, refusals: named.refusals };
  if (rows.length === 0) return refusedFile(header.line + 1, 'volume', '', 'at least one pour');
  if (rows.length > LONGEST_FILE)
    return refusedFile(rows[LONGEST_FILE]?.line ?? 0, 'row', '', `at most ${String(LONGEST_FILE)} pours`);
  const reader = new RowReader(file, named.columns, header.cells.length);
  for (const row of rows) reader.take(row);
  return reader.refusals.length > 0
    ? { ok: false, refusals: reader.refusals }
    : { ok: true, runs: reader.runs, pourCount: rows.length };
}

function refusedFile(line: number, field: string, value: string, expected: string): RunsFromCsv {
  return { ok: false, refusals: [{ line, field, value, expected }] };
}

interface Column {
  readonly at: number;
  readonly name: string;
  /** Litres for one of its unit. */
  readonly perUnitL: number;
}
type Columns = Readonly<Record<string, Column>>;

const PLAIN_COLUMNS = [
  'run',
  'direction',
  'start',
  'container',
  'ends_at',
  'time_utc',
  'stick_mm',
  'set_aside_because',
];
const VOLUME_COLUMNS = ['volume', 'start_usable', 'start_sd', 'written_volume'];

function columnsOf(header: CsvRow, scale: GaugeScale): { columns: Columns } | { refusals: CsvRefusal[] } {
  const found: Record<string, Column> = {};
  const refusals: CsvRefusal[] = [];
  const unit = readingUnit(scale);
  header.cells.forEach((name, at) => {
    if (name === '') return;
    const plain = name.toLowerCase();
    const refuse = (expected: string) =>
      refusals.push({ line: header.line, field: 'header', value: name, expected });
    const volume = VOLUME_COLUMNS.find((each) => plain.startsWith(`${each}_`));
    const reading = ['written_reading', 'reading'].find((each) => plain.startsWith(`${each}_`));
    const meant = volume ?? reading ?? plain;
    if (found[meant] !== undefined) refuse('each column once');
    else if (PLAIN_COLUMNS.includes(plain)) found[plain] = { at, name, perUnitL: 1 };
    else if (volume !== undefined) {
      const ending = plain.slice(volume.length + 1);
      const match = Object.entries(VOLUME_UNITS).find(([of]) => of.toLowerCase() === ending);
      if (match === undefined) refuse(`${volume}_L, ${volume}_US_gal or ${volume}_imp_gal`);
      else found[volume] = { at, name, perUnitL: match[1] };
    } else if (reading !== undefined) {
      if (plain !== `${reading}_${unit}`.toLowerCase()) refuse(`${reading}_${unit}, as this gauge is read`);
      else found[reading] = { at, name, perUnitL: 1 };
    } else refuse('a column of a fill test');
  });
  for (const [needed, example] of [
    ['volume', 'volume_L'],
    ['reading', `reading_${unit}`],
  ] as const)
    if (found[needed] === undefined && refusals.length === 0)
      refusals.push({ line: header.line, field: 'header', value: '', expected: `a column ${example}` });
  return refusals.length > 0 ? { refusals } : { columns: found };
}

class RowReader {
  readonly runs: FillRunRecord[] = [];
  readonly refusals: CsvRefusal[] = [];
  readonly #file: RunsOfFile;
  readonly #columns: Columns;
  readonly #columnCount: number;
  #row: CsvRow = { line: 0, cells: [] };
  #run: { key: string; at: FillRunRecord } | null = null;

  constructor(file: RunsOfFile, columns: Columns, columnCount: number) {
    this.#file = file;
    this.#columns = columns;
    this.#columnCount = columnCount;
  }

  take(row: CsvRow): void {
    this.#row = row;
    // A decimal comma without quotes in a file parted by commas moves every figure after it one column on.
    const beyond = row.cells.slice(this.#columnCount).filter((cell) => cell !== '');
    if (beyond.length > 0) {
      const expected = `${String(this.#columnCount)} cells as in the header; a decimal comma stands in quotes`;
      this.refusals.push({ line: row.line, field: 'row', value: row.cells.join(','), expected });
      return;
    }
    const run = this.#runOf();
    const volumeL = this.#volumeL('volume', 0, true);
    const written = this.#volumeL('written_volume', 0, false);
    run.pours.push({
      id: this.#file.newId(),
      volumeL: volumeL ?? 0,
      reading: this.#reading('reading'),
      stickMm: this.#stickMm(),
      asideReason: this.#text('set_aside_because') || null,
      atEpochS: this.#time(),
      written: written === null ? null : { volumeL: written, reading: this.#reading('written_reading') },
    });
  }

  /** Rows belong to one run as long as its number stays; a file without numbers is one run. */
  #runOf(): FillRunRecord {
    const key = this.#text('run');
    if (this.#run?.key === key) return this.#run.at;
    const direction = this.#oneOf<FillRunRecord['direction']>('direction', DIRECTIONS, 'filling');
    const at: FillRunRecord = {
      id: this.#file.newId(),
      direction,
      start: this.#start(direction),
      startSdL: this.#volumeL('start_sd', 0, false),
      containerId: this.#container(),
      endsAt: this.#text('ends_at') === '' ? null : this.#oneOf('ends_at', ENDS, 'brim'),
      pours: [],
    };
    this.#run = { key, at };
    this.runs.push(at);
    return at;
  }

  #start(direction: FillRunRecord['direction']): RunStart {
    const usual = direction === 'filling' ? 'engineFeed' : 'known';
    const from = this.#oneOf('start', STARTS, usual);
    if (from !== 'known') return { from };
    return { from, usableL: this.#volumeL('start_usable', -100, true) ?? 0 };
  }

  #container(): string | null {
    const name = this.#text('container');
    if (name === '') return null;
    const found = this.#file.containers.find((each) => each.name.toLowerCase() === name.toLowerCase());
    if (found === undefined) this.#refuse('container', 'the name of a container on the list');
    return found?.id ?? null;
  }

  #time(): number {
    const text = this.#text('time_utc');
    if (text === '') return this.#file.nowEpochS;
    const atMs = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?Z$/.test(text) ? Date.parse(text) : NaN;
    if (!(atMs >= 0)) this.#refuse('time_utc', 'a time such as 2026-05-09T08:00:00Z');
    return atMs >= 0 ? atMs / 1000 : 0;
  }

  #stickMm(): number | null {
    const text = this.#text('stick_mm');
    if (text === '') return null;
    const number = readNumber(text);
    if (number.kind === 'one' && number.value >= 0 && number.value <= LONGEST_STICK_MM) return number.value;
    this.#refuse('stick_mm', `a number from 0 to ${String(LONGEST_STICK_MM)}`);
    return null;
  }

  #volumeL(field: string, leastL: number, isNeeded: boolean): number | null {
    const text = this.#text(field);
    if (text === '' && !isNeeded) return null;
    const column = this.#columns[field];
    const number = readNumber(text);
    const valueL = number.kind === 'one' ? number.value * (column?.perUnitL ?? 1) : NaN;
    if (valueL >= leastL && valueL <= LARGEST_VOLUME_L) return valueL;
    const perUnit = column?.perUnitL ?? 1;
    const most = String(Math.floor(LARGEST_VOLUME_L / perUnit));
    this.#refuse(field, `a number from ${String(Math.ceil(leastL / perUnit))} to ${most}`);
    return null;
  }

  #reading(field: string): GaugeReading | null {
    const text = this.#text(field);
    if (text === '') return null;
    const parsed = parseReading(text, this.#file.scale);
    if (parsed.ok) return parsed.reading;
    this.#refuse(field, 'a reading on this gauge, or E or F');
    return null;
  }

  #oneOf<K extends string>(field: string, words: Readonly<Record<K, string>>, usual: K): K {
    const text = this.#text(field).toLowerCase();
    if (text === '') return usual;
    const found = (Object.keys(words) as K[]).find((key) => words[key] === text);
    if (found === undefined) this.#refuse(field, Object.values(words).join(' or '));
    return found ?? usual;
  }

  #text(field: string): string {
    const column = this.#columns[field];
    return column === undefined ? '' : (this.#row.cells[column.at] ?? '');
  }

  #refuse(field: string, expected: string): void {
    const name = this.#columns[field]?.name ?? field;
    this.refusals.push({ line: this.#row.line, field: name, value: this.#text(field), expected });
  }
}
