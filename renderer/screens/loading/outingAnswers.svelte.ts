import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import type { Outing } from '../../../shared-calc/loading/backwards/companies.ts';
import type { NewestJob } from '../../app/newestJob.ts';
import type { Units } from '../../app/units.svelte.ts';
import type { AnswersJob, AnswersReply } from './answers-job.ts';
import { answersWorker } from './loadingAnswers.svelte.ts';

export type SaidCompanies = Extract<AnswersReply, { about: 'outing' }>['companies'];

export interface OutingQuestion {
  inputs: LoadingInputs;
  outing: Outing;
  names: Record<string, string>;
}

/** What each choice of passengers leaves room for, worked out beside the window. */
export class OutingAnswers {
  #said = $state.raw<{ of: string; companies: SaidCompanies } | null>(null);
  #failed = $state.raw(false);
  readonly #question = $derived.by((): string => JSON.stringify(this.#ask()));
  readonly #ask: () => OutingQuestion | null;

  /** To be made while a component is set up. */
  constructor(ask: () => OutingQuestion | null, units: Units) {
    this.#ask = ask;
    let work: NewestJob<AnswersJob, AnswersReply> | null = null;
    const asked: { number: number; of: string } = { number: 0, of: '' };
    $effect(() => {
      const of = this.#question;
      const question = JSON.parse(of) as OutingQuestion | null;
      if (question === null) return;
      const { mass, arm, volume } = units.preferences;
      work ??= answersWorker(
        (reply) => {
          if (reply.about !== 'outing' || reply.number !== asked.number) return;
          this.#failed = false;
          this.#said = { of: asked.of, companies: reply.companies };
        },
        () => (this.#failed = true),
      );
      asked.number += 1;
      asked.of = of;
      work.ask({ number: asked.number, about: 'outing', ...question, units: { mass, arm, volume } });
    });
    $effect(() => () => work?.end());
  }

  /** Whether the rows belong to the question as it stands. */
  get isCurrent(): boolean {
    return this.#said !== null && this.#said.of === this.#question;
  }

  get companies(): SaidCompanies {
    return this.isCurrent ? (this.#said?.companies ?? null) : null;
  }

  get hasFailed(): boolean {
    return this.#failed;
  }
}
