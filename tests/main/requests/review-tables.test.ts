import { expect, test } from 'vitest';
import type { ReviewTableRecord } from '../../../shared-calc/loading/review-table/table-record.ts';
import { termsOf } from '../../../shared-calc/loading/review-table/begin-table.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { memoryLibrary } from '../memory-library.ts';

async function library() {
  const kept = memoryLibrary();
  await kept.ask('aircraft.put', { aircraft: exampleAircraft() });
  await kept.ask('people.put', { person: examplePerson('mara', 'Mara', 68) });
  await kept.ask('loading.put', { loading: exampleLoading() });
  return kept;
}

function example(): ReviewTableRecord {
  const loading = exampleLoading();
  return {
    aircraftId: 'two-seater',
    terms: termsOf(loading),
    split: 'capacity',
    fuelDoubtL: 1.5,
    rows: [{ id: 'row', name: 'Mara and a bag', items: loading.items }],
    columns: [
      { id: 'a', kind: 'full' },
      { id: 'b', kind: 'total', totalL: 40 },
      { id: 'c', kind: 'tanks', fuel: [{ tankId: 'rear', litresL: 20 }] },
      { id: 'd', kind: 'flight', flightS: 7200 },
    ],
  };
}

const aircraftId = 'two-seater';

test('a table comes back as it was kept, and undo takes it away and brings the one before back', async () => {
  const kept = await library();
  expect(await kept.ask('reviewTable.get', { aircraftId })).toEqual({ table: null });
  await kept.ask('reviewTable.put', { aircraftId, table: example() });
  expect(await kept.ask('reviewTable.get', { aircraftId })).toEqual({ table: example() });
  await kept.ask('reviewTable.put', { aircraftId, table: { ...example(), rows: [] }, named: 'row removed' });
  await kept.ask('history.undo', {});
  expect(await kept.ask('reviewTable.get', { aircraftId })).toEqual({ table: example() });
  await kept.ask('history.undo', {});
  expect(await kept.ask('reviewTable.get', { aircraftId })).toEqual({ table: null });
});

test('a person whom nobody knows, a load that is nothing and two columns of one identifier are refused with their field', async () => {
  const kept = await library();
  const put = async (alter: (table: ReviewTableRecord) => void) => {
    const table = example();
    alter(table);
    return kept.request('reviewTable.put', { aircraftId, table });
  };
  const item = { id: 'x', stationId: 'left-seat', seatArmM: null, personId: null, typed: null };
  expect(await put((table) => table.rows[0]?.items.push({ ...item, personId: 'nobody' }))).toMatchObject({
    ok: false,
    problem: { fields: [{ path: 'table.rows[0].items[2].personId' }] },
  });
  expect(await put((table) => table.rows[0]?.items.push(item))).toMatchObject({
    ok: false,
    problem: { fields: [{ path: 'table.rows[0].items[2]' }] },
  });
  expect(await put((table) => table.columns.push({ id: 'a', kind: 'full' }))).toMatchObject({
    ok: false,
    problem: { fields: [{ path: 'table.columns[4].id' }] },
  });
  expect(await kept.ask('reviewTable.get', { aircraftId })).toEqual({ table: null });
});

test('a row goes on naming somebody who was taken off the list', async () => {
  const kept = await library();
  await kept.ask('reviewTable.put', { aircraftId, table: example() });
  await kept.ask('people.remove', { id: 'mara' });
  expect(await kept.ask('reviewTable.put', { aircraftId, table: { ...example(), split: 'even' } })).toEqual(
    {},
  );
});

test('every loading of an aeroplane is read at once', async () => {
  const kept = await library();
  expect(await kept.ask('loading.records', { aircraftId })).toEqual([exampleLoading()]);
});
