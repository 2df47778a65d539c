import { beforeEach, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

const runway = {
  lengthM: 780,
  widthM: 18,
  surface: 'asphalt',
  ends: [
    { ident: '06', trueHeadingDeg: 68, displacedThresholdM: 0 },
    { ident: '24', trueHeadingDeg: 248, displacedThresholdM: 60 },
  ],
};
// Invented; its place lies in Colorado, so that its zone is America/Denver (IANA time zone database).
const field = {
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39.2,
  longitudeDeg: -105.6,
  elevationM: 1372,
  weatherStationId: null,
  runways: [runway],
};

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});
const list = () => library.ask('fields.list', {}) as Promise<OutputOf<'fields.list'>>;

test('a field is kept whole, with the time zone of its place', async () => {
  const { id } = (await library.ask('fields.put', { field })) as { id: string };
  expect(await list()).toEqual([
    {
      ...field,
      id,
      timeZone: 'America/Denver',
      listed: null,
      runways: [{ ...runway, id: expect.any(String) as string, listedId: null, slopeRatio: null }],
    },
  ]);
});

test('adding, changing and removing are undone and done again, runways too', async () => {
  await library.ask('fields.put', { field });
  const [added] = await list();
  await library.ask('fields.put', { field: { ...added, elevationM: 1380, runways: [] } });
  const [changed] = await list();
  await library.ask('fields.remove', { id: added?.id });
  expect(await list()).toEqual([]);
  expect(await library.ask('history.undo', {})).toMatchObject({ named: 'Ostrey Flat removed' });
  expect(await list()).toEqual([changed]);
  await library.ask('history.undo', {});
  expect(await list()).toEqual([added]);
  await library.ask('history.undo', {});
  expect(await list()).toEqual([]);
  await library.ask('history.redo', {});
  expect(await list()).toEqual([added]);
  await library.ask('history.redo', {});
  expect(await list()).toEqual([changed]);
});

test('figures that cannot be are refused with the field that holds them', async () => {
  const put = (change: object) => library.ask('fields.put', { field: { ...field, ...change } });
  await expect(put({ latitudeDeg: 91 })).rejects.toThrow(/latitudeDeg is 91 degrees; allowed at most 90/);
  await expect(put({ elevationM: 6001 })).rejects.toThrow(/elevationM is 6001 m; allowed at most 6000 m/);
  await expect(put({ timeZone: 'Nowhere/Flat' })).rejects.toThrow(/timeZone .* IANA/);
  const ends = (secondHeading: number, displaced = 0) => ({
    runways: [
      {
        ...runway,
        ends: [
          runway.ends[0],
          { ident: '24', trueHeadingDeg: secondHeading, displacedThresholdM: displaced },
        ],
      },
    ],
  });
  await expect(put(ends(254))).rejects.toThrow(/not opposite to each other within 5 degrees/);
  await expect(put(ends(248, 780))).rejects.toThrow(/leave nothing of the length/);
  await expect(put(ends(360))).rejects.toThrow(/trueHeadingDeg is 360 degrees; allowed below 360/);
  expect(await list()).toEqual([]);
});

test('headings across north are opposite too', async () => {
  const north = {
    ...runway,
    ends: [
      { ident: '18', trueHeadingDeg: 178, displacedThresholdM: 0 },
      { ident: '36', trueHeadingDeg: 358, displacedThresholdM: 0 },
    ],
  };
  await library.ask('fields.put', { field: { ...field, runways: [north] } });
  expect((await list())[0]?.runways).toHaveLength(1);
});

test('a field taken from the list of airports keeps the figures of the list beside its own', async () => {
  const [listed] = (await library.ask('airports.find', { text: 'KBDU' })) as OutputOf<'airports.find'>;
  // OurAirports: Boulder Municipal, runway 248658.
  expect(listed).toMatchObject({ identifier: 'KBDU', runways: [{ id: 248_658 }, {}] });
  const { id } = (await library.ask('fields.put', {
    field: { ...field, listed, runways: [{ ...runway, listedId: 248_658 }] },
  })) as { id: string };
  const [kept] = await list();
  expect(kept).toMatchObject({ id, elevationM: 1372, listed, runways: [{ listedId: 248_658 }] });
  await library.ask('fields.put', { field: { ...kept, elevationM: 1380 } });
  await library.ask('history.undo', {});
  expect(await list()).toEqual([kept]);
});
