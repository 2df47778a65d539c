import type { OutputOf } from '../../../main/requests/table.ts';
import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { fitGaugeCurve, type GaugeCurve, type GaugeCurveFit } from '../../../shared-calc/fuel/gauge-curve.ts';
import { resolutionRatio, type GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import {
  fuelTankOf,
  runsOfTest,
  type CalibrationRecord,
  type FillTestRecord,
} from '../../../shared-calc/fuel/records.ts';
import { fuelAtReading, type FuelReadout, type ReadingPrecision } from '../../../shared-calc/fuel/readout.ts';
import type { App } from '../../app/app.svelte.ts';
import { sentenceOf } from '../../app/client.ts';
import { query, type Query } from '../../app/query.svelte.ts';
import { rowsOf, type RowFigures } from './rowsOf.ts';
import { TestKeeper } from './testKeeper.svelte.ts';

export type Tank = OutputOf<'aircraft.get'>['aircraft']['tanks'][number];

/** Shared and never changed. */
const noRows: ReadonlyMap<string, RowFigures> = new Map();

/** What the person looks at on this screen; found again after a visit to another one. */
class Looked {
  tankId = $state<string | null>(null);
  testId = $state<string | null>(null);
  /** The curve that answers: the adopted one unless the person looks at the test's own. */
  shows = $state<'adopted' | 'test'>('adopted');
  precision = $state<ReadingPrecision>('nearestDivision');
  reading = $state.raw<GaugeReading>({ at: 'scale', positionRatio: 0.5 });
  wantedL = $state<number | null>(null);
}

/** Everything that the fuel screen shows, derived from the library and from what is looked at. */
export class FuelState {
  readonly app: App;
  readonly looked: Looked;
  readonly aircraft: Query<OutputOf<'aircraft.get'>>;
  readonly tests: Query<OutputOf<'fillTest.list'>>;
  readonly calibrations: Query<OutputOf<'calibration.list'>>;
  readonly containers: Query<OutputOf<'container.list'>>;
  readonly keeper: TestKeeper;

  readonly tanks = $derived.by((): Tank[] => this.aircraft.answer?.aircraft.tanks ?? []);
  readonly tank = $derived.by(
    (): Tank | null => this.tanks.find(({ id }) => id === this.looked.tankId) ?? this.tanks[0] ?? null,
  );
  readonly test = $derived.by((): FillTestRecord | null => this.keeper.test);
  readonly fit = $derived.by((): GaugeCurveFit | { kind: 'refused'; sentence: string } | null =>
    this.#fitted(),
  );
  readonly adopted = $derived.by((): CalibrationRecord | null => {
    // While another tank's curves are on their way, the last answer belongs to the wrong tank.
    const ofTank = this.calibrations.answer?.filter(({ tankId }) => tankId === this.tank?.id);
    return ofTank?.find(({ withdrawn }) => !withdrawn) ?? null;
  });
  readonly testCurve = $derived.by((): GaugeCurve | null =>
    this.fit?.kind === 'curve' ? this.fit.curve : null,
  );
  /** Whether the adopted curve is the very one that this test gives now. */
  readonly isAdopted = $derived.by(
    () => this.adopted !== null && JSON.stringify(this.adopted.curve) === JSON.stringify(this.testCurve),
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
    this.tests = query(app, 'fillTest.list', ofTank, ['fuel', 'aircraft']);
    this.calibrations = query(app, 'calibration.list', ofTank, ['fuel', 'aircraft']);
    this.containers = query(app, 'container.list', () => ({ withRemoved: true }), ['fuel']);
    this.keeper = new TestKeeper(app, () => {
      // While another tank's tests are on their way, the last answer belongs to the wrong tank.
      const tests = (this.tests.answer ?? []).filter(({ tankId }) => tankId === this.tank?.id);
      return tests.find(({ id }) => id === this.looked.testId) ?? tests[0] ?? null;
    });
    $effect(() => {
      if (this.tests.isCurrent) this.keeper.catchUp();
    });
  }

  #fitted(): GaugeCurveFit | { kind: 'refused'; sentence: string } | null {
    const { test, tank } = this;
    if (test === null || tank === null) return null;
    try {
      const runs = runsOfTest(test).map(({ run }) => run);
      return fitGaugeCurve(runs, fuelTankOf(tank), resolutionRatio(test.scale));
    } catch (error) {
      return { kind: 'refused', sentence: sentenceOf(error) };
    }
  }

  #rows(): ReadonlyMap<string, RowFigures> {
    const { test, tank } = this;
    // A sum that cannot be made is told once, by the fit's own sentence.
    if (test === null || tank === null || this.fit?.kind === 'refused') return noRows;
    return rowsOf(test, tank, this.testCurve, this.app.units.preferences);
  }
}
