import type { Nature } from '../store/observation-columns.ts';
import type { Mapping } from './mapped/mapping.ts';
import type { ZoneOf } from './mapped/wall-clock.ts';
import type { PlaceSeen } from './places-seen.ts';
import type { ReportRows } from './report-rows.ts';
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
  /** Left out by kinds whose lines can be understood only one after the other. */
  readonly stretches?: Stretches;
}

/** How a reader shares a file with readers of its later stretches, which begin in the middle of it. */
export interface Stretches {
  /** What they have to know of the lines before theirs; null while that is not settled for all the rest. */
  carried(): Carried | null;
  /** What a reader of a stretch has seen in it beside reports and problems. */
  seen(): Seen;
  /**
   * Take over what another has seen in the stretch that comes next.
   * @returns false, and nothing is taken, where it cannot be told what reading it here would have come to
   */
  take(seen: Seen): boolean;
}

/** What lines have to know of those before them. Plain data: it goes from thread to thread. */
export interface Carried {
  /** The station whose rows are read. */
  station: { identifier: string; bytes: Uint8Array };
  /** The line with the names of the columns; null where the kind has none. */
  header: string | null;
}

export interface Seen {
  stations: { identifier: string; rowCount: number }[];
  places: PlaceSeen[];
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

/** What has been found out before the reading. */
export interface Prepared {
  standardTime?: StandardTime;
  zoneOf?: ZoneOf;
  /** Given to the reader of a stretch in the middle. */
  carried?: Carried;
}

/** How far a file's clock is ahead of UTC, and from what that is known ('by the reports quoted in it'). */
export interface StandardTime {
  minutes: number;
  from: string;
}

/** Takes each report; the object is used again for the next row. */
export type Sink = ReportRows;

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
