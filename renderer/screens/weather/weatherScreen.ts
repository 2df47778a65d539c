import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';
import type { ScreenEntry } from '../../app/screens.ts';
import { plannerQuery } from './planner.svelte.ts';

export const weatherScreen: ScreenEntry = {
  id: 'weather',
  word: 'Weather',
  sheet: () => import('./WeatherSheet.svelte'),
  answer: weatherAnswer,
};

/** Until when the departure works that was asked last; without a record how much of one there is. */
function weatherAnswer(app: App): () => string {
  const stations = query(app, 'weather.stations', () => ({}), ['weather', 'fields']);
  const stationOf = (field: { weatherStationId: string | null } | undefined) =>
    stations.answer?.find(({ id }) => id === (field?.weatherStationId ?? null));
  const planned = plannerQuery(app, () => {
    const field = app.fields.answer?.find(({ id }) => id === app.fieldId);
    return stationOf(field) === undefined ? null : (field?.id ?? null);
  });
  return () => {
    const field = app.fields.answer?.find(({ id }) => id === app.fieldId);
    const station = stationOf(field);
    if (station === undefined)
      return (stations.answer?.length ?? 0) === 0 ? 'nothing imported yet' : 'no station for the field yet';
    if (planned.answer !== undefined) return planned.answer.inShort;
    const year = new Intl.DateTimeFormat('en', { year: 'numeric', timeZone: field?.timeZone ?? 'UTC' });
    // A record of whole years in UTC spills some local hours into the year beside it: a day is no year.
    const edgeS = Math.min(86_400, (station.lastEpochS - station.firstEpochS) / 2);
    const [first, last] = [station.firstEpochS + edgeS, station.lastEpochS - edgeS].map((epochS) =>
      year.format(epochS * 1000),
    );
    return first === last ? `hours of ${String(first)}` : `hours of ${String(first)} to ${String(last)}`;
  };
}
