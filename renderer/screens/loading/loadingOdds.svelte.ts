import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import {
  dimensionsOf,
  insideOdds,
  normalDraws,
  type NormalDraws,
} from '../../../shared-calc/loading/odds.ts';
import { SOBOL_MOST_DIMENSIONS } from '../../../shared-calc/numeric/sobol.ts';
import { isAsked, oddsSentence, tooManyDoubtsSentence } from '../../../shared-calc/wording/loading-odds.ts';
import type { LoadingReview } from '../../../shared-calc/wording/loading-review.ts';
import { oddsDraws } from './oddsDraws.ts';

/** A hand that pauses this long is let have the answer; a drag never waits for it. */
const restMs = 150;

/**
 * The sentence on how probable it is that the flight stays inside. It is worked out once the figures have rested, never
 * within a drag's frame, and is never that of other figures: until it is there, that is said.
 */
export class LoadingOdds {
  #said = $state.raw<{ of: LoadingReview; sentence: string | null } | null>(null);
  readonly #review: () => LoadingReview | null;
  /** Made once for so many dimensions; nothing on the screen hangs on them. */
  #draws: NormalDraws | null = null;

  /** @param review, inputs as the screen shows them now; to be made while a component is set up */
  constructor(review: () => LoadingReview | null, inputs: () => LoadingInputs | null) {
    this.#review = review;
    $effect(() => {
      const [now, from] = [review(), inputs()];
      if (now === null || from === null) return;
      const timer = setTimeout(() => {
        this.#said = { of: now, sentence: this.#sentenceOf(now, from) };
      }, restMs);
      return () => {
        clearTimeout(timer);
      };
    });
  }

  /** null where there is nothing to say. */
  get sentence(): string | null {
    const review = this.#review();
    if (review === null || this.#said === null) return null;
    if (this.#said.of === review) return this.#said.sentence;
    return this.#said.sentence === null || !isAsked(review) ? null : 'How sure that is follows.';
  }

  #sentenceOf(review: LoadingReview, inputs: LoadingInputs): string | null {
    return sentenceBy(review, inputs, (dimensions) => {
      if (this.#draws?.dimensions !== dimensions)
        this.#draws = normalDraws(dimensions, oddsDraws.count, oddsDraws.seed);
      return this.#draws;
    });
  }
}

/** The same sentence at once, for paper: it takes a frame or two. */
export function oddsSentenceNow(review: LoadingReview, inputs: LoadingInputs): string | null {
  return sentenceBy(review, inputs, (dimensions) => normalDraws(dimensions, oddsDraws.count, oddsDraws.seed));
}

function sentenceBy(
  review: LoadingReview,
  inputs: LoadingInputs,
  draws: (dimensions: number) => NormalDraws,
): string | null {
  if (review.result === null || !isAsked(review)) return null;
  const { model } = review.result;
  const dimensions = dimensionsOf(model);
  if (dimensions > SOBOL_MOST_DIMENSIONS) return tooManyDoubtsSentence(dimensions - 2);
  return oddsSentence(review, insideOdds(model, draws(dimensions)), inputs);
}
