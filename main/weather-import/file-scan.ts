import type { MonthBlock, Nature } from '../store/observation-columns.ts';
import { withoutMark } from './content.ts';
import { LinePass } from './line-pass.ts';
import { MonthCollector } from './month-collector.ts';
import type { Skipped } from './problems.ts';
import type { Carried, Kind, PlaceInFile, Prepared, ReaderOptions } from './reader.ts';
import { recognise } from './recognise.ts';
import { feedStretch, type Findings, type Stretch } from './stretch.ts';
import { Tally, type Tallied } from './tally.ts';

/** What a file turned out to hold. */
export interface ScanSummary extends Tallied {
  kind: string;
  kindInWords: string;
  nature: Nature;
  remarks: string[];
  sizeBytes: number;
  lineCount: number;
  stationsInFile: { identifier: string; rowCount: number }[];
  /** The one of them whose rows were read; null where the file names none. */
  stationRead: string | null;
  /** Where the records put their station; null where they do not say. */
  placeInFile: PlaceInFile | null;
  skipped: Skipped[];
}

/** So much of a file's beginning is looked at to recognise it. */
const headBytes = 65_536;

/** All that is known of a file so far. Its lines come in their order, read here or elsewhere. */
export class FileScan {
  readonly kind: Kind;
  readonly head: Buffer;
  readonly #pass: LinePass;
  readonly #collector: MonthCollector;
  readonly #tally = new Tally();
  readonly #stationWanted: string | undefined;
  #begun = false;

  private constructor(kind: Kind, head: Buffer, options: ReaderOptions & Prepared) {
    this.kind = kind;
    this.head = head;
    this.#stationWanted = options.stationInFile;
    this.#pass = new LinePass(kind, head, options);
    this.#collector = new MonthCollector(this.#pass.problems);
  }

  /**
   * @param beginning the first bytes of the file's content, 64 kB at least where it has so many
   * @throws FileProblem where it is of no known kind, or cannot be read without something being said
   */
  static async open(beginning: Buffer, options: ReaderOptions): Promise<FileScan> {
    // A copy: the piece itself is written over by a later one.
    const head = Buffer.from(withoutMark(beginning).subarray(0, headBytes));
    const kind = await recognise(head, options);
    const prepared = (await kind.prepare?.(head, options)) ?? {};
    return new FileScan(kind, head, { ...options, ...prepared });
  }

  get rowCount(): number {
    return this.#tally.rowCount;
  }

  /** The next bytes of the content. */
  feed(piece: Buffer): void {
    this.#pass.feed(this.#begun ? piece : withoutMark(piece));
    this.#begun = true;
    this.#gather();
  }

  /** The lines of the next stretch of a plain file, read here. */
  readStretch(file: number, stretch: Stretch): void {
    feedStretch(file, stretch, this.#pass);
    this.#begun = true;
    this.#gather();
  }

  /** What readers of later stretches have to know; null while lines can be read only one after the other. */
  carried(): Carried | null {
    return this.#pass.reader.stretches?.carried() ?? null;
  }

  /** Take over what the next stretch, read elsewhere, has come to; false where it has to be read here. */
  take({ lineCount, rows, problems, seen }: Findings): boolean {
    const pass = this.#pass;
    if (pass.reader.stretches?.take(seen) !== true) return false;
    pass.problems.addAll(problems, pass.lineCount);
    this.#collector.add(rows, pass.lineCount);
    this.#tally.add(rows);
    pass.lineCount += lineCount;
    return true;
  }

  /** Months that are done with. */
  blocks(): MonthBlock[] {
    return this.#collector.take(false);
  }

  /** After the last bytes: the months that are left. */
  end(): MonthBlock[] {
    this.#pass.end();
    this.#gather();
    return this.#collector.take(true);
  }

  summary(sizeBytes: number): ScanSummary {
    const { reader, lineCount, problems } = this.#pass;
    const stationsInFile = reader.stationsInFile();
    return {
      kind: reader.kind,
      kindInWords: reader.kindInWords,
      nature: reader.nature,
      remarks: [...reader.remarks],
      sizeBytes,
      lineCount,
      ...this.#tally.result(),
      stationsInFile,
      stationRead: this.#stationWanted ?? stationsInFile[0]?.identifier ?? null,
      placeInFile: reader.placeInFile?.() ?? null,
      skipped: problems.list(),
    };
  }

  #gather(): void {
    const { rows } = this.#pass;
    // Their lines count from the beginning of the file already.
    this.#collector.add(rows, 0);
    this.#tally.add(rows);
    rows.clear();
  }
}
