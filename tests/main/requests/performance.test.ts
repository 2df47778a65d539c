import { describe, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { emptyPerformance, type PerformanceRecord } from '../../../shared-calc/performance/records.ts';
import { exampleAircraft } from '../example-aircraft.ts';
import { examplePerformance } from '../example-performance.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

async function libraryWithAircraft(): Promise<MemoryLibrary> {
  const library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  return library;
}
const get = async (library: MemoryLibrary) =>
  (await library.ask('performance.get', { aircraftId: 'two-seater' })) as OutputOf<'performance.get'>;
const put = (library: MemoryLibrary, performance: PerformanceRecord) =>
  library.request('performance.put', { performance });

const enteredOn = (record: PerformanceRecord, day: string): PerformanceRecord => {
  for (const table of [record.takeOff, record.landing, record.climb])
    if (table !== null) table.enteredOn = day;
  return record;
};

describe('the performance tables of an aeroplane', () => {
  test('keep the day on which a printed figure was entered last, and undo brings its day back', async () => {
    const library = await libraryWithAircraft();
    const first = enteredOn(examplePerformance('two-seater'), '2026-01-05');
    await put(library, first);
    const changed = structuredClone(first);
    if (changed.takeOff?.rows[0] == null) throw new Error('no row');
    changed.takeOff.rows[0].overObstacleM = (changed.takeOff.rows[0].overObstacleM ?? 0) + 7;
    if (changed.climb !== null) changed.climb.words = 'another page';
    await put(library, changed);
    const days = async () => {
      const { takeOff, landing, climb } = await get(library);
      return [takeOff, landing, climb].map((table) => table?.enteredOn);
    };
    expect(await days()).toEqual(['2026-09-21', '2026-01-05', '2026-01-05']);
    await library.ask('history.undo', {});
    expect(await days()).toEqual(['2026-01-05', '2026-01-05', '2026-01-05']);
    await library.ask('history.redo', {});
    expect(await days()).toEqual(['2026-09-21', '2026-01-05', '2026-01-05']);
  });

  test('are empty until entered, and come back as they were given, blanks and notes included', async () => {
    const library = await libraryWithAircraft();
    expect(await get(library)).toEqual(emptyPerformance('two-seater'));
    await library.ask('performance.put', { performance: examplePerformance('two-seater') });
    // The clock of the library in memory stands on this day.
    expect(await get(library)).toEqual(enteredOn(examplePerformance('two-seater'), '2026-09-21'));
    await library.ask('history.undo', {});
    expect(await get(library)).toEqual(emptyPerformance('two-seater'));
    expect(library.db.prepare('SELECT count(*) FROM performance').pluck().get()).toBe(0);
  });

  test('lose the day of their comparison when a figure changes, and only then', async () => {
    const library = await libraryWithAircraft();
    const first = examplePerformance('two-seater');
    await library.ask('performance.put', { performance: first });
    const changed = structuredClone(first);
    const row = changed.takeOff?.rows[0];
    if (row !== undefined) row.overObstacleM = 251;
    changed.printed.distance = 'ft';
    await library.ask('performance.put', { performance: changed });
    const kept = await get(library);
    expect(kept.takeOff?.source.comparedOn).toBeNull();
    expect(kept.wind.source.comparedOn).toBe('2026-04-02');
  });

  test('keep the day when only the pilot’s own choices change, or a question is answered', async () => {
    const library = await libraryWithAircraft();
    const first = examplePerformance('two-seater');
    await library.ask('performance.put', { performance: first });
    const chosen = structuredClone(first);
    if (chosen.takeOff !== null) {
      chosen.takeOff.safety = { factorRatio: 1.5, source: 'the pilot’s own' };
      chosen.takeOff.readingSdRatio = 0.08;
      for (const row of chosen.takeOff.rows) row.asPrinted = true;
    }
    chosen.wind.ownCrosswindMs = 4;
    await library.ask('performance.put', { performance: chosen });
    expect(await get(library)).toEqual(chosen);
  });

  test.each<[string, RegExp, (performance: PerformanceRecord) => void]>([
    [
      'a roll longer than the whole',
      /ground roll in row 1 is longer/,
      (p) => setRow(p, { groundRollM: 300 }),
    ],
    [
      'a place that is missing',
      /the temperature in row 1 is missing/i,
      (p) => setRow(p, { temperatureC: null }),
    ],
    [
      'two rows for one place',
      /rows 1 and 2 are for the same mass, pressure altitude, temperature/i,
      (p) => setRow(p, { temperatureC: 30 }),
    ],
    [
      'a tailwind that shortens',
      /only a headwind can shorten/i,
      ({ takeOff }) => {
        const note = takeOff?.notes.find(({ counts }) => counts === 'tailwind');
        if (note !== undefined) note.changeRatio = -0.1;
      },
    ],
    [
      'a note on temperature beside a column of temperatures',
      /the table has the temperature already/i,
      ({ takeOff, landing }) => {
        const [note] = landing?.notes ?? [];
        if (note !== undefined) takeOff?.notes.push(note);
      },
    ],
    [
      'a table whose distance that has to fit is not printed',
      /the table has no distance over 50 ft/i,
      ({ landing }) => {
        for (const row of landing?.rows ?? []) row.overObstacleM = null;
      },
    ],
    [
      'a share of a distance that is not printed',
      /the table has no ground roll/i,
      ({ takeOff }) => {
        for (const row of takeOff?.rows ?? []) row.groundRollM = null;
      },
    ],
    [
      'a climb faster than the flight',
      /rate of climb is higher than the speed/i,
      ({ climb }) => {
        const [row] = climb?.rows ?? [];
        if (row !== undefined) row.speedMs = 6;
        if (row !== undefined) row.climbRateMs = 8;
      },
    ],
  ])('are refused with %s, and nothing is changed', async (_, sentence, alter) => {
    const library = await libraryWithAircraft();
    const performance = examplePerformance('two-seater');
    alter(performance);
    const answer = await put(library, performance);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.problem.sentence).toMatch(sentence);
    expect(await get(library)).toEqual(emptyPerformance('two-seater'));
  });

  test('belong to an aeroplane that exists', async () => {
    const answer = await put(memoryLibrary(), examplePerformance('none'));
    expect(answer.ok ? '' : answer.problem.sentence).toMatch(/There is no aeroplane 'none'/);
  });
});

function setRow(
  { takeOff }: PerformanceRecord,
  parts: Partial<NonNullable<PerformanceRecord['takeOff']>['rows'][0]>,
): void {
  const [row] = takeOff?.rows ?? [];
  if (row !== undefined) Object.assign(row, parts);
}
