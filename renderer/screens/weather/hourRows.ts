import type { OutputOf } from '../../../main/requests/table.ts';
import { hourCountWords, limitColumn } from '../../../shared-calc/wording/planner-words.ts';
import { hourText } from '../../../shared-calc/wording/season.ts';
import { shareOfDaysWords } from '../../../shared-calc/wording/share-words.ts';
import { figureColumn, WEATHER_FIGURES } from '../../../shared-calc/wording/weather-figure.ts';
import type { Units } from '../../app/units.svelte.ts';
import type { Planned } from './planner.svelte.ts';

type Day = OutputOf<'weather.day'>;
type Plan = NonNullable<Planned['plan']>;

/** One column of figures beside the hours. */
export interface HourColumn {
  head: string;
  /** For each of the 24 hours. */
  text: (hour: number) => string;
}

/** What stands beside each hour of the day. */
export interface HourTable {
  /** Hours that the flight leaves of the daylight; all of them where no departure is answered. */
  hours: number[];
  columns: HourColumn[];
}

/**
 * The hours of the day with their figures: those of the departure that is asked, and the figure in the picture where it is
 * none of them.
 */
export function hourTable(
  planned: Planned | undefined,
  day: Day | undefined,
  share: number,
  units: Pick<Units, 'figure' | 'label' | 'preferences'>,
): HourTable {
  const plan = planned?.plan ?? null;
  const times = planned?.times ?? null;
  const all = Array.from({ length: 24 }, (_, hour) => hour);
  return {
    hours: plan === null || times === null ? all : all.filter((hour) => isInside(hour, times)),
    columns: [
      ...(plan === null ? [] : planFigures(plan, units)),
      ...(day === undefined || (plan !== null && isOfPlan(day.figure, plan))
        ? []
        : dayFigures(day, share, units)),
      ...(plan === null ? (day === undefined ? [] : dayCounts(day)) : planCounts(plan)),
    ],
  };
}

export function isInside(hour: number, times: { fromH: number; toH: number }): boolean {
  return hour >= times.fromH && hour <= times.toH;
}

/** The table as text cells, all 24 hours of it, for a spreadsheet. */
export function hourCsv({ columns }: HourTable, firstHead: string): string[][] {
  return [
    [firstHead, ...columns.map(({ head }) => head)],
    ...Array.from({ length: 24 }, (_, hour) => [hourText(hour), ...columns.map(({ text }) => text(hour))]),
  ];
}

/** A figure that the departure's own columns have already. */
function isOfPlan(figure: Day['figure'], { limitNames }: Plan): boolean {
  return (
    figure === 'densityAltitude' ||
    (figure === 'takeOffDistance' && limitNames.includes('takeOff')) ||
    (figure === 'climbRate' && limitNames.includes('climbRate'))
  );
}

function planFigures(plan: Plan, units: Pick<Units, 'figure' | 'label'>): HourColumn[] {
  const has = (name: Plan['limitNames'][number]) => plan.limitNames.includes(name);
  const column = (
    head: string,
    of: 'takeOffM' | 'climbRateMs' | 'climbGradientRatio' | 'densityAltitudeM',
    text: (value: number) => string,
    none: string,
  ): HourColumn => ({
    head,
    text: (hour) => {
      const at = plan.hours[hour];
      const value = at?.[of] ?? null;
      return value !== null ? text(value) : at?.share == null ? '' : none;
    },
  });
  const distance = has('takeOff') ? 'take-off' : has('landing') ? 'landing' : null;
  return [
    ...(distance === null
      ? []
      : [
          column(
            `${distance}, ${units.label('distance')}`,
            'takeOffM',
            (value) => units.figure(value, 'distance', 'needed'),
            'beyond',
          ),
        ]),
    ...(has('climbRate')
      ? [
          column(
            `climb, ${units.label('climbRate')}`,
            'climbRateMs',
            (value) => units.figure(value, 'climbRate', 'available'),
            'beyond',
          ),
        ]
      : []),
    ...(has('climbGradient')
      ? [
          column(
            `gradient, ${units.label('gradient')}`,
            'climbGradientRatio',
            (value) => units.figure(value, 'gradient', 'available'),
            'beyond',
          ),
        ]
      : []),
    column(
      `density altitude, ${units.label('altitude')}`,
      'densityAltitudeM',
      (value) => units.figure(value, 'altitude', 'load'),
      '',
    ),
  ];
}

function planCounts(plan: Plan): HourColumn[] {
  return [
    {
      head: 'days inside',
      text: (hour) => {
        const at = plan.hours[hour];
        return at === undefined ? '' : hourCountWords(at);
      },
    },
    {
      head: 'fails most',
      text: (hour) => {
        const name = plan.hours[hour]?.failsMost ?? null;
        return name === null ? '' : limitColumn(name);
      },
    },
  ];
}

function dayFigures(day: Day, share: number, units: Pick<Units, 'label' | 'preferences'>): HourColumn[] {
  const { name, quantity } = WEATHER_FIGURES[day.figure];
  return day.quantiles
    .filter((each) => each.share === 0.5 || each.share === share)
    .map((each) => ({
      head: `${name}, ${units.label(quantity)}, ${shareOfDaysWords(each.share, day.nature)}`,
      text: (hour) => {
        const value = each.value[hour] ?? null;
        return value === null ? 'too few' : figureColumn(value, day.figure, units.preferences);
      },
    }));
}

function dayCounts(day: Day): HourColumn[] {
  return [{ head: 'days', text: (hour) => String(day.dayCount[hour] ?? 0) }];
}
