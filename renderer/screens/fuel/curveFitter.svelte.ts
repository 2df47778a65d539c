import { UNKNOWN_CONTAINER } from '../../../shared-calc/fuel/fit/calibrate.ts';
import type { FitJob, FitReply, FittedTest } from './fit-job.ts';

/** Fits a fill test beside the window: one at a time, always the newest; what came between is skipped. */
export class CurveFitter {
  #fitted = $state.raw<FittedTest | null>(null);
  #failed = $state.raw(false);
  #worker: Worker | null = null;
  #isBusy = false;
  #next: FitJob | null = null;

  /** The last fit that came back; while the next one is on its way it may be a few figures old. */
  get fitted(): FittedTest | null {
    return this.#fitted;
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
    worker.addEventListener('message', ({ data }: MessageEvent<FitReply>) => {
      this.#failed = false;
      if (data !== null && data.testId !== WARMING.tests[0].id) this.#fitted = data;
      this.#isBusy = false;
      this.#send();
    });
    worker.addEventListener('error', () => {
      this.#failed = true;
      this.#isBusy = false;
      this.#send();
    });
    this.#worker = worker;
    this.#next ??= WARMING;
    this.#send();
    return () => {
      worker.terminate();
      this.#worker = null;
    };
  }

  ask(job: FitJob): void {
    this.#next = job;
    this.#send();
  }

  #send(): void {
    if (this.#isBusy || this.#next === null || this.#worker === null) return;
    this.#isBusy = true;
    this.#worker.postMessage(this.#next);
    this.#next = null;
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
