import type { OutputOf } from '../../../main/requests/table.ts';
import { figureText } from '../../../shared-calc/units/figure-text.ts';
import type { App } from '../../app/app.svelte.ts';

type Season = OutputOf<'weather.season'>;

/** "96 360 hours, 2015 to 2025, 11 years; 132 reports could not serve". */
export function recordWords({ record, yearCount }: Season): string {
  const [first] = record.years;
  const last = record.years.at(-1);
  if (first === undefined || last === undefined) return 'no hour with a usable report';
  const span = first === last ? String(first) : `${String(first)} to ${String(last)}`;
  // A year that lends a few hours is not one more year behind any hour of the picture.
  const count = Math.max(...yearCount);
  const years = count === 1 ? 'one year' : `${String(count)} years`;
  const left =
    record.unusableCount === 0 ? '' : `; ${figureText(record.unusableCount, 0)} reports could not serve`;
  return `${figureText(record.hourCount, 0)} hours, ${span}, ${years}${left}`;
}

/** Where the figures come from, and what lies between it and the field. */
export function stationCell(app: App, { station, field }: Season): string {
  const elevation = app.units.shown(station.elevationM, 'elevation');
  const far =
    station.distanceM < 2000
      ? 'at the field'
      : `${app.units.shown(station.distanceM, 'range')} from the field`;
  const height = app.units.shown(Math.abs(station.elevationDifferenceM), 'elevation');
  const apart = station.isElevationApart
    ? `; ${field.name} lies ${height} ${station.elevationDifferenceM > 0 ? 'above' : 'below'} it: setting, temperature and dew point are carried over unchanged`
    : '';
  return `${station.name}, ${elevation}, ${far}${apart}`;
}

/** How the pressure of the hours was had, surest first; the least certain way with how far off it may be. */
export function pressureWords(app: App, { pressureFrom }: Season): string {
  const total = pressureFrom.stationCount + pressureFrom.altimeterSettingCount + pressureFrom.seaLevelCount;
  const band = `may be off by ${app.units.shown(pressureFrom.seaLevelBandM, 'altitude', 'doubt')}`;
  const ways = [
    { count: pressureFrom.stationCount, words: 'as measured at the station' },
    { count: pressureFrom.altimeterSettingCount, words: 'from the altimeter setting' },
    {
      count: pressureFrom.seaLevelCount,
      words: `from sea-level pressure, the least certain way: density altitude ${band}`,
    },
  ].filter(({ count }) => count > 0);
  if (ways.length === 1) return ways[0]?.words ?? '';
  return ways
    .map(({ count, words }) => `${figureText(count, 0)} of ${figureText(total, 0)} ${words}`)
    .join('; ');
}
