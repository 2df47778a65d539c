import { untrack } from 'svelte';
import type { Area } from '../../main/requests/define.ts';
import type { InputOf, OutputOf, RequestName } from '../../main/requests/table.ts';
import type { App } from './app.svelte.ts';
import { Refused, sentenceOf } from './client.ts';

/** A question that takes a while: its progress stands among the notices, where it can be cancelled. */
export interface LongQuery<O> {
  /** The answer to the question as it stands now. */
  readonly answer: O | undefined;
  readonly refusal: string | null;
  /** A person cancelled it: there is no answer until it is asked again. */
  readonly isStopped: boolean;
  askAgain(): void;
}

/**
 * Ask while the calling component lives, as `query` does, but as long work: a question that is changed or no longer looked
 * at is cancelled, so that nothing is worked out for nobody.
 * @param named what is being done, for the line above the progress
 */
export function longQuery<N extends RequestName>(
  app: App,
  name: N,
  input: () => InputOf<N> | null,
  areas: readonly Area[],
  named: string,
): LongQuery<OutputOf<N>> {
  let answer = $state.raw<OutputOf<N>>();
  let refusal = $state<string | null>(null);
  let isStopped = $state(false);
  let times = $state(0);
  const question = $derived(JSON.stringify(input()));

  $effect(() => {
    app.touched.sum(areas);
    void times;
    const put = JSON.parse(question) as InputOf<N> | null;
    const call = crypto.randomUUID();
    let isLeft = false;
    untrack(() => {
      answer = undefined;
      refusal = null;
      isStopped = false;
      if (put === null) return;
      app.jobs.run(name, put, named, call).then(
        (output) => {
          if (!isLeft) answer = output;
        },
        (error: unknown) => {
          if (isLeft) return;
          isStopped = error instanceof Refused && error.problem.code === 'cancelled';
          refusal = isStopped ? null : sentenceOf(error);
        },
      );
    });
    return () => {
      isLeft = true;
      untrack(() => {
        app.jobs.cancel(call);
      });
    };
  });

  return {
    get answer() {
      return answer;
    },
    get refusal() {
      return refusal;
    },
    get isStopped() {
      return isStopped;
    },
    askAgain() {
      times += 1;
    },
  };
}
