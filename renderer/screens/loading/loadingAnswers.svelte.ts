import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import type { Units } from '../../app/units.svelte.ts';
import { NewestJob } from '../../app/newestJob.ts';
import type { AnswersJob, AnswersReply, SaidAnswers } from './answers-job.ts';

/** A hand that pauses this long is let have the answers; a drag never waits for them. */
const restMs = 200;

/** A worker that answers questions asked backwards; ends with the component that makes it. */
export function answersWorker(
  onReply: (reply: AnswersReply) => void,
  onFailed: () => void,
): NewestJob<AnswersJob, AnswersReply> {
  // The build finds the worker by this very form; the address is never changed.
  // eslint-disable-next-line svelte/prefer-svelte-reactivity
  const worker = new Worker(new URL('./answers-worker.ts', import.meta.url), { type: 'module' });
  return new NewestJob<AnswersJob, AnswersReply>(worker, onReply, onFailed);
}

/** What brings a loading inside, or what it still has room for: worked out beside the window once the figures have rested. */
export class LoadingAnswers {
  #said = $state.raw<{ of: LoadingInputs; said: SaidAnswers | null } | null>(null);
  #failed = $state.raw(false);
  readonly #inputs: () => LoadingInputs | null;

  /** To be made while a component is set up. */
  constructor(inputs: () => LoadingInputs | null, units: Units) {
    this.#inputs = inputs;
    const asked: { number: number; of: LoadingInputs | null } = { number: 0, of: null };
    let work: NewestJob<AnswersJob, AnswersReply> | null = null;
    $effect(() => {
      const now = inputs();
      const { mass, arm, volume } = units.preferences;
      if (now === null) return;
      const timer = setTimeout(() => {
        work ??= answersWorker(
          (reply) => {
            if (reply.about !== 'loading' || reply.number !== asked.number || asked.of === null) return;
            this.#failed = false;
            this.#said = { of: asked.of, said: reply.said };
          },
          () => (this.#failed = true),
        );
        asked.number += 1;
        asked.of = now;
        const job = { number: asked.number, inputs: now, units: { mass, arm, volume } };
        work.ask({ ...$state.snapshot(job), about: 'loading' } as AnswersJob);
      }, restMs);
      return () => {
        clearTimeout(timer);
      };
    });
    $effect(() => () => work?.end());
  }

  /** null while they are on their way, and where there are none to be had. */
  get said(): SaidAnswers | null {
    return this.isCurrent ? (this.#said?.said ?? null) : null;
  }

  /** Whether the answers belong to the figures on the sheet. */
  get isCurrent(): boolean {
    return this.#said !== null && this.#said.of === this.#inputs();
  }

  get hasFailed(): boolean {
    return this.#failed;
  }
}
