import type { App } from '../../app/app.svelte.ts';

/**
 * Tie the chosen field to a station that was just imported, where it has none yet; where there is no field at all, the
 * screen offers to make one at the station.
 */
export async function afterImport(app: App, stationId: string): Promise<void> {
  const field = app.fields.answer?.find(({ id }) => id === app.fieldId);
  if (field === undefined || field.weatherStationId !== null) return;
  await app.changeAndSay(
    'fields.put',
    { field: { ...field, weatherStationId: stationId }, named: `weather station of ${field.name}` },
    `${field.name} now has this weather station.`,
  );
}
