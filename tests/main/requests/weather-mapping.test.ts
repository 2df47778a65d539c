import { expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary } from '../memory-library.ts';
import { fileWith, sample } from '../weather-import/samples.ts';

const path = sample('openmeteo_DEN_2022_excerpt.csv');
const station = { place: { name: 'Cell', latitudeDeg: 39.8, longitudeDeg: -104.7, elevationM: 1602 } };

test('a table of no known kind asks for a mapping, is imported with it, and the next of its shape remembers it', async () => {
  const library = memoryLibrary();
  const ask = () =>
    library.ask('weather.proposeMapping', { path }) as Promise<OutputOf<'weather.proposeMapping'>>;
  expect(await library.request('weather.preview', { path })).toMatchObject({
    ok: false,
    problem: { code: 'mapping-needed' },
  });
  const first = await ask();
  expect(first).toMatchObject({
    isKnownKind: false,
    remembered: false,
    warmestPrintedHour: expect.any(Number) as number,
  });
  expect(first.columns[1]).toEqual({ name: 'temperature_2m', examples: ['4.1', '3.4', '1.6'] });
  const mapping = { ...first.mapping, zone: { kind: 'offset', minutes: -240 } };
  expect(await library.ask('weather.preview', { path, mapping })).toMatchObject({ nature: 'model' });
  // Looking is not yet confirming.
  expect((await ask()).remembered).toBe(false);
  await library.ask('weather.import', { path, mapping, station });
  expect(await ask()).toMatchObject({ remembered: true, mapping: { zone: { minutes: -240 } } });
  expect(((await library.ask('weather.imports', {})) as OutputOf<'weather.imports'>)[0]).toMatchObject({
    kind: 'mapped-csv',
    nature: 'model',
  });
});

test('what is no table, a unit that measures something else and one quantity twice are refused', async () => {
  const library = memoryLibrary();
  await expect(
    library.ask('weather.proposeMapping', { path: fileWith('some words\nand more\n') }),
  ).rejects.toThrow(/does not look like a table/);
  const { mapping } = (await library.ask('weather.proposeMapping', {
    path,
  })) as OutputOf<'weather.proposeMapping'>;
  const [value] = mapping?.values ?? [];
  for (const values of [[{ ...value, unit: 'kt' }], [value, value]])
    await expect(library.ask('weather.preview', { path, mapping: { ...mapping, values } })).rejects.toThrow();
});
