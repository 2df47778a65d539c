import { HOURS, MONTHS } from '../climate/season.ts';
import { YEARS_NEEDED } from '../climate/days-needed.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong, type Sentence } from './parts.ts';

/** What the season picture rests on. */
export interface SeasonAnswerParts {
  /** Share of days below: 0.5, 0.9, 0.95. */
  readonly share: number;
  /** By month and hour, month after month; null where there are too few days. */
  readonly densityAltitudeM: readonly (number | null)[];
  readonly dayCount: readonly number[];
  readonly daysNeeded: number;
  /** Different years behind each cell. */
  readonly yearCount: readonly number[];
  /** False for typical years, averages and models: they never answer how many days. */
  readonly isObserved: boolean;
  /** Daylight in the middle of each month, in hours of the local clock; null where the sun does not rise or set. */
  readonly daylight: readonly { sunriseH: number | null; sunsetH: number | null }[];
  readonly units: Pick<UnitPreferences, 'altitude'>;
}

export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/**
 * The answer above a season picture: where in the year and the day density altitude is highest, and the best hour of
 * daylight in that month. Its strong part is the highest figure.
 * @example "Highest at 16:00 in July: 8 310 ft or less on half the days. The same month’s lowest hour of daylight is
 *   06:00, with 5 100 ft or less."
 */
export function seasonAnswer(parts: SeasonAnswerParts): Sentence[] {
  if (!parts.isObserved)
    return [
      [plain('This record is a typical year, averages or a model, and never answers on how many days.')],
    ];
  const highest = extreme(parts, () => true, 1);
  if (highest === null) return [tooFew(parts)];
  const { sunriseH, sunsetH } = parts.daylight[highest.month] ?? { sunriseH: null, sunsetH: null };
  const lowest =
    sunriseH === null || sunsetH === null
      ? null
      : extreme(
          parts,
          ({ month, hour }) => month === highest.month && hour >= sunriseH && hour <= sunsetH,
          -1,
        );
  const altitude = (valueM: number) => shown(valueM, 'altitude', parts.units.altitude, 'load');
  const answer: Sentence[] = [
    [
      plain(`Highest at ${hourText(highest.hour)} in ${MONTH_NAMES[highest.month] ?? ''}: `),
      strong(`${altitude(highest.valueM)} or less`),
      plain(` on ${shareWords(parts.share)}.`),
    ],
  ];
  if (lowest !== null && lowest.hour !== highest.hour)
    answer.push([
      plain(
        `The same month’s lowest hour of daylight is ${hourText(lowest.hour)}, with ${altitude(lowest.valueM)} or less.`,
      ),
    ]);
  const yearCount = parts.yearCount[highest.month * HOURS + highest.hour] ?? 0;
  if (yearCount < YEARS_NEEDED)
    answer.push([
      plain(
        `From ${yearCount === 1 ? 'one year' : `${String(yearCount)} years`} only: other years may differ much.`,
      ),
    ]);
  return answer;
}

/** What one hour of one month says, with the days behind it: for the place under the pointer or in hand. */
export function seasonCellWords(
  cell: { month: number; hour: number },
  quantiles: readonly { share: number; densityAltitudeM: readonly (number | null)[] }[],
  dayCount: readonly number[],
  units: Pick<UnitPreferences, 'altitude'>,
): string {
  const at = cell.month * HOURS + cell.hour;
  const days = dayCount[at] ?? 0;
  const figures = quantiles.flatMap(({ share, densityAltitudeM }) => {
    const valueM = densityAltitudeM[at] ?? null;
    return valueM === null
      ? []
      : [`${shown(valueM, 'altitude', units.altitude, 'load')} or less on ${shareWords(share)}`];
  });
  const where = `${MONTH_NAMES[cell.month] ?? ''}, ${hourText(cell.hour)}`;
  const count = days === 1 ? '1 day' : `${String(days)} days`;
  return figures.length === 0 ? `${where}: too few, ${count}` : `${where}: ${figures.join(', ')}; ${count}`;
}

/** 'half the days', 'nine days in ten', '95 % of days'. */
export function shareWords(share: number): string {
  if (share === 0.5) return 'half the days';
  if (share === 0.75) return 'three days in four';
  if (share === 0.9) return 'nine days in ten';
  return `${String(Math.round(share * 100))}\u00a0% of days`;
}

export function hourText(hour: number): string {
  return `${String(hour).padStart(2, '0')}:00`;
}

function tooFew({ share, dayCount, daysNeeded }: SeasonAnswerParts): Sentence {
  const most = Math.max(0, ...dayCount);
  return [
    plain(
      `Too few days: the fullest hour has ${String(most)} of the ${String(daysNeeded)} that ${shareWords(share)} needs. `,
    ),
    plain(share > 0.5 ? 'Import more years, or ask for half the days.' : 'Import more of this station.'),
  ];
}

interface Found {
  month: number;
  hour: number;
  valueM: number;
}

/** The cell with the greatest (sign 1) or least (sign -1) figure; the first of equals. */
function extreme(
  { densityAltitudeM }: SeasonAnswerParts,
  counts: (cell: { month: number; hour: number }) => boolean,
  sign: 1 | -1,
): Found | null {
  let found: Found | null = null;
  for (let month = 0; month < MONTHS; month++)
    for (let hour = 0; hour < HOURS; hour++) {
      const valueM = densityAltitudeM[month * HOURS + hour] ?? null;
      if (valueM === null || !counts({ month, hour })) continue;
      if (found === null || sign * (valueM - found.valueM) > 0) found = { month, hour, valueM };
    }
  return found;
}
