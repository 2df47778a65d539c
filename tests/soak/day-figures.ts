import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { OutputOf } from '../../main/requests/table.ts';
import { memoryLibrary } from '../main/memory-library.ts';

// Six real years through the importer, the season and the day: counts, medians and 90th percentiles of density altitude
// against day-figures.json, which day-figures.py computed by other means; and whether the days that began alike hold on
// years left out. Skipped where the folder of samples is not there.

type Figures = [count: number, median: number | null, nineInTen: number | null];
interface Expected {
  season: Figures[][];
  days: Record<string, { halfWidthDays: number; hours: Figures[] }>;
}

const folder =
  process.env['WEATHER_SAMPLES'] ?? fileURLToPath(new URL('../../../shared/weather', import.meta.url));
const years = [2008, 2009, 2010, 2011, 2012, 2013].map(
  (year) => `${folder}/isd-fixed/725650-03017-${String(year)}.gz`,
);
const expected = JSON.parse(readFileSync(new URL('./day-figures.json', import.meta.url), 'utf8')) as Expected;
/** Values are kept in hundredths; the molar mass and the exponents of the other computation are rounded: 5 cm. */
const toleranceM = 0.05;
const place = {
  name: 'Denver',
  identifier: null,
  latitudeDeg: 39.8328,
  longitudeDeg: -104.6575,
  elevationM: 1655,
};

let passed = 0;
let failed = 0;
function tell(what: string, isMet: boolean, detail: string): void {
  console.log(`${isMet ? 'met      ' : 'not met  '} ${what}: ${detail}`);
  if (isMet) passed++;
  else failed++;
}

/** The greatest difference, and how many counts differ. */
function compare(what: string, got: Figures[], want: Figures[]): void {
  let counts = 0;
  let farthestM = 0;
  want.forEach((figures, at) => {
    figures.forEach((figure, of) => {
      const mine = got[at]?.[of] ?? null;
      if (of === 0) counts += mine === figure ? 0 : 1;
      else if (mine !== null && figure !== null) farthestM = Math.max(farthestM, Math.abs(mine - figure));
    });
  });
  tell(
    what,
    counts === 0 && farthestM <= toleranceM,
    `${String(counts)} of ${String(want.length)} counts differ, figures by up to ${farthestM.toFixed(3)} m`,
  );
}

if (years.every((path) => existsSync(path))) {
  const library = memoryLibrary();
  let stationId = '';
  for (const path of years)
    ({ stationId } = (await library.ask('weather.import', {
      path,
      station: stationId === '' ? { place } : { stationId },
    })) as OutputOf<'weather.import'>);
  const { id: fieldId } = (await library.ask('fields.put', {
    field: { ...place, weatherStationId: stationId, runways: [] },
  })) as { id: string };
  // The other computation knows nothing of the program's own flags.
  await library.ask('weather.countDoubtful', { countsSuspect: true, countsImplausible: true });
  const figures = (
    counts: readonly number[],
    quantiles: readonly { share: number; value: readonly (number | null)[] }[],
  ): Figures[] =>
    counts.map((count, at) => {
      const of = (share: number) => quantiles.find((each) => each.share === share)?.value[at] ?? null;
      return [count, of(0.5), of(0.9)];
    });

  const season = (await library.ask('weather.season', { fieldId })) as OutputOf<'weather.season'>;
  compare('month by hour', figures(season.dayCount, season.quantiles), expected.season.flat());
  for (const [date, want] of Object.entries(expected.days)) {
    const day = (await library.ask('weather.day', {
      fieldId,
      date: `2026-${date}`,
    })) as OutputOf<'weather.day'>;
    tell(
      `window around ${date}`,
      day.window.halfWidthDays === want.halfWidthDays,
      `${String(day.window.halfWidthDays)} days on either side`,
    );
    compare(`hours around ${date}`, figures(day.dayCount, day.quantiles), want.hours);
  }

  for (const [date, hour] of [
    ['2026-07-19', 8],
    ['2026-07-19', 10],
    ['2026-04-15', 8],
    ['2026-10-15', 8],
  ] as const) {
    const rest = (await library.ask('weather.restOfDay', {
      fieldId,
      date,
      hour,
      temperatureC: 18,
      dewPointC: 8,
      settingHpa: 1018,
    })) as OutputOf<'weather.restOfDay'>;
    const { check } = rest;
    // The check is the claim: where it does not hold, the program says so and shows nothing.
    console.log(
      `days alike ${date} from ${String(hour)}:00: ${String(rest.alikeCount)} of ${String(rest.candidateCount)}; ${
        check === null
          ? 'not checked'
          : `held ${(100 * check.heldShare).toFixed(1)} %, ${(100 * check.widthRatio).toFixed(0)} % of the season's width, ${check.isTrusted ? 'shown' : 'not shown'}`
      }`,
    );
  }
  console.log(`${String(passed)} passed, ${String(failed)} failed`);
} else {
  console.log('skipped   day figures: the samples are not there');
  console.log('0 passed, 0 failed, 1 skipped');
}
process.exitCode = failed === 0 ? 0 : 1;
