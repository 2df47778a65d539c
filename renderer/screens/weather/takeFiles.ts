import type { OutputOf } from '../../../main/requests/table.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import { isBeingLookedAt, type PendingFile, type Preview, type ReadingChoices } from './pendingFile.ts';
import { proposalWords } from './previewWords.ts';
import type { WeatherState } from './weatherState.svelte.ts';

type Looked = OutputOf<'weather.previewFiles'>['files'][number];

/** Take files that were dropped or chosen and look through them all, with one progress. */
export async function takeFiles(app: App, weather: WeatherState, files: readonly File[]): Promise<void> {
  const waiting = files.map((file): PendingFile => ({
    ...nothingKnown,
    key: crypto.randomUUID(),
    fileName: file.name,
  }));
  weather.pending = [...weather.pending, ...waiting];
  const read: { path: string; key: string }[] = [];
  for (const [index, file] of files.entries()) {
    const key = waiting[index]?.key ?? '';
    try {
      read.push({ path: await app.client.bridge.pathOf(file), key });
    } catch (error) {
      refuse(weather, [key], sentenceOf(error));
    }
  }
  await lookThrough(
    app,
    weather,
    read.map(({ path, key }) => ({ path, key, entry: null, choices: {} })),
  );
}

/** Look at a file again, now that a person has said something about it. */
export async function lookAgain(
  app: App,
  weather: WeatherState,
  file: PendingFile,
  choices: ReadingChoices,
): Promise<void> {
  const { key, path, entry } = file;
  weather.pending = weather.pending.map((each) =>
    each.key === key ? { ...each, choices, preview: null, known: null, problem: null } : each,
  );
  await lookThrough(app, weather, [{ key, path, entry, choices }]);
}

/** Stations of a file whose rows are not among the pending files yet. */
export function stationsLeft(
  pending: readonly PendingFile[],
  { preview, path, entry }: PendingFile,
): string[] {
  const taken = new Set(
    pending
      .filter((each) => each.path === path && each.entry === entry)
      .map((each) => each.preview?.stationRead ?? each.choices.stationInFile),
  );
  return (preview?.stationsInFile ?? [])
    .map(({ identifier }) => identifier)
    .filter((each) => !taken.has(each));
}

/** The other stations of a file, each as a file of its own. */
export async function takeOtherStations(app: App, weather: WeatherState, file: PendingFile): Promise<void> {
  const others = stationsLeft(weather.pending, file).map((stationInFile): PendingFile => ({
    ...nothingKnown,
    key: crypto.randomUUID(),
    fileName: file.fileName,
    path: file.path,
    entry: file.entry,
    choices: { ...file.choices, stationInFile },
  }));
  weather.pending = [...weather.pending, ...others];
  await lookThrough(app, weather, others);
}

const nothingKnown = {
  path: '',
  entry: null,
  choices: {},
  preview: null,
  known: null,
  problem: null,
  station: null,
  stationWords: '',
};

async function lookThrough(
  app: App,
  weather: WeatherState,
  files: readonly Pick<PendingFile, 'key' | 'path' | 'entry' | 'choices'>[],
): Promise<void> {
  if (files.length === 0) return;
  const keys = files.map(({ key }) => key);
  try {
    const { files: looked } = await app.jobs.run(
      'weather.previewFiles',
      {
        files: files.map(({ path, entry, choices }) => ({
          ...choices,
          path,
          ...(entry === null ? {} : { entry }),
        })),
      },
      files.length === 1
        ? 'Look through a weather file'
        : `Look through ${String(files.length)} weather files`,
    );
    const choicesOf = new Map(files.map(({ path, choices }) => [path, choices]));
    // An archive or a folder turns out to be many: they stand where it stood.
    const found = looked.map((each) => pendingOf(app, each, choicesOf.get(each.path) ?? {}));
    const first = weather.pending.findIndex(({ key }) => keys.includes(key));
    const others = weather.pending.filter(({ key }) => !keys.includes(key));
    // Left out meanwhile: not brought back.
    if (first < 0) return;
    weather.pending = [
      ...others.slice(0, first),
      ...found.filter((each) => !others.some((other) => isSame(other, each))),
      ...others.slice(first),
    ];
  } catch (error) {
    refuse(weather, keys, sentenceOf(error));
  }
}

function isSame(a: PendingFile, b: PendingFile): boolean {
  return (
    !isBeingLookedAt(a) &&
    a.path === b.path &&
    a.entry === b.entry &&
    (a.preview?.stationRead ?? null) === (b.preview?.stationRead ?? null)
  );
}

function pendingOf(app: App, looked: Looked, choices: ReadingChoices): PendingFile {
  const { path, entry, fileName, preview, known, problem } = looked;
  return {
    key: crypto.randomUUID(),
    fileName,
    path,
    entry,
    choices,
    preview,
    known,
    problem,
    ...(preview === null ? { station: null, stationWords: '' } : proposed(app, preview)),
  };
}

function proposed(app: App, preview: Preview): Pick<PendingFile, 'station' | 'stationWords'> {
  return { station: preview.stationProposal, stationWords: proposalWords(app, preview) };
}

function refuse(weather: WeatherState, keys: readonly string[], sentence: string): void {
  weather.pending = weather.pending.map((each) =>
    keys.includes(each.key) && isBeingLookedAt(each)
      ? { ...each, problem: { code: 'file-refused', sentence } }
      : each,
  );
}
