import { HOURS, MONTHS } from '../climate/season.ts';
import { DAYS_FOR_WORST, YEARS_NEEDED } from '../climate/days-needed.ts';
import { countOf } from './count-of.ts';
import { plain, strong, type Sentence } from './parts.ts';
import { shareOfDaysWords, shareWords, type RecordNature } from './share-words.ts';
import {
  figureShown,
  orBetter,
  WEATHER_FIGURES,
  type FigureUnits,
  type WeatherFigure,
} from './weather-figure.ts';

/** What a season picture draws: a quantile, the worst day, or how many days are beyond a limit. */
export type SeasonView =
  | { readonly kind: 'share'; readonly share: number; readonly daysNeeded: number }
  | { readonly kind: 'worst' }
  | { readonly kind: 'beyond'; readonly limit: number };

/** What the season picture rests on. */
export interface SeasonAnswerParts {
  readonly figure: WeatherFigure;
  readonly view: SeasonView;
  /**
   * By month and hour, month after month: the figure, or for a limit the days beyond it; null where there are too few
   * days, or the figure is beyond what is known.
   */
  readonly value: readonly (number | null)[];
  readonly dayCount: readonly number[];
  /** Different years behind each cell. */
  readonly yearCount: readonly number[];
  /** False for typical years, averages and models: they never answer how many days. */
  readonly isObserved: boolean;
  /** Daylight in the middle of each month, in hours of the local clock; null where the sun does not rise or set. */
  readonly daylight: readonly { sunriseH: number | null; sunsetH: number | null }[];
  readonly units: FigureUnits;
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
 * The answer above a season picture: where in the year and the day the figure is worst, and the best hour of daylight in
 * that month. Its strong part is the worst figure.
 * @example "Highest at 16:00 in July: 8 310 ft or less on half the days. The same month’s lowest hour of daylight is
 *   06:00, with 5 100 ft or less."
 */
export function seasonAnswer(parts: SeasonAnswerParts): Sentence[] {
  if (!parts.isObserved)
    return [
      [plain('This record is a typical year, averages or a model, and never answers on how many days.')],
    ];
  if (parts.view.kind === 'beyond') return beyondAnswer(parts, parts.view.limit);
  const isUp = WEATHER_FIGURES[parts.figure].worse === 'up';
  const worst = extreme(parts, () => true, isUp ? 1 : -1);
  if (worst === null) return [tooFew(parts)];
  const { sunriseH, sunsetH } = parts.daylight[worst.month] ?? { sunriseH: null, sunsetH: null };
  const best =
    sunriseH === null || sunsetH === null
      ? null
      : extreme(
          parts,
          ({ month, hour }) => month === worst.month && hour >= sunriseH && hour <= sunsetH,
          isUp ? -1 : 1,
        );
  const figure = ({ value }: Found) => figureShown(value, parts.figure, parts.units);
  const orLess = parts.view.kind === 'worst' ? '' : ` ${orBetter(parts.figure)}`;
  const on =
    parts.view.kind === 'worst'
      ? `, the ${isUp ? 'highest' : 'lowest'} of ${countOf(parts.dayCount[worst.month * HOURS + worst.hour] ?? 0, 'day')}.`
      : ` on ${shareWords(parts.view.share)}.`;
  const answer: Sentence[] = [
    [
      plain(
        `${isUp ? 'Highest' : 'Lowest'} at ${hourText(worst.hour)} in ${MONTH_NAMES[worst.month] ?? ''}: `,
      ),
      strong(`${figure(worst)}${orLess}`),
      plain(on),
    ],
  ];
  if (best !== null && best.hour !== worst.hour)
    answer.push([
      plain(
        `The same month’s ${isUp ? 'lowest' : 'highest'} hour of daylight is ${hourText(best.hour)}, with ${figure(best)}${orLess}.`,
      ),
    ]);
  return [...answer, ...fewYears(parts, worst)];
}

function beyondAnswer(parts: SeasonAnswerParts, limit: number): Sentence[] {
  const isUp = WEATHER_FIGURES[parts.figure].worse === 'up';
  const limitText = figureShown(limit, parts.figure, parts.units);
  const side = isUp ? 'above' : 'below';
  const shares = parts.value.map((count, at) => {
    const days = parts.dayCount[at] ?? 0;
    return count === null || days === 0 ? null : count / days;
  });
  const worst = extreme({ value: shares }, () => true, 1);
  if (worst === null) return [tooFew(parts)];
  if (worst.value === 0)
    return [
      [plain(`No day of the record is ${side} ${limitText} at any hour for which there are enough days.`)],
    ];
  const at = worst.month * HOURS + worst.hour;
  return [
    [
      plain(
        `Most often ${side} ${limitText} at ${hourText(worst.hour)} in ${MONTH_NAMES[worst.month] ?? ''}: `,
      ),
      strong(`${String(parts.value[at] ?? 0)} of ${countOf(parts.dayCount[at] ?? 0, 'day')}`),
      plain('.'),
    ],
    ...fewYears(parts, worst),
  ];
}

function fewYears(parts: SeasonAnswerParts, { month, hour }: Found): Sentence[] {
  const yearCount = parts.yearCount[month * HOURS + hour] ?? 0;
  return yearCount < YEARS_NEEDED
    ? [
        [
          plain(
            `From ${yearCount === 1 ? 'one year' : `${String(yearCount)} years`} only: other years may differ much.`,
          ),
        ],
      ]
    : [];
}

/** What one hour of one month says, with the days behind it: for the place under the pointer or in hand. */
export function seasonCellWords(
  cell: { month: number; hour: number },
  of: {
    readonly figure: WeatherFigure;
    readonly quantiles: readonly { share: number; daysNeeded: number; value: readonly (number | null)[] }[];
    readonly dayCount: readonly number[];
    readonly yearCount: readonly number[];
    readonly nature: RecordNature;
    readonly units: FigureUnits;
  },
): string {
  const at = cell.month * HOURS + cell.hour;
  const words = quantileWords(at, of);
  return `${MONTH_NAMES[cell.month] ?? ''}, ${hourText(cell.hour)}: ${words}`;
}

/** The figures of one place, with the days behind them; said of them all when they are too few or beyond a table. */
export function quantileWords(
  at: number,
  {
    figure,
    quantiles,
    dayCount,
    yearCount,
    nature,
    units,
  }: {
    readonly figure: WeatherFigure;
    readonly quantiles: readonly { share: number; daysNeeded: number; value: readonly (number | null)[] }[];
    readonly dayCount: readonly number[];
    readonly yearCount: readonly number[];
    readonly nature: RecordNature;
    readonly units: FigureUnits;
  },
): string {
  const days = dayCount[at] ?? 0;
  const figures = quantiles.flatMap(({ share, daysNeeded, value }) => {
    const valueSi = value[at] ?? null;
    if (valueSi !== null)
      return [
        `${figureShown(valueSi, figure, units)} ${orBetter(figure)} on ${shareOfDaysWords(share, nature)}`,
      ];
    return days >= daysNeeded ? [`beyond the manual’s table for ${shareOfDaysWords(share, nature)}`] : [];
  });
  const count = days === 0 ? 'no day' : `${countOf(days, 'day')} of ${countOf(yearCount[at] ?? 0, 'year')}`;
  return figures.length === 0 ? `too few, ${count}` : `${figures.join(', ')}; ${count}`;
}

export function hourText(hour: number): string {
  return `${String(hour).padStart(2, '0')}:00`;
}

function tooFew({ view, dayCount }: SeasonAnswerParts): Sentence {
  const most = Math.max(0, ...dayCount);
  if (view.kind !== 'share')
    return [
      plain(`Too few days: the fullest hour has ${String(most)} of the ${String(DAYS_FOR_WORST)} needed.`),
    ];
  const { share, daysNeeded } = view;
  if (most >= daysNeeded)
    return [plain('Beyond the manual’s table at every hour for which there are enough days.')];
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
  value: number;
}

/** The cell with the greatest (sign 1) or least (sign -1) figure; the first of equals. */
function extreme(
  { value: values }: { readonly value: readonly (number | null)[] },
  counts: (cell: { month: number; hour: number }) => boolean,
  sign: 1 | -1,
): Found | null {
  let found: Found | null = null;
  for (let month = 0; month < MONTHS; month++)
    for (let hour = 0; hour < HOURS; hour++) {
      const value = values[month * HOURS + hour] ?? null;
      if (value === null || !counts({ month, hour })) continue;
      if (found === null || sign * (value - found.value) > 0) found = { month, hour, value };
    }
  return found;
}
