import { missing, type MonthBlock, type Nature } from '../store/observation-columns.ts';
import { readContent, withoutMark, type Content } from './content.ts';
import { FileProblem } from './file-problem.ts';
import { kindOf, kindsInWords } from './kinds.ts';
import { looksLikeTable } from './mapped/table-head.ts';
import { MonthCollector, type Report } from './month-collector.ts';
import { ProblemList, type Skipped } from './problems.ts';
import type { Kind, PlaceInFile, Prepared, Reader, ReaderOptions } from './reader.ts';
import { isUsable, spoiltFor } from './usable.ts';

/** What a file turned out to hold. */
export interface ScanSummary {
  kind: string;
  kindInWords: string;
  nature: Nature;
  remarks: string[];
  sizeBytes: number;
  lineCount: number;
  observationCount: number;
  /** Observations from which density altitude can be had. */
  usableCount: number;
  /** Why the others cannot serve for it, with counts. */
  unusable: { reason: string; count: number }[];
  /** The best pressure of each usable observation. */
  pressureFrom: { stationCount: number; altimeterSettingCount: number; seaLevelCount: number };
  firstEpochS: number | null;
  lastEpochS: number | null;
  stationsInFile: { identifier: string; rowCount: number }[];
  /** The one of them whose rows were read; null where the file names none. */
  stationRead: string | null;
  /** Where the records put their station; null where they do not say. */
  placeInFile: PlaceInFile | null;
  skipped: Skipped[];
}

export interface ScanOptions extends ReaderOptions {
  /** Called with finished months; awaited, so that a slow taker slows the reading. Left out for a preview. */
  onBlocks?: (blocks: MonthBlock[]) => void | Promise<void>;
  /** Called every megabyte or so. */
  onProgress?: (readBytes: number, rowCount: number) => void;
}

/** No line of these kinds is nearly as long; a file without line ends is not one of them. */
const longestLineBytes = 1 << 20;
const lineFeed = 10;
const carriageReturn = 13;

/**
 * Read a file from end to end in constant memory, whatever its kind, packed or not.
 * @throws FileProblem with a sentence where the file cannot be read as a whole
 */
export async function scanFile(content: Content, options: ScanOptions = {}): Promise<ScanSummary> {
  let scan: Scan | null = null;
  const { sizeBytes } = await readContent(content, async (chunk, readBytes) => {
    scan ??= await openScan(chunk, options);
    scan.feed(chunk);
    const blocks = scan.collector.take(false);
    if (options.onBlocks !== undefined && blocks.length > 0) await options.onBlocks(blocks);
    options.onProgress?.(readBytes, scan.rowCount);
    return true;
  });
  // Assigned inside the loop above, which the checker does not follow.
  const finished = scan as Scan | null;
  if (finished === null) throw new FileProblem('The file is empty.');
  finished.end();
  const blocks = finished.collector.take(true);
  if (options.onBlocks !== undefined && blocks.length > 0) await options.onBlocks(blocks);
  return finished.summary(sizeBytes);
}

async function openScan(firstChunk: Buffer, options: ReaderOptions): Promise<Scan> {
  // A copy: the piece itself is written over by a later one.
  const head = Buffer.from(withoutMark(firstChunk).subarray(0, 65_536));
  const kind = await kindFor(head, options);
  const prepared = (await kind.prepare?.(head, options)) ?? {};
  return new Scan(kind, head, { ...options, ...prepared });
}

async function kindFor(head: Buffer, { mapping }: ReaderOptions): Promise<Kind> {
  // Loaded only where it is needed: what it stands on takes a while.
  if (mapping !== undefined) return (await import('./mapped/mapped-csv.ts')).mappedCsv(mapping);
  const kind = kindOf(head);
  if (kind !== null) return kind;
  const something = whatItIs(head);
  if (something === null && looksLikeTable(head))
    throw new FileProblem(
      `What is in it is not known here, but it looks like a table: say which of its columns is what. Kinds that are known: ${kindsInWords}.`,
      'mapping-needed',
    );
  throw new FileProblem(
    `What is in it is not known here. ${something ?? `Kinds that can be read: ${kindsInWords}.`}`,
  );
}

/** One pass over a file's bytes. */
class Scan {
  rowCount = 0;
  readonly #problems = new ProblemList();
  readonly collector = new MonthCollector(this.#problems);
  readonly #reader: Reader;
  readonly #stationWanted: string | undefined;
  readonly #unusable = new Map<string, number>();
  #usableCount = 0;
  #stationCount = 0;
  #altimeterSettingCount = 0;
  #firstMonth = Infinity;
  #firstMinute = 0;
  #lastMonth = -Infinity;
  #lastMinute = 0;
  #lineCount = 0;
  #rest: Buffer | null = null;
  #begun = false;

  constructor(kind: Kind, head: Buffer, options: ReaderOptions & Prepared) {
    this.#stationWanted = options.stationInFile;
    this.#reader = kind.open(
      (report) => {
        this.#take(report);
      },
      this.#problems,
      options,
      head,
    );
  }

  feed(chunk: Buffer): void {
    const bytes = this.#begun ? chunk : withoutMark(chunk);
    this.#begun = true;
    let from = 0;
    if (this.#rest !== null) {
      const end = bytes.indexOf(lineFeed);
      // Only the line over the joint is put together; the others are read where they lie.
      const line = Buffer.concat([this.#rest, end < 0 ? bytes : bytes.subarray(0, end)]);
      if (end < 0) {
        this.#keep(line);
        return;
      }
      this.#rest = null;
      this.#line(line, 0, line.length);
      from = end + 1;
    }
    for (;;) {
      const end = bytes.indexOf(lineFeed, from);
      if (end < 0) break;
      this.#line(bytes, from, end);
      from = end + 1;
    }
    if (from < bytes.length) this.#keep(Buffer.from(bytes.subarray(from)));
  }

  /** The beginning of a line whose end is still to come. */
  #keep(rest: Buffer): void {
    if (rest.length > longestLineBytes)
      throw new FileProblem(`Line ${String(this.#lineCount + 1)} has no end.`);
    this.#rest = rest;
  }

  end(): void {
    if (this.#rest !== null) this.#line(this.#rest, 0, this.#rest.length);
    this.#rest = null;
  }

  summary(sizeBytes: number): ScanSummary {
    const reader = this.#reader;
    const stationsInFile = reader.stationsInFile();
    const some = this.rowCount > 0;
    return {
      kind: reader.kind,
      kindInWords: reader.kindInWords,
      nature: reader.nature,
      remarks: [...reader.remarks],
      sizeBytes,
      lineCount: this.#lineCount,
      observationCount: this.rowCount,
      usableCount: this.#usableCount,
      unusable: [...this.#unusable].map(([reason, count]) => ({ reason, count })),
      pressureFrom: {
        stationCount: this.#stationCount,
        altimeterSettingCount: this.#altimeterSettingCount,
        seaLevelCount: this.#usableCount - this.#stationCount - this.#altimeterSettingCount,
      },
      firstEpochS: some ? epochS(this.#firstMonth, this.#firstMinute) : null,
      lastEpochS: some ? epochS(this.#lastMonth, this.#lastMinute) : null,
      stationsInFile,
      stationRead: this.#stationWanted ?? stationsInFile[0]?.identifier ?? null,
      placeInFile: reader.placeInFile?.() ?? null,
      skipped: this.#problems.list(),
    };
  }

  #line(bytes: Buffer, from: number, end: number): void {
    this.#lineCount++;
    const to = end > from && bytes[end - 1] === carriageReturn ? end - 1 : end;
    this.#reader.line(bytes, from, to, this.#lineCount);
  }

  #take(report: Report): void {
    report.line = this.#lineCount;
    this.collector.add(report);
    this.rowCount++;
    const { monthIndex, minuteOfMonth, values } = report;
    if (
      monthIndex < this.#firstMonth ||
      (monthIndex === this.#firstMonth && minuteOfMonth < this.#firstMinute)
    ) {
      this.#firstMonth = monthIndex;
      this.#firstMinute = minuteOfMonth;
    }
    if (
      monthIndex > this.#lastMonth ||
      (monthIndex === this.#lastMonth && minuteOfMonth > this.#lastMinute)
    ) {
      this.#lastMonth = monthIndex;
      this.#lastMinute = minuteOfMonth;
    }
    if (isUsable(values)) {
      this.#usableCount++;
      if (values.stationPressureHpa100 !== missing) this.#stationCount++;
      else if (values.altimeterSettingHpa100 !== missing) this.#altimeterSettingCount++;
    } else {
      const reason = spoiltFor(values);
      this.#unusable.set(reason, (this.#unusable.get(reason) ?? 0) + 1);
    }
  }
}

function epochS(monthIndex: number, minuteOfMonth: number): number {
  return Date.UTC(Math.floor(monthIndex / 12), monthIndex % 12, 1) / 1000 + minuteOfMonth * 60;
}

/** What to say of a file of no known kind. */
function whatItIs(head: Buffer): string | null {
  if ((head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff))
    return 'It is text in UTF-16; save it as plain text (UTF-8) first.';
  const text = head.subarray(0, 400).toString('latin1');
  if (/^\s*</.test(text))
    return 'It is a web page, perhaps an error page that was saved instead of the file.';
  return null;
}
