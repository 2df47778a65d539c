import type { InputOf, OutputOf } from '../../../main/requests/table.ts';
import { DAYS_FOR_WORST } from '../../../shared-calc/climate/days-needed.ts';
import type { SeasonView } from '../../../shared-calc/wording/season.ts';
import type { WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';
import type { PlannedShare } from './planner.svelte.ts';
import { headingText } from './runwayEnds.ts';

/** Of days that are no worse; all are asked at once, so that choosing another draws at once. */
export const SHARES: PlannedShare[] = [0.5, 0.75, 0.9, 0.95];

type Field = OutputOf<'fields.list'>[number];
type Figure = NonNullable<InputOf<'weather.season'>['figure']>;

/** One direction of take-off at a field. */
export interface EndOfRunway {
  /** For a list of choices. */
  id: string;
  runwayId: string;
  end: 0 | 1;
  trueDeg: number;
  /** '06, 070° true'. */
  words: string;
}

export function runwayEndsOf(runways: Field['runways']): EndOfRunway[] {
  return runways.flatMap((runway) =>
    runway.ends.map((each, at) => ({
      id: `${runway.id} ${String(at)}`,
      runwayId: runway.id,
      end: at === 0 ? (0 as const) : (1 as const),
      trueDeg: each.trueHeadingDeg,
      words: `${each.ident}, ${headingText(each.trueHeadingDeg)} true`,
    })),
  );
}

/** The end in hand: the one chosen, else the field's first; null where it has none. */
export function endInHand(
  ends: readonly EndOfRunway[],
  chosen: { runwayId: string; end: 0 | 1 } | null,
): EndOfRunway | null {
  return (
    ends.find(({ runwayId, end }) => runwayId === chosen?.runwayId && end === chosen.end) ?? ends[0] ?? null
  );
}

/** The figure as a request asks it; without a runway there is no wind along one, and density altitude stands in. */
export function figureAsked(
  figure: WeatherFigure,
  ends: readonly EndOfRunway[],
  chosen: { runwayId: string; end: 0 | 1 } | null,
): Figure {
  if (figure !== 'headwind' && figure !== 'crosswind') return { kind: figure };
  const end = endInHand(ends, chosen);
  return end === null ? { kind: 'densityAltitude' } : { kind: figure, runwayTrueDeg: end.trueDeg };
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
