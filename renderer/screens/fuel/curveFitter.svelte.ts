import { UNKNOWN_CONTAINER } from '../../../shared-calc/fuel/fit/calibrate.ts';
import { NewestJob } from '../../app/newestJob.ts';
import type { FitJob, FitReply, FittedTest, NumberedJob } from './fit-job.ts';

/** Fits a fill test beside the window: one at a time, always the newest; what came between is skipped. */
export class CurveFitter {
  #fitted = $state.raw<FittedTest | null>(null);
  #failed = $state.raw(false);
  /** The job that the last reply answers. */
  #answered = $state.raw<FitJob | null>(null);
  #work: NewestJob<NumberedJob, FitReply> | null = null;
  #last: NumberedJob = { number: 0, job: WARMING };
  /** Asked before the worker was there. */
  #first: FitJob | null = null;

  /** The last fit that came back; while the next one is on its way it may be a few figures old. */
  get fitted(): FittedTest | null {
    return this.#fitted;
  }

  /** Whether the last fit that came back is of this very job. */
  isOf(job: FitJob): boolean {
    return this.#answered === job;
  }

  /** The fit could not be run at all. */
  get hasFailed(): boolean {
    return this.#failed;
  }

  /** Start the worker and let it compile on a small test, so that the first real one is quick. Gives its end. */
  start(): () => void {
    // The build finds the worker by this very form; the address is never changed.
    // eslint-disable-next-line svelte/prefer-svelte-reactivity
    const worker = new Worker(new URL('./fit-worker.ts', import.meta.url), { type: 'module' });
    const work = new NewestJob<NumberedJob, FitReply>(
      worker,
      ({ number, fitted }) => {
        this.#failed = false;
        if (fitted === null || fitted.testId === WARMING.tests[0].id) return;
        this.#fitted = fitted;
        this.#answered = number === this.#last.number ? this.#last.job : null;
      },
      () => {
        this.#failed = true;
      },
    );
    this.#work = work;
    work.ask(this.#numbered(this.#first ?? WARMING));
    this.#first = null;
    return () => {
      work.end();
      this.#work = null;
    };
  }

  ask(job: FitJob): void {
    if (this.#work === null) this.#first = job;
    else this.#work.ask(this.#numbered(job));
  }

  #numbered(job: FitJob): NumberedJob {
    this.#last = { number: this.#last.number + 1, job };
    return this.#last;
  }
}

/** Four pours into an invented tank. */
const WARMING: FitJob = {
  tank: { capacityL: 40, unusableL: 0 },
  containers: [
    {
      id: 'can',
      name: 'Can',
      nominalL: 10,
      how: 'marked',
      scaleSdRatio: UNKNOWN_CONTAINER.scaleSdRatio,
      pourSdL: 0.1,
      weighed: null,
    },
  ],
  tests: [
    {
      id: 'warming',
      tankId: 'none',
      testedOn: '2026-01-01',
      attitude: 'ground',
      power: 'battery',
      supplyV: null,
      feeds: null,
      fuelKind: '',
      fuelTemperatureC: null,
      scale: { kind: 'fractions', denominator: 4 },
      precautions: [],
      note: '',
      runs: [
        {
          id: 'run',
          direction: 'filling',
          start: { from: 'engineFeed' },
          startSdL: null,
          containerId: 'can',
          endsAt: null,
          pours: [1, 2, 3].map((quarter) => ({
            id: String(quarter),
            volumeL: 10,
            reading: { at: 'scale', positionRatio: quarter / 4 },
            asideReason: null,
            atEpochS: 0,
            written: null,
          })),
        },
      ],
      pins: [],
      smoothness: null,
    },
  ],
};
