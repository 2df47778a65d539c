import type { OutputOf } from '../../../main/requests/table.ts';
import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { areAlike, fillDataOf } from '../../../shared-calc/fuel/fit/calibrate.ts';
import { fitRows, type FitRows } from '../../../shared-calc/fuel/fit/fill-data.ts';
import { LEAST_DISTINCT_READINGS } from '../../../shared-calc/fuel/fit/gauge-fit.ts';
import { quickCurve } from '../../../shared-calc/fuel/fit/quick-curve.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import { resolutionRatio, type GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { byHandOf, type CalibrationRecord, type FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import { byHandWords } from '../../../shared-calc/wording/fuel-test.ts';
import { gaugeDoubtSentence } from '../../../shared-calc/wording/gauge-standing.ts';
import { fuelAtReading, type FuelReadout, type ReadingPrecision } from '../../../shared-calc/fuel/readout.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import { query, type Query } from '../../app/query.svelte.ts';
import { dayText } from '../../ui/dateKind.ts';
import { CurveFitter } from './curveFitter.svelte.ts';
import type { FitJob, FittedTest } from './fit-job.ts';
import type { FuelPart } from './fuelParts.ts';
import { placedPours, type PlacedPour } from './placedPours.ts';
import { rowsOf, type RowFigures } from './rowsOf.ts';
import { isSameCurve } from './sameCurve.ts';
import { TestKeeper } from './testKeeper.svelte.ts';

export type Tank = OutputOf<'aircraft.get'>['aircraft']['tanks'][number];

/** Shared and never changed. */
const noRows: ReadonlyMap<string, RowFigures> = new Map();

/** What became of the test's curve so far. */
export type TestFit =
  | ({ readonly kind: 'curve' } & FittedTest)
  | { readonly kind: 'tooFewReadings'; readonly distinctCount: number; readonly neededCount: number }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'fitting' };

/** What the person looks at on this screen; found again after a visit to another one. */
class Looked {
  part = $state<FuelPart>('calibration');
  tankId = $state<string | null>(null);
  testId = $state<string | null>(null);
  /** The curve that answers: the adopted one unless the person looks at the test's own. */
  shows = $state<'adopted' | 'test'>('adopted');
  precision = $state<ReadingPrecision>('nearestDivision');
  reading = $state.raw<GaugeReading>({ at: 'scale', positionRatio: 0.5 });
  wantedL = $state<number | null>(null);
  /** What is shown instead of the plot: a card or a report of the adopted curve. */
  paper = $state<'card' | 'report' | null>(null);
  hasResiduals = $state(false);
  /** The pour whose point is in hand. */
  pourId = $state<string | null>(null);
  /** Tests that are to make one curve with the one in hand. */
  pooledIds = $state.raw<readonly string[]>([]);
  /** An adopted curve laid under the one that answers. */
  overlayId = $state<string | null>(null);
  /** What the other tanks' gauges read, for the total. */
  otherReadings = $state.raw<Readonly<Record<string, GaugeReading>>>({});
  /** Chosen here instead of the aeroplane's own figures. */
  fuelFlowLPerH = $state<number | null>(null);
  reserveS = $state<number | null>(null);
  flightS = $state<number | null>(null);
}

/** What makes the list of tests be asked anew. */
const areasOfTests = ['fuel', 'aircraft'] as const;

/** Everything that the fuel screen shows, derived from the library and from what is looked at. */
export class FuelState {
  readonly app: App;
  readonly looked: Looked;
  readonly aircraft: Query<OutputOf<'aircraft.get'>>;
  readonly tests: Query<OutputOf<'fillTest.list'>>;
  readonly calibrations: Query<OutputOf<'calibration.list'>>;
  readonly containers: Query<OutputOf<'container.list'>>;
  readonly standing: Query<OutputOf<'calibration.standing'>>;
  readonly keeper: TestKeeper;

  readonly tanks = $derived.by((): Tank[] => this.aircraft.answer?.aircraft.tanks ?? []);
  readonly tank = $derived.by(
    (): Tank | null => this.tanks.find(({ id }) => id === this.looked.tankId) ?? this.tanks[0] ?? null,
  );
  readonly test = $derived.by((): FillTestRecord | null => this.keeper.test);
  /** The tests that make this curve: the one in hand, and those pooled with it that are alike. */
  readonly pooled = $derived.by((): readonly [FillTestRecord, ...FillTestRecord[]] | null => {
    const { test } = this;
    if (test === null) return null;
    const others = (this.tests.answer ?? []).filter(
      (other) => other.id !== test.id && this.looked.pooledIds.includes(other.id) && areAlike([test, other]),
    );
    return [test, ...others];
  });
  readonly fitter = new CurveFitter();
  /** The curve of this test before the last edit. */
  #before = $state.raw<{ testId: string; curve: GaugeCurve } | null>(null);
  /** What is to be fitted, or why not; null where there is no test or its containers are on their way. */
  readonly #checked = $derived.by(() => this.#check());
  readonly fit = $derived.by((): TestFit | null => {
    if (this.#checked?.kind !== 'toFit') return this.#checked;
    const { fitted, hasFailed } = this.fitter;
    if (hasFailed)
      return { kind: 'refused', sentence: 'the fit could not be run; close the window and open it again' };
    return fitted?.testId === this.#checked.job.tests[0].id
      ? { kind: 'curve', ...fitted }
      : { kind: 'fitting' };
  });
  /**
   * The best estimate of the test as it is this moment, while its whole fit is on its way: the curve follows the hand,
   * the band and the figure to plan on follow it. null where the whole fit is there.
   */
  readonly quick = $derived.by((): readonly (readonly [number, number])[] | null => {
    const checked = this.#checked;
    const { fitted } = this.fitter;
    if (checked?.kind !== 'toFit' || this.fit?.kind !== 'curve' || fitted === null) return null;
    return this.fitter.isOf(checked.job) ? null : quickCurve(checked.rows, fitted);
  });
  readonly adopted = $derived.by((): CalibrationRecord | null => {
    // While another tank's curves are on their way, the last answer belongs to the wrong tank.
    const ofTank = this.calibrations.answer?.filter(({ tankId }) => tankId === this.tank?.id);
    return ofTank?.find(({ withdrawn }) => !withdrawn) ?? null;
  });
  /** What the checks since say against the adopted curve; '' where they agree. */
  readonly doubt = $derived.by((): string => {
    const found = this.standing.answer?.find(({ tankId }) => tankId === this.tank?.id);
    return this.adopted === null ? '' : gaugeDoubtSentence(found?.checks ?? null, dayText);
  });
  readonly testCurve = $derived.by((): GaugeCurve | null =>
    this.fit?.kind === 'curve' ? this.fit.curve : null,
  );
  /** What the last edit did: the curve before it, where it differs from the one now. */
  readonly beforeEdit = $derived.by((): GaugeCurve | null => {
    const before = this.#before;
    if (before === null || before.testId !== this.test?.id || this.testCurve === null) return null;
    return isSameCurve(before.curve, this.testCurve) ? null : before.curve;
  });
  /** What was edited by hand in the curve that answers. */
  readonly byHand = $derived.by((): string => {
    if (this.answersWith === 'adopted') return this.adopted === null ? '' : byHandWords(this.adopted.byHand);
    return this.pooled === null ? '' : byHandWords(byHandOf(this.pooled));
  });
  /** Whether the adopted curve is the very one that this test gives now. */
  readonly isAdopted = $derived.by(
    () => this.adopted !== null && this.testCurve !== null && isSameCurve(this.adopted.curve, this.testCurve),
  );
  readonly answersWith = $derived.by((): 'adopted' | 'test' =>
    this.adopted === null || (this.looked.shows === 'test' && this.testCurve !== null) ? 'test' : 'adopted',
  );
  readonly curve = $derived.by((): GaugeCurve | null =>
    this.answersWith === 'adopted' ? (this.adopted?.curve ?? null) : this.testCurve,
  );
  readonly scale = $derived.by((): GaugeScale | null =>
    this.answersWith === 'adopted' ? (this.adopted?.scale ?? null) : (this.test?.scale ?? null),
  );
  readonly resolution = $derived.by(() => (this.scale === null ? 1 / 8 : resolutionRatio(this.scale)));
  readonly readout = $derived.by((): FuelReadout | null =>
    this.curve === null ? null : fuelAtReading(this.curve, this.looked.reading, this.looked.precision),
  );
  /** The curves behind the band that answers; null where they were not kept or are on their way. */
  readonly refits = $derived.by((): KeptRefits | null =>
    this.answersWith === 'test'
      ? this.fit?.kind === 'curve'
        ? this.fit.refits
        : null
      : (this.adoptedRefits.answer ?? null),
  );
  /** The curves behind the adopted one's band; null where they were not kept. */
  readonly adoptedRefits: Query<OutputOf<'calibration.refits'>>;
  /** The adopted curve that is laid under the one that answers, faint and named with its day. */
  readonly overlay = $derived.by((): CalibrationRecord | null => {
    const found = this.calibrations.answer?.find(({ id }) => id === this.looked.overlayId) ?? null;
    return this.answersWith === 'adopted' && found?.id === this.adopted?.id ? null : found;
  });
  readonly #overlayRefits: Query<OutputOf<'calibration.refits'>>;
  /** undefined while they are on their way, null where they were not kept. */
  readonly overlayRefits = $derived.by((): KeptRefits | null | undefined => this.#overlayRefits.answer);
  readonly fuelFlowLPerH = $derived.by(
    (): number | null =>
      this.looked.fuelFlowLPerH ?? this.aircraft.answer?.aircraft.performance.fuelFlowLPerH ?? null,
  );
  readonly reserveS = $derived.by((): number => {
    const performance = this.aircraft.answer?.aircraft.performance;
    const ownS = 60 * ((performance?.legalReserveMin ?? 0) + (performance?.ownReserveMin ?? 0));
    return this.looked.reserveS ?? ownS;
  });
  /** Every reading of the tests that make the curve, where it lies. */
  readonly placed = $derived.by((): readonly PlacedPour[] => {
    const { pooled, tank } = this;
    return pooled === null || tank === null || this.fit?.kind === 'refused' ? [] : placedPours(pooled, tank);
  });
  /** The point in hand, where it is a reading between the stops of the test in hand. */
  readonly pointInHand = $derived.by((): PlacedPour | null => {
    const found = this.placed.find(({ pourId }) => pourId === this.looked.pourId);
    return found?.testId === this.test?.id && found?.reading.at === 'scale' ? (found ?? null) : null;
  });
  readonly rows = $derived.by((): ReadonlyMap<string, RowFigures> => this.#rows());

  constructor(app: App) {
    this.app = app;
    this.looked = app.kept('fuel', () => new Looked());
    this.aircraft = query(
      app,
      'aircraft.get',
      () => (app.aeroplaneId === null ? null : { id: app.aeroplaneId }),
      ['aircraft'],
    );
    const ofTank = () => (this.tank === null ? null : { tankId: this.tank.id });
    this.tests = query(app, 'fillTest.list', ofTank, areasOfTests);
    this.calibrations = query(app, 'calibration.list', ofTank, ['fuel', 'aircraft']);
    this.adoptedRefits = query(
      app,
      'calibration.refits',
      () => (this.adopted === null ? null : { id: this.adopted.id }),
      [],
    );
    this.#overlayRefits = query(
      app,
      'calibration.refits',
      () => (this.overlay === null ? null : { id: this.overlay.id }),
      [],
    );
    this.standing = query(
      app,
      'calibration.standing',
      () => (app.aeroplaneId === null ? null : { aircraftId: app.aeroplaneId }),
      ['fuel', 'aircraft'],
    );
    this.containers = query(app, 'container.list', () => ({ withRemoved: true }), ['fuel']);
    this.keeper = new TestKeeper(
      app,
      () => {
        // While another tank's tests are on their way, the last answer belongs to the wrong tank.
        const tests = (this.tests.answer ?? []).filter(({ tankId }) => tankId === this.tank?.id);
        return tests.find(({ id }) => id === this.looked.testId) ?? tests[0] ?? null;
      },
      (now, next) => {
        // Notes and ticks leave the curve alone.
        const isSame = (['runs', 'pins', 'scale', 'smoothness'] as const).every(
          (key) => now[key] === next[key],
        );
        if (isSame) return;
        this.#before = this.testCurve === null ? null : { testId: now.id, curve: this.testCurve };
        this.looked.shows = 'test';
      },
    );
    // Whenever the tests are asked anew, and when they are there.
    $effect(() => {
      app.touched.sum(areasOfTests);
      this.keeper.asks();
    });
    $effect(() => {
      if (this.tests.isCurrent) this.keeper.catchUp();
    });
    $effect(() => this.fitter.start());
    $effect(() => {
      if (this.#checked?.kind === 'toFit') this.fitter.ask(this.#checked.job);
    });
  }

  #check():
    Exclude<TestFit, { kind: 'curve' | 'fitting' }> | { kind: 'toFit'; job: FitJob; rows: FitRows } | null {
    const { pooled, tank } = this;
    const containers = this.containers.answer;
    if (pooled === null || tank === null || containers === undefined) return null;
    try {
      const rows = fitRows(fillDataOf(pooled, containers, tank));
      const { distinctCount } = rows;
      if (distinctCount < LEAST_DISTINCT_READINGS)
        return { kind: 'tooFewReadings', distinctCount, neededCount: LEAST_DISTINCT_READINGS };
      const { capacityL, unusableL } = tank;
      return { kind: 'toFit', rows, job: { tests: pooled, containers, tank: { capacityL, unusableL } } };
    } catch (error) {
      return { kind: 'refused', sentence: sentenceOf(error) };
    }
  }

  #rows(): ReadonlyMap<string, RowFigures> {
    const { test, tank } = this;
    // A sum that cannot be made is told once, by the fit's own sentence.
    if (test === null || tank === null || this.#checked?.kind === 'refused') return noRows;
    return rowsOf(test, tank, this.testCurve, this.app.units.preferences);
  }
}
