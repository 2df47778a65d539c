import { writeSync } from 'node:fs';
import { fileLibrary } from '../file-library.ts';
import { dieAt } from './die-at.ts';

// A process that imports a weather file, takes it back and imports it again until it is killed (imports.test.ts):
// node importer.ts LIBRARY FILE [before|after N].
const [path = '', file = '', edge, commit] = process.argv.slice(2);
const library = await fileLibrary(path, { onStatement: dieAt(edge, Number(commit)) });
for (const { importId } of (await library.ask('weather.imports', {})) as { importId: number }[])
  await library.ask('weather.takeBack', { importId });
for (;;) {
  writeSync(1, 'begun\n');
  const { importId } = (await library.ask('weather.import', {
    path: file,
    station: { place: { name: 'Strip', latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 } },
  })) as { importId: number };
  writeSync(1, 'finished\n');
  await library.ask('weather.takeBack', { importId });
}
