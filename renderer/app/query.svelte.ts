import { untrack } from 'svelte';
import type { Area } from '../../main/requests/define.ts';
import type { InputOf, OutputOf, RequestName } from '../../main/requests/table.ts';
import type { App } from './app.svelte.ts';
import { sentenceOf } from './client.ts';

/** A question to the library that is asked again whenever what it rests on changes. */
export interface Query<O> {
  /** The last answer; kept while a new one is on its way, gone when the last asking was refused. */
  readonly answer: O | undefined;
  /** Whether the answer belongs to the question as it stands now. */
  readonly isCurrent: boolean;
  /** Why there is no answer, as a sentence; null while all is well. */
  readonly refusal: string | null;
}

/**
 * Ask while the calling component lives.
 * @param input read inside an effect: name the state that it depends on; null asks nothing
 * @param areas asked again when one of them changes
 */
export function query<N extends RequestName>(
  app: App,
  name: N,
  input: () => InputOf<N> | null,
  areas: readonly Area[],
): Query<OutputOf<N>> {
  let answer = $state.raw<OutputOf<N>>();
  let refusal = $state<string | null>(null);
  let isCurrent = $state(false);
  let asked = 0;
  // Compared as text, so that a change of state that leaves the question the same asks nothing.
  const question = $derived(JSON.stringify(input()));

  $effect(() => {
    app.touched.sum(areas);
    const put = JSON.parse(question) as InputOf<N> | null;
    asked += 1;
    const mine = asked;
    untrack(() => {
      isCurrent = false;
      if (put === null) {
        answer = undefined;
        refusal = null;
        return;
      }
      app.client.ask(name, put).then(
        (output) => {
          if (mine !== asked) return;
          answer = output;
          refusal = null;
          isCurrent = true;
        },
        (error: unknown) => {
          if (mine !== asked) return;
          answer = undefined;
          refusal = sentenceOf(error);
          isCurrent = true;
        },
      );
    });
  });

  return {
    get answer() {
      return answer;
    },
    get isCurrent() {
      return isCurrent;
    },
    get refusal() {
      return refusal;
    },
  };
}
