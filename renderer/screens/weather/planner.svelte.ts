import { SvelteMap } from 'svelte/reactivity';
import type { InputOf, OutputOf } from '../../../main/requests/table.ts';
import type { App } from '../../app/app.svelte.ts';
import { query, type Query } from '../../app/query.svelte.ts';
import type { Json } from '../../app/settings.svelte.ts';

export type PlannerInput = InputOf<'planner.answer'>;
export type PlannerQuestion = NonNullable<PlannerInput['question']>;
/** Of days that meet every limit. */
export type PlannedShare = NonNullable<PlannerQuestion['share']>;
/** Parts to choose anew; undefined puts one back to its usual value. */
export type PlannerChange = { [part in keyof PlannerQuestion]: PlannerQuestion[part] | undefined };
export type Planned = OutputOf<'planner.answer'>;

/** What is asked of a departure from each field; what the person has chosen is found again at the next start. */
export class PlannerState {
  readonly #app: App;
  readonly #changed = new SvelteMap<string, PlannerQuestion>();

  constructor(app: App) {
    this.#app = app;
  }

  /** What was chosen for a field; all the rest takes its usual value. */
  question(fieldId: string): PlannerQuestion {
    return this.#changed.get(fieldId) ?? questionFrom(this.#app.settings.get(keyOf(fieldId)));
  }

  /** Forget what was chosen for a field. */
  clear(fieldId: string): void {
    this.#changed.set(fieldId, {});
    this.#app.settings.remember(keyOf(fieldId), null);
  }

  /** Choose parts of the question. */
  ask(fieldId: string, change: PlannerChange): void {
    const parts = Object.entries({ ...this.question(fieldId), ...change });
    const question = Object.fromEntries(parts.filter(([, value]) => value !== undefined)) as PlannerQuestion;
    this.#changed.set(fieldId, question);
    this.#app.settings.remember(keyOf(fieldId), question as Json);
  }
}

export function plannerState(app: App): PlannerState {
  return app.kept('planner', () => new PlannerState(app));
}

/**
 * The answer for a field while the calling component lives.
 * @param fieldId null asks nothing
 * @param more    parts that stand before what was chosen: another date, another loading
 */
export function plannerQuery(
  app: App,
  fieldId: () => string | null,
  more: () => PlannerQuestion = () => ({}),
): Query<Planned> {
  const state = plannerState(app);
  return query(
    app,
    'planner.answer',
    () => {
      const id = fieldId();
      return id === null ? null : inputOf(app, id, { ...state.question(id), ...more() });
    },
    ['weather', 'fields', 'loading', 'aircraft', 'people'],
  );
}

export function inputOf(app: App, fieldId: string, question: PlannerQuestion): PlannerInput {
  return {
    fieldId,
    aircraftId: app.aeroplaneId,
    question,
    units: {
      altitude: app.units.of('altitude'),
      temperature: app.units.of('temperature'),
      altimeterSetting: app.units.of('altimeterSetting'),
      distance: app.units.of('distance'),
      speed: app.units.of('speed'),
      climbRate: app.units.of('climbRate'),
      mass: app.units.of('mass') === 'lb' ? 'lb' : 'kg',
    },
  };
}

function keyOf(fieldId: string): string {
  return `planner.${fieldId}`;
}

/** What an older or newer program kept is refused by the request's schema, so only the shape is looked at here. */
function questionFrom(kept: unknown): PlannerQuestion {
  return typeof kept === 'object' && kept !== null && !Array.isArray(kept) ? kept : {};
}
