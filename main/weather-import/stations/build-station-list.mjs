// Makes us-stations.ts from NOAA's station history:
//   node main/weather-import/stations/build-station-list.mjs isd-history-us.csv
// Left out: moored buoys (some lie in European waters under 'US'), places at latitude 0 or without one, and rows
// without elevation: none of them can serve for density altitude.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';

const source = process.argv[2];
if (source === undefined) throw new Error('Name the CSV file of the station history.');

const rows = readFileSync(source, 'utf8')
  .split(/\r?\n/)
  .slice(1)
  .filter((line) => line !== '')
  .map((line) => line.split(',').map((cell) => cell.replaceAll('"', '').trim()))
  .map((cells) => {
    if (cells.length !== 11) throw new Error(`A row does not have 11 columns: ${cells.join(',')}`);
    return cells;
  })
  .filter(([, , name = '', , , , latitude = '', longitude = '', elevation = '']) => {
    const noPlace = latitude === '' || longitude === '' || Number(latitude) === 0;
    const noElevation = elevation === '' || Number(elevation) <= -999;
    return !noPlace && !noElevation && !/BUOY/.test(name);
  })
  .map(([usaf, wban, name, , state, icao, latitude, longitude, elevation, begin, end]) =>
    [usaf, wban, name, state, icao, Number(latitude), Number(longitude), Number(elevation), begin, end].join('\t'),
  );

const packed = brotliCompressSync(rows.join('\n'), {
  params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24 },
});
const target = fileURLToPath(new URL('us-stations.ts', import.meta.url));
writeFileSync(
  target,
  `// Made by build-station-list.mjs from NOAA's station history; never edited by hand.
/** Tab-separated rows, brotli, base64. A module, not a text file, so that plain Node, workers and the build read it alike. */
export const packedStations = \`
${packed.toString('base64').replaceAll(/.{1,120}/g, '$&\n')}\`;
`,
);
console.log(`${String(rows.length)} stations, ${String(packed.length)} bytes packed`);
