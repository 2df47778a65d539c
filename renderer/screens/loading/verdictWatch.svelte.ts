import {
  verdictChanges,
  verdictChangesSentence,
  type StandingVerdict,
  type VerdictChange,
} from '../../../shared-calc/wording/verdict-changes.ts';
import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';
import { loadingView } from './loadingView.svelte.ts';

/** Loadings whose verdict was changed from elsewhere and that nobody has looked at since. */
export class ChangedVerdicts {
  #changes = $state.raw<readonly VerdictChange[]>([]);

  get count(): number {
    return this.#changes.length;
  }

  /** What it was before, 'inside by 8 mm'; null where it did not change or was looked at. */
  wasOf(loadingId: string): string | null {
    return this.#changes.find(({ id }) => id === loadingId)?.was.inShort ?? null;
  }

  note(changes: readonly VerdictChange[]): void {
    const merged = changes.map((change) => {
      const earlier = this.#changes.find(({ id }) => id === change.id);
      return earlier === undefined ? change : { ...change, was: earlier.was };
    });
    this.#changes = [
      ...this.#changes.filter(({ id }) => !changes.some((change) => change.id === id)),
      // Back where it was before anybody looked: nothing is left to tell.
      ...merged.filter(({ was, is }) => was.verdict !== is.verdict),
    ];
  }

  look(loadingId: string): void {
    this.#changes = this.#changes.filter(({ id }) => id !== loadingId);
  }
}

export function changedVerdicts(app: App): ChangedVerdicts {
  return app.kept('loading.changedVerdicts', () => new ChangedVerdicts());
}

/**
 * Tell, on whatever screen the person is, when a change to the aeroplane or to somebody's mass moves a saved loading
 * into its limits or out of them. To be called while the index is set up: it watches as long as the window lives.
 */
export function watchVerdicts(app: App): void {
  const standing = query(
    app,
    'loading.verdicts',
    () =>
      app.aeroplaneId === null
        ? null
        : { aircraftId: app.aeroplaneId, units: app.units.of('mass') === 'lb' ? 'US' : 'metric' },
    ['loading', 'aircraft', 'people'],
  );
  const changed = changedVerdicts(app);
  let last: { aircraftId: string; verdicts: readonly StandingVerdict[] } | null = null;
  $effect(() => {
    const verdicts = standing.answer;
    const aircraftId = app.aeroplaneId;
    if (verdicts === undefined || aircraftId === null || !standing.isCurrent) return;
    const changes = last?.aircraftId === aircraftId ? verdictChanges(last.verdicts, verdicts) : [];
    last = { aircraftId, verdicts };
    const [first] = changes;
    if (first === undefined) return;
    changed.note(changes);
    const isWorse = changes.some(({ is }) => is.verdict === 'outside');
    app.notices.say(isWorse ? 'Take care' : 'Look at', verdictChangesSentence(changes), [
      {
        word: 'Show',
        run: () => {
          loadingView(app).isTable = false;
          void app.change('loading.choose', { id: first.id });
          app.place.go('loading');
        },
      },
    ]);
  });
}
