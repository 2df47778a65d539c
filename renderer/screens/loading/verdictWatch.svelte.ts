import {
  verdictChanges,
  verdictChangesSentence,
  type VerdictChange,
} from '../../../shared-calc/wording/verdict-changes.ts';
import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';
import { loadingView } from './loadingView.svelte.ts';
import { SeenVerdicts, type Standing } from './seenVerdicts.svelte.ts';

/** Loadings whose verdict was changed from elsewhere and that nobody has looked at since. */
export class ChangedVerdicts {
  #changes = $state.raw<readonly VerdictChange[]>([]);
  #lookedAtId = $state<string | null>(null);

  get count(): number {
    return this.#changes.length;
  }

  /** What it was before, 'inside by 8 mm'; null where it did not change or was looked at. */
  wasOf(loadingId: string): string | null {
    return this.#changes.find(({ id }) => id === loadingId)?.was.inShort ?? null;
  }

  note(changes: readonly VerdictChange[]): void {
    this.#changes = changes;
  }

  /** The loading on the sheet; null once the sheet is left. */
  look(loadingId: string | null): void {
    this.#lookedAtId = loadingId;
  }

  isLookedAt(loadingId: string): boolean {
    return this.#lookedAtId === loadingId;
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
  const answered = query(
    app,
    'loading.verdicts',
    () =>
      app.aeroplaneId === null
        ? null
        : { aircraftId: app.aeroplaneId, units: app.units.of('mass') === 'lb' ? 'US' : 'metric' },
    ['loading', 'aircraft', 'people'],
  );
  const standing = $derived.by((): Standing | null => {
    const { answer, isCurrent } = answered;
    const aircraftId = app.aeroplaneId;
    return answer === undefined || aircraftId === null || !isCurrent
      ? null
      : { aircraftId, verdicts: answer };
  });
  const changed = changedVerdicts(app);
  const seen = new SeenVerdicts(
    app,
    'loadings',
    () => standing,
    (id) => changed.isLookedAt(id),
  );
  let last: Standing | null = null;
  $effect(() => {
    const now = standing;
    const since = seen.changes;
    if (now === null || since === null) return;
    changed.note(since);
    // While the window lives each change is told once; what changed while it was closed is told when it opens.
    const fresh = last?.aircraftId === now.aircraftId ? verdictChanges(last.verdicts, now.verdicts) : since;
    last = now;
    tell(app, fresh);
  });
}

function tell(app: App, changes: readonly VerdictChange[]): void {
  const [first] = changes;
  if (first === undefined) return;
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
}
