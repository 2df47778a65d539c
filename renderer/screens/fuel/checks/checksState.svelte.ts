import type { OutputOf } from '../../../../main/requests/table.ts';
import type { FuelCheckRecord, RefillCheckRecord } from '../../../../shared-calc/fuel/checks/check-record.ts';
import type { LearnedFlow } from '../../../../shared-calc/fuel/checks/flow-from-refills.ts';
import type { GaugeReading } from '../../../../shared-calc/fuel/fill-run.ts';
import { query, type Query } from '../../../app/query.svelte.ts';
import { todayHere } from '../../../ui/dateKind.ts';
import type { FuelState } from '../fuelState.svelte.ts';
import {
  termsOfLog,
  flowOfLog,
  judgeLog,
  type JudgedLog,
} from '../../../../shared-calc/fuel/checks/judge-log.ts';

const USUAL_STATE_SD_L = 0.5;

/** A check while it is typed, and what is chosen from the list; found again after a visit to another screen. */
class Draft {
  checkedOn = $state(todayHere());
  before = $state.raw<GaugeReading | null>(null);
  after = $state.raw<GaugeReading | null>(null);
  flightS = $state<number | null>(null);
  refillL = $state<number | null>(null);
  /** As the last check had it, until something else is typed. */
  stateSdL = $state<number | null>(null);
  containerId = $state<string | null | undefined>(undefined);
  attitude = $state<RefillCheckRecord['attitude'] | null>(null);
  zero = $state.raw<GaugeReading | null>(null);
  /** The fields are made anew for each check, so that none shows what the last one was. */
  loggedCount = $state(0);
  /** Checks chosen to become data of the next curve. */
  takenIds = $state.raw<readonly string[]>([]);
}

/** What the checks' part of the fuel screen shows, derived from the log and the adopted curve. */
export class ChecksState {
  readonly fuel: FuelState;
  readonly log: Query<OutputOf<'fuelCheck.list'>>;
  readonly checks = $derived.by((): readonly FuelCheckRecord[] =>
    // While another tank's log is on its way, the last answer belongs to the wrong tank.
    (this.log.answer ?? []).filter(({ tankId }) => tankId === this.fuel.tank?.id),
  );
  readonly latestRefill = $derived.by(
    (): RefillCheckRecord | null =>
      this.checks.find((check) => check.kind === 'refill' && !check.withdrawn) as RefillCheckRecord | null,
  );
  readonly containers = $derived.by(() => this.fuel.containers.answer ?? []);
  /** On which the log is judged; null without a curve. */
  readonly terms = $derived.by(() =>
    this.fuel.adopted === null
      ? null
      : termsOfLog(this.fuel.adopted, this.fuel.tests.answer ?? [], this.checks),
  );
  readonly attitude = $derived.by(
    () => this.draft.attitude ?? this.terms?.attitude ?? this.latestRefill?.attitude ?? 'ground',
  );
  readonly stateSdL = $derived.by(
    () => this.draft.stateSdL ?? this.latestRefill?.stateSdL ?? USUAL_STATE_SD_L,
  );
  readonly containerId = $derived.by(() =>
    this.draft.containerId === undefined ? (this.latestRefill?.containerId ?? null) : this.draft.containerId,
  );
  readonly judged = $derived.by((): JudgedLog | null => {
    const { adopted } = this.fuel;
    const kept = this.fuel.adoptedRefits.answer ?? null;
    const { terms } = this;
    if (adopted === null || terms === null || kept === null || !this.fuel.adoptedRefits.isCurrent)
      return null;
    return judgeLog(this.checks, adopted, kept, this.containers, terms);
  });
  readonly flow = $derived.by((): LearnedFlow | null => flowOfLog(this.checks, this.containers));

  constructor(fuel: FuelState) {
    this.fuel = fuel;
    this.log = query(
      fuel.app,
      'fuelCheck.list',
      () => (fuel.tank === null ? null : { tankId: fuel.tank.id }),
      ['fuel', 'aircraft'],
    );
  }

  /** Each tank has its own. */
  get draft(): Draft {
    return this.fuel.app.kept(`fuel.checks.${this.fuel.tank?.id ?? ''}`, () => new Draft());
  }

  /** Log what was typed. Gives whether it was taken; the fields are then empty for the next one. */
  async record(): Promise<boolean> {
    const { fuel, draft } = this;
    const { before, after, refillL } = draft;
    if (fuel.tank === null || before === null || after === null || refillL === null) return false;
    const recorded = await fuel.app.change('fuelCheck.record', {
      check: {
        kind: 'refill',
        tankId: fuel.tank.id,
        checkedOn: draft.checkedOn,
        attitude: this.attitude,
        before,
        after,
        flightS: draft.flightS,
        refillL,
        stateSdL: this.stateSdL,
        containerId: this.containerId,
        note: '',
      },
    });
    if (recorded === null) return false;
    draft.before = draft.after = null;
    draft.flightS = draft.refillL = null;
    draft.loggedCount += 1;
    return true;
  }

  async recordZero(): Promise<void> {
    const { fuel, draft } = this;
    if (fuel.tank === null || draft.zero === null) return;
    const recorded = await fuel.app.change('fuelCheck.record', {
      check: {
        kind: 'zero',
        tankId: fuel.tank.id,
        checkedOn: draft.checkedOn,
        attitude: this.attitude,
        reading: draft.zero,
        note: '',
      },
    });
    if (recorded !== null) draft.zero = null;
  }

  toggleTaken(id: string): void {
    const { draft } = this;
    draft.takenIds = draft.takenIds.includes(id)
      ? draft.takenIds.filter((each) => each !== id)
      : [...draft.takenIds, id];
  }

  /** The curve anew, from the same fill tests and the checks that were chosen. */
  async adoptWithTaken(): Promise<void> {
    const { fuel, draft } = this;
    if (fuel.tank === null || fuel.adopted === null) return;
    const count = draft.takenIds.length;
    const adopted = await fuel.app.changeAndSay(
      'calibration.adopt',
      {
        tankId: fuel.tank.id,
        testIds: fuel.adopted.testIds,
        checkIds: [...fuel.adopted.checkIds, ...draft.takenIds],
        adoptedOn: todayHere(),
      },
      `A curve with ${count === 1 ? 'one check' : `${String(count)} checks`} taken in is adopted; the one before it stays readable.`,
    );
    if (adopted !== null) draft.takenIds = [];
  }
}
