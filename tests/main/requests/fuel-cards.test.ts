import { beforeEach, expect, test } from 'vitest';
import { exampleAircraft } from '../example-aircraft.ts';
import { exampleFillTest } from '../example-fill-test.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
let calibrationId: string;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('fillTest.put', { test: exampleFillTest() });
  const adopted = await library.ask('calibration.adopt', {
    tankId: 'rear',
    testIds: ['may-test'],
    adoptedOn: '2026-05-10',
  });
  calibrationId = (adopted as { id: string }).id;
});

const record = () =>
  library.ask('fuelCard.record', { calibrationId, printedOn: '2026-05-11', reading: 'nearestDivision' });
const cards = (tankId = 'rear') => library.ask('fuelCard.list', { tankId });

test('a card is recorded with a serial that is never used twice, not even after undo', async () => {
  expect(await record()).toEqual({ serial: 1 });
  await library.ask('history.undo', {});
  expect(await cards()).toMatchObject([{ serial: 1, withdrawn: true }]);
  expect(await record()).toEqual({ serial: 2 });
  expect(await cards()).toMatchObject([
    { serial: 2, calibrationId, printedOn: '2026-05-11', reading: 'nearestDivision', withdrawn: false },
    { serial: 1, withdrawn: true },
  ]);
  expect(await cards('front')).toEqual([]);
});

test('a card that is withdrawn counts again when that is undone', async () => {
  await record();
  await library.ask('fuelCard.withdraw', { serial: 1 });
  expect(await library.ask('history.undo', {})).toEqual({ named: 'fuel card 1 withdrawn', screen: 'fuel' });
  expect(await cards()).toMatchObject([{ serial: 1, withdrawn: false }]);
});

test('a card of no curve, and a serial that was never given, are refused', async () => {
  await expect(
    library.ask('fuelCard.record', {
      calibrationId: 'none',
      printedOn: '2026-05-11',
      reading: 'needleOnMark',
    }),
  ).rejects.toThrow("There is no adopted curve 'none'. Nothing was changed.");
  await expect(library.ask('fuelCard.withdraw', { serial: 7 })).rejects.toThrow('There is no fuel card 7.');
  expect(await cards()).toEqual([]);
});
