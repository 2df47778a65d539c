import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';
import type { ScreenEntry } from '../../app/screens.ts';
import WeatherSheet from './WeatherSheet.svelte';

export const weatherScreen: ScreenEntry = {
  id: 'weather',
  word: 'Weather',
  sheet: WeatherSheet,
  answer: weatherAnswer,
};

/** How much there is: the season itself is asked only on its own sheet, because it reads the whole record. */
function weatherAnswer(app: App): () => string {
  const stations = query(app, 'weather.stations', () => ({}), ['weather', 'fields']);
  return () => {
    const field = app.fields.answer?.find(({ id }) => id === app.fieldId);
    const station = stations.answer?.find(({ id }) => id === (field?.weatherStationId ?? null));
    if (station === undefined)
      return (stations.answer?.length ?? 0) === 0 ? 'nothing imported yet' : 'no station for the field yet';
    const year = new Intl.DateTimeFormat('en', { year: 'numeric', timeZone: field?.timeZone ?? 'UTC' });
    // A record of whole years in UTC spills some local hours into the year beside it: a day is no year.
    const edgeS = Math.min(86_400, (station.lastEpochS - station.firstEpochS) / 2);
    const [first, last] = [station.firstEpochS + edgeS, station.lastEpochS - edgeS].map((epochS) =>
      year.format(epochS * 1000),
    );
    return first === last ? `hours of ${String(first)}` : `hours of ${String(first)} to ${String(last)}`;
  };
}
