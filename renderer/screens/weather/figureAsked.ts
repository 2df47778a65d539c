import type { InputOf, OutputOf } from '../../../main/requests/table.ts';
import { DAYS_FOR_WORST } from '../../../shared-calc/climate/days-needed.ts';
import type { SeasonView } from '../../../shared-calc/wording/season.ts';
import type { WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';
import type { Planned, PlannedShare } from './planner.svelte.ts';

/** Of days that are no worse; all are asked at once, so that choosing another draws at once. */
export const SHARES: PlannedShare[] = [0.5, 0.75, 0.9, 0.95];

type Figure = NonNullable<InputOf<'weather.season'>['figure']>;
type Asked = Planned['asked'];

/** In the order in which they are offered, with what each needs beside the air. */
const OFFERED: readonly {
  figure: WeatherFigure;
  word: string;
  needs: 'air' | 'runway' | 'takeOff' | 'climb';
}[] = [
  { figure: 'densityAltitude', word: 'density altitude', needs: 'air' },
  { figure: 'takeOffDistance', word: 'take-off distance', needs: 'takeOff' },
  { figure: 'runwayMargin', word: 'runway left at take-off', needs: 'takeOff' },
  { figure: 'climbRate', word: 'rate of climb', needs: 'climb' },
  { figure: 'temperature', word: 'temperature', needs: 'air' },
  { figure: 'humidityShare', word: 'humidity’s share of it', needs: 'air' },
  { figure: 'headwind', word: 'headwind', needs: 'runway' },
  { figure: 'crosswind', word: 'crosswind', needs: 'runway' },
];

/** The figures that can be had for the departure in question. */
export function figuresOffered(asked: Asked | null): { figure: WeatherFigure; word: string }[] {
  return OFFERED.filter(
    ({ needs }) =>
      needs === 'air' ||
      (needs === 'runway' && asked?.runway != null) ||
      (needs === 'takeOff' && asked?.hasTakeOff === true) ||
      (needs === 'climb' && asked?.hasClimb === true),
  );
}

/** The figure as a request asks it; where its runway or aeroplane is not there, density altitude stands in. */
export function figureAsked(figure: WeatherFigure, asked: Asked | null, aircraftId: string | null): Figure {
  const none = { kind: 'densityAltitude' } as const;
  if (figure === 'densityAltitude' || figure === 'temperature' || figure === 'humidityShare')
    return { kind: figure };
  const runway = asked?.runway ?? null;
  if (figure === 'headwind' || figure === 'crosswind')
    return runway === null ? none : { kind: figure, runwayId: runway.id, end: runway.end };
  const heavyKg = asked?.loading?.massHighKg ?? null;
  const massKg = asked === null || heavyKg === null ? null : heavyKg - asked.lighterKg;
  if (asked === null || massKg === null || aircraftId === null) return none;
  if (figure === 'climbRate') return asked.hasClimb ? { kind: figure, aircraftId, massKg } : none;
  return runway === null || !asked.hasTakeOff
    ? none
    : { kind: figure, aircraftId, massKg, runwayId: runway.id, end: runway.end };
}

/** What the departure in question asks of a figure; null where it asks nothing of it. */
export function limitOfQuestion(asked: Asked, figure: WeatherFigure): number | null {
  switch (figure) {
    case 'densityAltitude':
      return asked.densityAltitudeMostM;
    case 'crosswind':
      return asked.crosswindMostMs;
    case 'takeOffDistance':
      return asked.phase === 'take-off' ? asked.takeOffMostM : null;
    case 'climbRate':
      return asked.climbLeastMs;
    default:
      return null;
  }
}

/** Which loading and runway the figure is of, for its caption; '' where it is of the air alone. */
export function ofWhat(figure: Figure, asked: Asked | null): string {
  const parts = [
    ...('massKg' in figure && asked?.loading ? [asked.loading.name] : []),
    ...('runwayId' in figure && asked?.runway ? [`runway ${asked.runway.words}`] : []),
  ];
  return parts.join(', ');
}

/** What the season picture draws; without a limit nothing is beyond it. */
export function viewAsked(
  { view, share }: { view: 'share' | 'worst' | 'beyond'; share: number },
  limit: number | null,
  quantiles: readonly { share: number; daysNeeded: number }[],
): SeasonView {
  if (view === 'worst') return { kind: 'worst' };
  if (view === 'beyond' && limit !== null) return { kind: 'beyond', limit };
  return {
    kind: 'share',
    share,
    daysNeeded: quantiles.find((each) => each.share === share)?.daysNeeded ?? 0,
  };
}

/** Days beyond the limit by cell; null where there are too few to speak of. */
export function beyondOf({
  beyondCount,
  dayCount,
}: Pick<OutputOf<'weather.season'>, 'beyondCount' | 'dayCount'>): (number | null)[] {
  return dayCount.map((days, cell) => (days < DAYS_FOR_WORST ? null : (beyondCount?.[cell] ?? null)));
}
