import type { InputOf } from '../../../main/requests/table.ts';
import {
  seenNow,
  verdictChanges,
  type StandingVerdict,
  type VerdictChange,
} from '../../../shared-calc/wording/verdict-changes.ts';
import type { App } from '../../app/app.svelte.ts';
import { query } from '../../app/query.svelte.ts';

/** How loadings or scenarios of an aeroplane stand. */
export interface Standing {
  aircraftId: string;
  verdicts: readonly StandingVerdict[];
}

/**
 * Which verdicts changed from elsewhere since somebody looked: how they stood then is kept in the library, so that a
 * restart forgets none. To be made while a component is set up; it keeps watch as long as that lives.
 */
export class SeenVerdicts {
  readonly #app: App;
  readonly #about: InputOf<'verdicts.see'>['about'];
  readonly #standing: () => Standing | null;
  readonly #changes: readonly VerdictChange[] | null;

  /**
   * @param standing   null while they are being worked out
   * @param isLookedAt whether one is looked at right now: its change is told by that, and kept no longer
   */
  constructor(
    app: App,
    about: InputOf<'verdicts.see'>['about'],
    standing: () => Standing | null,
    isLookedAt: (id: string) => boolean = () => false,
  ) {
    this.#app = app;
    this.#about = about;
    this.#standing = standing;
    const kept = query(
      app,
      'verdicts.seen',
      () => (app.aeroplaneId === null ? null : { aircraftId: app.aeroplaneId, about }),
      ['verdicts'],
    );
    const seen = $derived(
      kept.isCurrent && standing()?.aircraftId === app.aeroplaneId ? (kept.answer?.verdicts ?? null) : null,
    );
    this.#changes = $derived.by(() => {
      const now = standing();
      return seen === null || now === null ? null : verdictChanges(seen, now.verdicts);
    });
    let sent = '';
    $effect(() => {
      const now = standing();
      if (seen === null || now === null) return;
      const verdicts = seenNow(seen, now.verdicts, isLookedAt);
      const text = JSON.stringify(verdicts);
      if (text === JSON.stringify(seen) || text === sent) return;
      sent = text;
      // What could not be kept is told again the next time: nothing is lost by it, and nothing here waits for it.
      app.client
        .ask('verdicts.see', { aircraftId: now.aircraftId, about, verdicts })
        .catch(() => (sent = ''));
    });
  }

  /** null while they are being worked out. */
  get changes(): readonly VerdictChange[] | null {
    return this.#changes;
  }

  /** All of them are looked at: one step of undo. */
  async dismiss(named: string): Promise<void> {
    const now = this.#standing();
    if (now === null) return;
    const { aircraftId, verdicts } = now;
    await this.#app.change('verdicts.see', {
      aircraftId,
      about: this.#about,
      verdicts: seenNow([], verdicts),
      named,
    });
  }
}
