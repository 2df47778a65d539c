import { untrack } from 'svelte';
import type { OutputOf } from '../../../main/requests/table.ts';
import type { Sentence } from '../../../shared-calc/wording/parts.ts';
import { seasonAnswer } from '../../../shared-calc/wording/season.ts';
import type { WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';
import type { App } from '../../app/app.svelte.ts';
import { query, type Query } from '../../app/query.svelte.ts';
import { todayHere } from '../../ui/dateKind.ts';
import { dateInHand } from './dateInHand.ts';
import { daylightByMonth } from './daylight.ts';
import { beyondOf, figureAsked, limitOfQuestion, SHARES, viewAsked } from './figureAsked.ts';
import { plannerQuery, plannerState, type Planned, type PlannedShare } from './planner.svelte.ts';
import { pictureValues } from './seasonPicture.ts';
import type { WeatherState } from './weatherState.svelte.ts';

type Field = NonNullable<App['fields']['answer']>[number];

/** Everything that the sheet asks of the record at once: the same field, date, figure and departure for all its parts. */
export interface WeatherAnswers {
  readonly field: Field | null;
  /** The departure in question, kept while it is asked anew: what it names decides which figures there are. */
  readonly asked: Planned['asked'] | null;
  readonly figure: ReturnType<typeof figureAsked>;
  /** What can be told from a morning's air alone. */
  readonly airFigure: 'densityAltitude' | 'temperature' | null;
  /** Of a figure, in the unit kept inside; null where none is asked. */
  limitOf(figure: WeatherFigure): number | null;
  readonly season: Query<OutputOf<'weather.season'>>;
  /** The date in hand; null while there is no season to choose it from. */
  readonly date: string | null;
  readonly planned: Query<Planned>;
  readonly day: Query<OutputOf<'weather.day'>>;
  readonly rest: Query<OutputOf<'weather.restOfDay'>>;
  /** The answer above the pictures; null before there is one. */
  readonly sentences: readonly Sentence[] | null;
  /** When to take off or land, in hours of the local clock. */
  readonly windows: readonly { fromH: number; toH: number }[];
  chooseShare(share: PlannedShare): void;
  chooseDate(day: string): void;
}

/** Ask while the calling component lives. */
export function weatherAnswers(app: App, weather: WeatherState): WeatherAnswers {
  const planner = plannerState(app);
  const field = $derived(app.fields.answer?.find(({ id }) => id === app.fieldId) ?? null);
  /** The departure in question, kept while it is asked anew: what it names decides which figures there are. */
  let asked = $state.raw<Planned['asked'] | null>(null);
  const figure = $derived(figureAsked(weather.figure, asked, app.aeroplaneId));
  /** What the question asks of a figure stands in its picture too, until another limit is typed or it is emptied. */
  const limitOf = (of: WeatherFigure) =>
    weather.limits[of] === undefined
      ? asked === null
        ? null
        : limitOfQuestion(asked, of)
      : weather.limits[of];
  const limit = $derived(limitOf(figure.kind));
  const season = query(
    app,
    'weather.season',
    () => (field?.weatherStationId == null ? null : { fieldId: field.id, figure, shares: SHARES, limit }),
    ['weather', 'fields'],
  );
  const units = $derived(app.units.preferences);
  /** The date in hand; null while there is no season to choose it from. */
  const date = $derived(
    season.answer === undefined
      ? null
      : dateInHand(
          weather.date ?? (field === null ? null : (planner.question(field.id).day ?? null)),
          season.answer.dayCount,
          todayHere(),
        ),
  );
  const planned = plannerQuery(
    app,
    () => (date === null ? null : (field?.id ?? null)),
    () => ({ day: date ?? todayHere(), share: weather.share }),
  );
  const day = query(
    app,
    'weather.day',
    () =>
      field === null || date === null
        ? null
        : {
            fieldId: field.id,
            date,
            figure,
            shares: [0.5, 0.9, ...[weather.share].filter((share) => share !== 0.5 && share !== 0.9)],
            limit,
          },
    ['weather', 'fields'],
  );
  /** What can be told from a morning's air alone. */
  const airFigure = $derived(
    figure.kind === 'densityAltitude' || figure.kind === 'temperature' ? figure.kind : null,
  );
  const rest = query(
    app,
    'weather.restOfDay',
    () => {
      const { hour, temperatureC, dewPointC, settingHpa } = weather.today;
      return field === null ||
        date === null ||
        airFigure === null ||
        temperatureC === null ||
        dewPointC === null ||
        settingHpa === null
        ? null
        : { fieldId: field.id, date, figure: airFigure, hour, temperatureC, dewPointC, settingHpa };
    },
    ['weather', 'fields'],
  );
  const sentences = $derived.by(() => {
    if (planned.answer !== undefined) return planned.answer.sentences;
    const found = season.answer;
    if (found === undefined) return null;
    const view = viewAsked(weather, limitOf(found.figure), found.quantiles);
    return seasonAnswer({
      figure: found.figure,
      view,
      value: view.kind === 'beyond' ? beyondOf(found) : pictureValues(found, view.kind, weather.share),
      dayCount: found.dayCount,
      yearCount: found.yearCount,
      isObserved: found.record.isObserved,
      daylight: daylightByMonth(found.sun),
      units,
    });
  });
  function chooseShare(share: PlannedShare) {
    weather.share = share;
    if (field !== null) planner.ask(field.id, { share });
  }
  $effect(() => {
    if (planned.answer !== undefined) asked = planned.answer.asked;
  });
  // A figure that is refused (its table was emptied meanwhile) gives way to one that needs nothing but air.
  $effect(() => {
    if (season.refusal !== null) weather.figure = 'densityAltitude';
  });
  function chooseDate(day: string) {
    weather.date = day;
    if (field !== null) planner.ask(field.id, { day });
  }
  // What was asked of a field last time is found again when its sheet is opened.
  $effect(() => {
    const id = field?.id;
    if (id !== undefined) weather.share = untrack(() => planner.question(id).share) ?? 0.9;
  });
  const windows = $derived(
    (planned.answer?.plan?.windows ?? []).flatMap(({ takeOff }) => (takeOff === null ? [] : [takeOff])),
  );

  return {
    get field() {
      return field;
    },
    get asked() {
      return asked;
    },
    get figure() {
      return figure;
    },
    get airFigure() {
      return airFigure;
    },
    limitOf,
    season,
    get date() {
      return date;
    },
    planned,
    day,
    rest,
    get sentences() {
      return sentences;
    },
    get windows() {
      return windows;
    },
    chooseShare,
    chooseDate,
  };
}
