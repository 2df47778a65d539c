import type { ReviewCell } from '../../../../shared-calc/wording/review-cell.ts';
import type { ReviewJob, ReviewReply } from './review-job.ts';

type Question = Omit<ReviewJob, 'number'>;

/** Every cell of a review table and its odds, worked out beside the window; a newer question stops an older one. */
export class ReviewWork {
  #said = $state.raw<{ of: string; cells: readonly (readonly ReviewCell[])[] } | null>(null);
  #odds = $state.raw<Readonly<Record<string, string>>>({});
  #isDone = $state.raw(false);
  #hasFailed = $state.raw(false);
  readonly #question: string = $derived.by(() => JSON.stringify(this.#ask()));
  readonly #ask: () => Question | null;

  /** To be made while a component is set up. */
  constructor(ask: () => Question | null) {
    this.#ask = ask;
    let worker: Worker | null = null;
    let asked = { number: 0, of: '' };
    const hear = (reply: ReviewReply) => {
      if (reply.number !== asked.number) return;
      if ('cells' in reply) {
        this.#said = { of: asked.of, cells: reply.cells };
        this.#odds = {};
        this.#isDone = false;
        this.#hasFailed = false;
        return;
      }
      this.#odds = {
        ...this.#odds,
        ...Object.fromEntries(reply.odds.map(({ row, column, text }) => [keyOf(row, column), text])),
      };
      this.#isDone = reply.isDone;
    };
    $effect(() => {
      const of = this.#question;
      const question = JSON.parse(of) as Question | null;
      if (question === null) return;
      worker ??= reviewWorker(hear, () => (this.#hasFailed = true));
      asked = { number: asked.number + 1, of };
      worker.postMessage({ ...question, number: asked.number } satisfies ReviewJob);
    });
    $effect(() => () => worker?.terminate());
  }

  /** The cells as they were worked out last: those of the question before stand until the new ones come. */
  get cells(): readonly (readonly ReviewCell[])[] | null {
    return this.#said?.cells ?? null;
  }

  /** Whether the cells belong to the table as it stands. */
  get isCurrent(): boolean {
    return this.#said !== null && this.#said.of === this.#question;
  }

  /** "994 times in 1 000"; null while it follows and where there is nothing to say. */
  oddsOf(row: number, column: number): string | null {
    return this.isCurrent ? (this.#odds[keyOf(row, column)] ?? null) : null;
  }

  get areOddsDone(): boolean {
    return this.isCurrent && this.#isDone;
  }

  get hasFailed(): boolean {
    return this.#hasFailed;
  }
}

function keyOf(row: number, column: number): string {
  return `${String(row)} ${String(column)}`;
}

function reviewWorker(onReply: (reply: ReviewReply) => void, onFailed: () => void): Worker {
  // The build finds the worker by this very form; the address is never changed.
  const worker = new Worker(new URL('./review-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<ReviewReply>) => {
    onReply(data);
  });
  worker.addEventListener('error', onFailed);
  return worker;
}
