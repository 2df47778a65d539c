import { expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary } from '../memory-library.ts';
import { everySample } from '../weather-import/every-sample.ts';
import { mutated, seeded } from '../weather-import/mutate.ts';
import { fileWith } from '../weather-import/samples.ts';

test('60 spoilt files of all kinds are imported whole or refused with a sentence, none by half', async () => {
  const library = memoryLibrary();
  const random = seeded(4711);
  const files = Array.from({ length: 60 }, (_, at) => {
    const each = everySample[at % everySample.length];
    return {
      path: fileWith(mutated(each?.text ?? '', random), `spoilt-${String(at)}.txt`),
      ...(each?.mapping === undefined ? {} : { mapping: each.mapping }),
      standardOffsetMinutes: -300,
      reportMonth: { year: 2013, month: 1 },
      station: {
        place: { name: `Station ${String(at)}`, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 },
      },
    };
  });
  const { files: done } = (await library.ask('weather.importFiles', {
    files,
  })) as OutputOf<'weather.importFiles'>;
  const kept = done.flatMap(({ imported }) => (imported?.importId == null ? [] : [imported]));
  expect(done).toHaveLength(files.length);
  expect(kept.length).toBeGreaterThan(30);
  for (const { problem } of done) if (problem !== null) expect(problem.sentence).toMatch(/^[A-Za-z].*\.$/s);
  const stored = library.db
    .prepare<[], { importId: number; count: number }>(
      'SELECT import_id AS importId, COUNT(*) AS count FROM observation GROUP BY import_id ORDER BY import_id',
    )
    .all();
  expect(stored).toEqual(
    kept.map(({ importId, observationCount }) => ({ importId, count: observationCount })),
  );
  expect(
    library.db.prepare('SELECT COUNT(*) FROM weather_import WHERE finished_epoch_s IS NULL').pluck().get(),
  ).toBe(0);
}, 60_000);
