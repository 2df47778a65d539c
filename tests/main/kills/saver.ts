import { writeSync } from 'node:fs';
import { exampleAircraft, exampleLoading } from '../example-aircraft.ts';
import { fileLibrary } from '../file-library.ts';
import { dieAt } from './die-at.ts';

// A process that saves until it is killed (saves.test.ts): node saver.ts LIBRARY FIRST [before|after N].
// Each save is one loading whose name, items, flight and step of undo all carry the same number.
const [path = '', first = '0', edge, commit] = process.argv.slice(2);
const library = await fileLibrary(path, { onStatement: dieAt(edge, Number(commit)) });
if (first === '0') {
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
}
for (let number = Number(first); ; number++) {
  await library.ask('loading.put', {
    loading: {
      ...exampleLoading(),
      name: `save ${String(number)}`,
      items: Array.from({ length: 1 + (number % 7) }, (_, index) => ({
        id: `item-${String(index)}`,
        stationId: 'left-seat',
        seatArmM: null,
        personId: null,
        typed: { name: `save ${String(number)}`, massKg: 1, known: 'stated', sdKg: 0, biasKg: 0 },
      })),
      flight: { ...exampleLoading().flight, taxiL: number },
    },
    named: `save ${String(number)}`,
  });
  // What a person has been told is saved.
  writeSync(1, `${String(number)}\n`);
}
