import { beforeEach, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { exampleAircraft } from '../example-aircraft.ts';
import { exampleFillTest } from '../example-fill-test.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('fillTest.put', { test: exampleFillTest() });
});

const refill = {
  kind: 'refill',
  tankId: 'rear',
  checkedOn: '2026-09-12',
  attitude: 'level flight',
  before: { at: 'scale', positionRatio: 0.75 },
  after: { at: 'scale', positionRatio: 0.25 },
  flightS: 4500,
  refillL: 16.4,
  stateSdL: 0.5,
  containerId: null,
  note: '',
} as const;

const record = async (check: object = refill) =>
  ((await library.ask('fuelCheck.record', { check })) as { id: string }).id;
const list = (tankId = 'rear') =>
  library.ask('fuelCheck.list', { tankId }) as Promise<OutputOf<'fuelCheck.list'>>;

test('checks are listed with the latest day first, and belong to their tank', async () => {
  await record();
  await record({ ...refill, checkedOn: '2026-10-03', flightS: null });
  await record({
    kind: 'zero',
    tankId: 'rear',
    checkedOn: '2026-08-01',
    attitude: 'level flight',
    reading: { at: 'emptyStop' },
    note: 'after draining',
  });
  expect((await list()).map(({ checkedOn, kind }) => [checkedOn, kind])).toEqual([
    ['2026-10-03', 'refill'],
    ['2026-09-12', 'refill'],
    ['2026-08-01', 'zero'],
  ]);
  expect((await list())[1]).toMatchObject(refill);
  expect((await list())[2]).toMatchObject({ reading: { at: 'emptyStop' }, note: 'after draining' });
  expect(await list('front')).toEqual([]);
});

test('undoing a check withdraws it, and nothing is ever overwritten', async () => {
  const id = await record();
  expect(await library.ask('history.undo', {})).toEqual({
    named: 'check of 2026-09-12 logged',
    screen: 'fuel',
  });
  expect(await list()).toMatchObject([{ id, withdrawn: true }]);
  await library.ask('history.redo', {});
  expect(await list()).toMatchObject([{ id, withdrawn: false }]);
});

test('what cannot be is refused with field, value and range', async () => {
  await expect(record({ ...refill, refillL: 99 })).rejects.toThrow('refillL is 99 L; the tank holds 45 L');
  await expect(record({ ...refill, flightS: 12 })).rejects.toThrow(/flightS/);
  await expect(record({ ...refill, before: { at: 'scale', positionRatio: 1.2 } })).rejects.toThrow(
    /positionRatio/,
  );
  await expect(record({ ...refill, containerId: 'none' })).rejects.toThrow("no container 'none'");
  await expect(record({ ...refill, tankId: 'none' })).rejects.toThrow("no tank 'none'");
  await expect(library.ask('fuelCheck.withdraw', { id: 'none' })).rejects.toThrow("no check 'none'");
  expect(await list()).toEqual([]);
});

test('checks are taken into a curve by choice, named with it, and bend it', async () => {
  const ids = [await record(), await record({ ...refill, checkedOn: '2026-09-20' })];
  const adopt = (checkIds: string[]) =>
    library.ask('calibration.adopt', {
      tankId: 'rear',
      testIds: ['may-test'],
      checkIds,
      adoptedOn: '2026-10-10',
    });
  await adopt([]);
  await adopt(ids);
  const [taken, plain] = (await library.ask('calibration.list', {
    tankId: 'rear',
  })) as OutputOf<'calibration.list'>;
  expect(taken?.checkIds.toSorted()).toEqual(ids.toSorted());
  expect(plain?.checkIds).toEqual([]);
  // The readings that the curve rests on are those of the fill test.
  expect(taken?.curve.readingCount).toBe(plain?.curve.readingCount);
  expect(taken?.curve.knots).not.toEqual(plain?.curve.knots);
});

test('a check read at a stop or in another attitude is no data of a curve', async () => {
  const atStop = await record({ ...refill, before: { at: 'fullStop' } });
  const onGround = await record({ ...refill, attitude: 'ground' });
  const adopt = (checkId: string) =>
    library.ask('calibration.adopt', {
      tankId: 'rear',
      testIds: ['may-test'],
      checkIds: [checkId],
      adoptedOn: '2026-10-10',
    });
  await expect(adopt(atStop)).rejects.toThrow('has a reading at a stop');
  await expect(adopt(onGround)).rejects.toThrow('in another attitude');
  await expect(adopt('none')).rejects.toThrow("no check 'none'");
});

test('the standing of a gauge says whether the checks since still agree with its curve, and forgets a withdrawn one', async () => {
  await library.ask('calibration.adopt', { tankId: 'rear', testIds: ['may-test'], adoptedOn: '2026-05-10' });
  const ofRear = async () => {
    const all = (await library.ask('calibration.standing', {
      aircraftId: 'two-seater',
    })) as OutputOf<'calibration.standing'>;
    return all.find(({ tankId }) => tankId === 'rear')?.checks;
  };
  expect(await ofRear()).toBeNull();
  await record({ ...refill, before: { at: 'fullStop' } });
  // Read at a stop: it cannot be judged, so there is still no word.
  expect(await ofRear()).toBeNull();
  // The fill test put in 15 L from 1/4 to 3/4.
  await record({ ...refill, refillL: 15 });
  expect(await ofRear()).toMatchObject({ verdict: 'agrees', judgedCount: 1, lastOn: '2026-09-12' });
  // Nearly three times that.
  const wrong = await record({ ...refill, checkedOn: '2026-10-03', refillL: 42 });
  expect(await ofRear()).toEqual({
    verdict: 'outside',
    judgedCount: 2,
    sinceOn: '2026-10-03',
    lastOn: '2026-10-03',
  });
  // A fill test after them starts anew: what the gauge did before says nothing of its new curve.
  await library.ask('fillTest.put', { test: { ...exampleFillTest('repeated'), testedOn: '2026-10-10' } });
  const adopted = (await library.ask('calibration.adopt', {
    tankId: 'rear',
    testIds: ['repeated'],
    adoptedOn: '2026-10-11',
  })) as { id: string };
  expect(await ofRear()).toBeNull();
  await library.ask('calibration.withdraw', adopted);
  await library.ask('fuelCheck.withdraw', { id: wrong });
  expect(await ofRear()).toMatchObject({ verdict: 'agrees', judgedCount: 1 });
});

test('a dipstick belongs to its tank, and stick readings stand beside the pours', async () => {
  const dipstick = { tankId: 'rear', kind: 'dipstick', lengthMm: 300, readToMm: 5 };
  expect(await library.ask('dipstick.get', { tankId: 'rear' })).toBeNull();
  const { id } = (await library.ask('dipstick.put', { dipstick })) as { id: string };
  expect(await library.ask('dipstick.get', { tankId: 'rear' })).toEqual({ ...dipstick, id });
  expect(await library.ask('dipstick.get', { tankId: 'front' })).toBeNull();
  await library.ask('history.undo', {});
  expect(await library.ask('dipstick.get', { tankId: 'rear' })).toBeNull();
  const stuck = exampleFillTest();
  const pour = stuck.runs[0]?.pours[1];
  if (pour === undefined) throw new Error('the example has eight pours');
  pour.stickMm = 40;
  await library.ask('fillTest.put', { test: stuck });
  const [kept] = (await library.ask('fillTest.list', { tankId: 'rear' })) as OutputOf<'fillTest.list'>;
  expect(kept?.runs[0]?.pours.map(({ stickMm }) => stickMm)).toEqual([
    null,
    40,
    null,
    null,
    null,
    null,
    null,
    null,
  ]);
  await expect(library.ask('dipstick.put', { dipstick: { ...dipstick, lengthMm: 5 } })).rejects.toThrow(
    /lengthMm/,
  );
});
