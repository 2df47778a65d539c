import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import { choiceOf, stationWords } from './previewWords.ts';
import type { PendingFile, WeatherState } from './weatherState.svelte.ts';

/** Take files that were dropped or chosen and look through each, one after the other. */
export async function takeFiles(app: App, weather: WeatherState, files: readonly File[]): Promise<void> {
  const taken = files.map((file): PendingFile => ({
    key: crypto.randomUUID(),
    fileName: file.name,
    path: '',
    preview: null,
    refusal: null,
    station: null,
    stationWords: '',
  }));
  weather.pending = [...weather.pending, ...taken];
  for (const [index, file] of files.entries()) {
    const key = taken[index]?.key;
    // Found again in the state: what is written to it must be seen.
    const pending = () => weather.pending.find((each) => each.key === key);
    try {
      const path = await app.client.bridge.pathOf(file);
      const preview = await app.jobs.run('weather.preview', { path }, `Look through ${file.name}`);
      const found = pending();
      if (found === undefined) continue;
      found.path = path;
      found.preview = preview;
      const guess = preview.stationGuess;
      if (guess !== null) {
        found.station = choiceOf(guess);
        found.stationWords = `${stationWords(app, guess)}, by the ${preview.guessedFrom ?? 'file'}`;
      }
    } catch (error) {
      const found = pending();
      if (found !== undefined) found.refusal = sentenceOf(error);
    }
  }
}
