// Makes us-airports.ts from the airports and runways of OurAirports:
//   node main/airports/build-airport-list.ts us-airports.csv us-runways.csv
// Left out: heliports, balloonports, closed places and closed runways, helipads, entries that call themselves duplicates.
// Not believed: the elevation of US-4173 (12 963 ft on a low desert strip); headings of two ends that are not opposite
// within 5 degrees, or more than 40 degrees from the painted number (which is magnetic and rounded).
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const [airportsPath, runwaysPath] = process.argv.slice(2);
if (airportsPath === undefined || runwaysPath === undefined)
  throw new Error('Name the CSV files of the airports and of the runways.');

type Row = Partial<Record<string, string>>;

/** Rows of a CSV as objects; quoted cells may hold commas and doubled quotes. */
function rowsOf(path: string): Row[] {
  const [header = [], ...rows] = readFileSync(path, 'utf8')
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .filter((line) => line !== '')
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) =>
        (quoted?.replaceAll('""', '"') ?? plain ?? '').trim().replaceAll(/[\t\n]+/g, ' '),
      ),
    );
  return rows.map((cells) => {
    if (cells.length !== header.length)
      throw new Error(`A row of ${path} does not have ${String(header.length)} columns: ${cells.join(',')}`);
    return Object.fromEntries(header.map((name, at) => [name, cells[at] ?? '']));
  });
}

const kept = new Set(['small_airport', 'medium_airport', 'large_airport', 'seaplane_base']);
const notBelieved = new Set(['US-4173']);

const runwaysOf = Map.groupBy(
  rowsOf(runwaysPath).filter(
    (each) =>
      each['closed'] !== '1' && !/^H\d?/.test(each['le_ident'] ?? '') && Number(each['length_ft']) !== 0,
  ),
  (each) => each['airport_ref'] ?? '',
);

const degrees = 180 / Math.PI;
const turned = (deg: number) => ((deg % 360) + 360) % 360;
const apart = (a: number, b: number) => Math.abs(turned(a - b + 180) - 180);
const number = (text = '') => (text === '' ? NaN : Number(text));

/** True heading from the lower end, and where it is from: l the list, e the places of its ends, '' none. */
function headingOf(runway: Row): [string, string] {
  const low = number(runway['le_heading_degT']);
  const high = number(runway['he_heading_degT']);
  const painted = 10 * Number.parseInt(runway['le_ident'] ?? '', 10);
  const believed = (deg: number) => !(apart(deg, painted) > 40);
  const listed = Number.isNaN(low) ? turned(high + 180) : low;
  const agree = Number.isNaN(low) || Number.isNaN(high) || apart(low + 180, high) <= 5;
  if (!Number.isNaN(listed) && agree && believed(listed)) return [String(Math.round(listed) % 360), 'l'];
  const [lat1 = NaN, lon1 = NaN, lat2 = NaN, lon2 = NaN] = [
    runway['le_latitude_deg'],
    runway['le_longitude_deg'],
    runway['he_latitude_deg'],
    runway['he_longitude_deg'],
  ].map((text) => number(text) / degrees);
  const northM = (lat2 - lat1) * 6_371_000;
  const eastM = (lon2 - lon1) * 6_371_000 * Math.cos(lat1);
  // Ends that are given to a hundredth of a degree say nothing about a direction.
  if (!(Math.hypot(northM, eastM) > 200)) return ['', ''];
  const bearing = turned(Math.atan2(eastM, northM) * degrees);
  return believed(bearing) ? [String(Math.round(bearing) % 360), 'e'] : ['', ''];
}

const lines = rowsOf(airportsPath)
  .filter((each) => kept.has(each['type'] ?? '') && !/duplicate/i.test(each['name'] ?? ''))
  .sort((a, b) => ((a['ident'] ?? '') < (b['ident'] ?? '') ? -1 : 1))
  .map((airport) =>
    [
      airport['id'],
      airport['ident'],
      airport['name'],
      airport['municipality'],
      (airport['iso_region'] ?? '').replace('US-', ''),
      String(Number(Number(airport['latitude_deg']).toFixed(5))),
      String(Number(Number(airport['longitude_deg']).toFixed(5))),
      notBelieved.has(airport['ident'] ?? '') ? '' : airport['elevation_ft'],
      airport['type'] === 'seaplane_base' ? 'w' : '',
      ...(runwaysOf.get(airport['id'] ?? '') ?? []).map((runway) =>
        [
          runway['id'],
          runway['length_ft'],
          runway['width_ft'],
          runway['surface'],
          runway['le_ident'],
          runway['he_ident'],
          ...headingOf(runway),
          runway['le_displaced_threshold_ft'],
          runway['he_displaced_threshold_ft'],
        ].join('|'),
      ),
    ].join('\t'),
  );

const packed = brotliCompressSync(lines.join('\n'), {
  params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24 },
});
writeFileSync(
  fileURLToPath(new URL('us-airports.ts', import.meta.url)),
  `// Made by build-airport-list.ts from the lists of OurAirports; never edited by hand.
/** One airport a line, brotli, base64. A module, not a text file, so that plain Node, workers and the build read it alike. */
export const packedAirports = \`
${packed.toString('base64').replaceAll(/.{1,120}/g, '$&\n')}\`;
`,
);
console.log(`${String(lines.length)} airports, ${String(packed.length)} bytes packed`);
