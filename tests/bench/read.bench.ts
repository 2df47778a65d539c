import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { scanFile } from '../../main/weather-import/scan.ts';
import { loadObservations } from '../../main/store/load-observations.ts';
import { openLibrary } from '../../main/store/open.ts';
import { addBlocks, beginImport, finishImports } from '../../main/store/weather-imports.ts';
import { insertWeatherStation } from '../../main/store/weather-stations.ts';
import { beside, machineLine } from './measure.ts';
import { writeArchiveCsv } from './weather-file.ts';

// A million observations from the file to typed arrays, beside the same values read as plain rows of a table.
const ROWS = 1_000_000;

console.log(machineLine());
const { folder, path } = await writeArchiveCsv(ROWS);
try {
  const db = await openLibrary(join(folder, 'bench.tarewing'));
  insertWeatherStation(db, {
    id: 'bench',
    listKey: null,
    name: 'Bench',
    identifier: null,
    latitudeDeg: 40,
    longitudeDeg: -105,
    elevationM: 1600,
    placeFrom: 'typed',
  });
  const importId = beginImport(db, {
    stationId: 'bench',
    fileName: 'archive.csv',
    begunEpochS: 0,
    batchId: 'b',
  });
  const summary = await scanFile(
    { path },
    {
      onBlocks: (blocks) => {
        addBlocks(db, importId, 'bench', blocks);
      },
    },
  );
  finishImports(db, [
    {
      importId,
      end: {
        finishedEpochS: 0,
        kind: summary.kind,
        nature: summary.nature,
        observationCount: summary.observationCount,
        newCount: summary.observationCount,
        firstEpochS: summary.firstEpochS,
        lastEpochS: summary.lastEpochS,
        skippedJson: '[]',
        contentSha256: null,
        contentBytes: summary.sizeBytes,
        readAsJson: '{}',
        stationsInFile: 1,
      },
    },
  ]);
  db.exec('CREATE TABLE plain_row AS SELECT * FROM observation ORDER BY epoch_s');
  const rows = db
    .prepare(
      'SELECT epoch_s, temperature_c, dew_point_c, altimeter_setting_hpa, wind_from_deg, wind_speed_ms FROM plain_row',
    )
    .raw();
  beside('a million observations from the file to typed arrays', ROWS, () => loadObservations(db, 'bench'), {
    name: 'reading six columns of plain rows (0.1 wanted)',
    run: () => {
      const columns = Array.from({ length: 6 }, () => new Float64Array(ROWS));
      let at = 0;
      for (const row of rows.iterate() as IterableIterator<(number | null)[]>) {
        for (let column = 0; column < 6; column += 1) {
          const target = columns[column];
          if (target !== undefined) target[at] = row[column] ?? NaN;
        }
        at += 1;
      }
      return columns;
    },
  });
  db.close();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
