import { archiveCsv } from './archive-csv.ts';
import { ghcnh } from './ghcnh.ts';
import { isdCsv } from './isd-csv.ts';
import { isdFixed } from './isd-fixed.ts';
import { isdLite } from './isd-lite.ts';
import { lcd } from './lcd.ts';
import type { Kind } from './reader.ts';
import { reportList } from './report-list.ts';
import { tmy2 } from './tmy2.ts';
import { epw, tmy3 } from './typical-year.ts';

/** Every kind that can be read; the first that recognises a file's beginning reads it. */
const kinds: readonly Kind[] = [
  isdLite,
  isdFixed,
  isdCsv,
  lcd,
  ghcnh,
  epw,
  tmy2,
  tmy3,
  archiveCsv,
  reportList,
];

export const kindsInWords = [
  "NOAA's compact hourly files (fixed columns, as in 725300-94846-2016.gz)",
  'fixed-width files and global hourly CSV of the Integrated Surface Data',
  'local climatological data (CSV, both layouts)',
  'global hourly files (GHCNh)',
  'typical years (EPW, TMY2, TMY3)',
  'lists of weather reports (METAR)',
  'the station archive of airport reports (CSV whose header has station, valid and tmpf or tmpc)',
].join('; ');

export function kindOf(head: Uint8Array): Kind | null {
  return kinds.find((kind) => kind.recognises(head)) ?? null;
}
