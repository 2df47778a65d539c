import type { Nature } from '../store/observation-columns.ts';
import type { Mapping } from './mapped/mapping.ts';
import type { ZoneOf } from './mapped/wall-clock.ts';
import type { Report } from './month-collector.ts';
import type { ProblemList } from './problems.ts';

/** One format. Given the file line by line as bytes, it hands over what it understands. */
export interface Reader {
  /** Stable name of the kind, kept with the import. */
  readonly kind: string;
  /** For people: 'compact hourly file'. */
  readonly kindInWords: string;
  readonly nature: Nature;
  /** What a person has to know about files of this kind. */
  readonly remarks: readonly string[];
  /** One line without its end. Counts what it cannot use in the problems that it was made with. */
  line(bytes: Uint8Array, from: number, to: number, lineNumber: number): void;
  /** The stations named inside, with their rows; empty where a file of this kind names none. */
  stationsInFile(): { identifier: string; rowCount: number }[];
  /** Where the records say that the station lies; left out by kinds that never say. */
  placeInFile?(): PlaceInFile | null;
}

/** A station's place as most of its records give it. A place of 0, 0 is none, and so is the elevation beside it. */
export interface PlaceInFile {
  name: string | null;
  latitudeDeg: number;
  longitudeDeg: number;
  /** null where the records have a place and no elevation. */
  elevationM: number | null;
  /** Rows with exactly this place, of all with any. */
  rowCount: number;
  placedRowCount: number;
}

/** Raised whenever a reader reads the same bytes differently: a file that comes again is then read anew. */
export const readersRevision = 1;

export interface ReaderOptions {
  /** Take only rows of this station, where a file holds several; otherwise of the first one. */
  stationInFile?: string | undefined;
  /** Year and month (1 to 12) of the first of bare reports, UTC. */
  reportMonth?: { year: number; month: number } | undefined;
  /** Minutes that the file's standard time is ahead of UTC, where nothing in it tells. */
  standardOffsetMinutes?: number | undefined;
  /** Read it as a table with these columns, whatever it looks like. */
  mapping?: Mapping | undefined;
}

/** What `prepare` found out. */
export interface Prepared {
  standardTime?: StandardTime;
  zoneOf?: ZoneOf;
}

/** How far a file's clock is ahead of UTC, and from what that is known ('by the reports quoted in it'). */
export interface StandardTime {
  minutes: number;
  from: string;
}

/** Takes each report; the object is used again for the next row, so it has to be copied out at once. */
export type Sink = (report: Report) => void;

/** A kind of file: whether a file's first bytes are of it, and a reader for it. */
export interface Kind {
  /** @param head the first 64 kB at most, decompressed, without byte-order mark */
  recognises(head: Uint8Array): boolean;
  /**
   * What has to be found out before reading, where that takes modules that most files do not need. They are loaded
   * here, not at the top, so that the reading thread starts at once.
   */
  prepare?(head: Uint8Array, options: ReaderOptions): Promise<Prepared>;
  open(sink: Sink, problems: ProblemList, options: ReaderOptions & Prepared, head: Uint8Array): Reader;
}
