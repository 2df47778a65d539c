import type { OutputOf } from '../../../../main/requests/table.ts';
import type { StickCalibration } from '../../../../shared-calc/fuel/dipstick/calibrate-stick.ts';
import type { DipstickRecord } from '../../../../shared-calc/fuel/dipstick/dipstick-record.ts';
import { stickReading } from '../../../../shared-calc/fuel/dipstick/stick-data.ts';
import { compareTwoMeans, type TwoMeans } from '../../../../shared-calc/fuel/dipstick/two-means.ts';
import type { GaugeReading } from '../../../../shared-calc/fuel/fill-run.ts';
import { fuelAtReading, type FuelReadout } from '../../../../shared-calc/fuel/readout.ts';
import type { FillTestRecord } from '../../../../shared-calc/fuel/records.ts';
import { sentenceOf } from '../../../app/client.ts';
import { NewestJob } from '../../../app/newestJob.ts';
import { query, type Query } from '../../../app/query.svelte.ts';
import type { FuelState } from '../fuelState.svelte.ts';
import type { StickJob, StickReply } from './stick-worker.ts';

/** Curves adopted by an earlier method drew the errors of pouring in another order than the stick's fit does. */
const FIRST_SHARED_METHOD = 4;

class Looked {
  stickMm = $state<number | null>(null);
  gauge = $state.raw<GaugeReading | null>(null);
  isScale = $state(false);
}

/** What both means say at the readings of today. */
export interface HeldTogether {
  readonly gauge: FuelReadout;
  readonly stick: FuelReadout;
  /** null where one of them is at a stop or beyond its curve: then only the lower figure is left. */
  readonly found: TwoMeans | null;
}

/** What the dipstick's part of the fuel screen shows. */
export class DipstickState {
  readonly fuel: FuelState;
  readonly stick: Query<OutputOf<'dipstick.get'>>;
  #fitted = $state.raw<StickReply | null>(null);
  #hasFailed = $state(false);
  #work: NewestJob<StickJob, StickReply> | null = null;

  readonly record = $derived.by((): DipstickRecord | null => {
    const answer = this.stick.answer ?? null;
    // While another tank's stick is on its way, the last answer belongs to the wrong tank.
    return answer !== null && answer.tankId === this.fuel.tank?.id ? answer : null;
  });
  /** The fill tests behind the adopted curve; before there is one, the test in hand. */
  readonly tests = $derived.by((): readonly FillTestRecord[] => {
    const { adopted, test, tests } = this.fuel;
    if (adopted === null) return test === null ? [] : [test];
    return (tests.answer ?? [])
      .filter(({ id }) => adopted.testIds.includes(id))
      .map((each) => (each.id === test?.id ? test : each));
  });
  readonly #job = $derived.by((): StickJob | null => {
    const { record, tests } = this;
    const { tank, containers } = this.fuel;
    if (record === null || tank === null || containers.answer === undefined || tests.length === 0)
      return null;
    const { capacityL, unusableL } = tank;
    const job = { tests, containers: containers.answer, tank: { capacityL, unusableL }, stick: record };
    return { key: JSON.stringify(job), ...job };
  });
  readonly calibration = $derived.by((): StickCalibration | 'fitting' | 'failed' | null => {
    if (this.#job === null) return null;
    if (this.#hasFailed) return 'failed';
    return this.#fitted?.key === this.#job.key ? this.#fitted.found : 'fitting';
  });
  readonly curve = $derived.by(() =>
    typeof this.calibration === 'object' && this.calibration?.kind === 'curve' ? this.calibration : null,
  );
  readonly gaugeReading = $derived.by(() => this.looked.gauge ?? this.fuel.looked.reading);
  readonly stickAt = $derived.by((): GaugeReading | null =>
    this.looked.stickMm === null || this.curve === null
      ? null
      : stickReading(this.looked.stickMm, this.curve.span),
  );
  readonly stickReadout = $derived.by((): FuelReadout | null =>
    this.curve === null || this.stickAt === null
      ? null
      : fuelAtReading(this.curve.curve, this.stickAt, 'nearestDivision'),
  );
  readonly together = $derived.by((): HeldTogether | null => this.#together());

  constructor(fuel: FuelState) {
    this.fuel = fuel;
    this.stick = query(
      fuel.app,
      'dipstick.get',
      () => (fuel.tank === null ? null : { tankId: fuel.tank.id }),
      ['fuel', 'aircraft'],
    );
    $effect(() => this.#start());
    $effect(() => {
      const job = this.#job;
      if (job === null) return;
      this.#hasFailed = false;
      this.#work?.ask($state.snapshot(job) as StickJob);
    });
  }

  /** Each tank has its own. */
  get looked(): Looked {
    return this.fuel.app.kept(`fuel.dipstick.${this.fuel.tank?.id ?? ''}`, () => new Looked());
  }

  #start(): () => void {
    // The build finds the worker by this very form; the address is never changed.
    // eslint-disable-next-line svelte/prefer-svelte-reactivity
    const worker = new Worker(new URL('./stick-worker.ts', import.meta.url), { type: 'module' });
    const work = new NewestJob<StickJob, StickReply>(
      worker,
      (reply) => (this.#fitted = reply),
      () => (this.#hasFailed = true),
    );
    this.#work = work;
    return () => {
      work.end();
      this.#work = null;
    };
  }

  #together(): HeldTogether | null {
    const { curve, stickAt, stickReadout, gaugeReading } = this;
    const { adopted } = this.fuel;
    const kept = this.fuel.adoptedRefits.answer ?? null;
    if (curve === null || stickAt === null || stickReadout === null || adopted === null) return null;
    const gauge = fuelAtReading(adopted.curve, gaugeReading, 'nearestDivision');
    const isComparable =
      kept !== null &&
      this.fuel.adoptedRefits.isCurrent &&
      adopted.methodVersion >= FIRST_SHARED_METHOD &&
      gauge.place === 'onCurve' &&
      stickReadout.place === 'onCurve' &&
      gaugeReading.at === 'scale' &&
      stickAt.at === 'scale';
    const found = isComparable
      ? compareTwoMeans(
          {
            refits: kept,
            positionRatio: gaugeReading.positionRatio,
            resolutionRatio: adopted.curve.resolutionRatio,
          },
          {
            refits: curve.refits,
            positionRatio: stickAt.positionRatio,
            resolutionRatio: curve.curve.resolutionRatio,
          },
        )
      : null;
    return { gauge, stick: stickReadout, found };
  }

  async put(changed: Partial<DipstickRecord>, named?: string): Promise<string | null> {
    const { tank, app } = this.fuel;
    if (tank === null) return null;
    const before = this.record ?? { tankId: tank.id, kind: 'dipstick' as const, lengthMm: 300, readToMm: 5 };
    try {
      await app.client.ask('dipstick.put', {
        dipstick: { ...before, ...changed },
        ...(named === undefined ? {} : { named }),
      });
      return null;
    } catch (error) {
      return sentenceOf(error);
    }
  }
}
