import { loadFigures, type LoadingInputs } from '../loading/case-of.ts';
import { hasMargin, isOfCg } from '../loading/limits.ts';
import type { InsideOdds } from '../loading/odds.ts';
import { SOBOL_MOST_DIMENSIONS } from '../numeric/sobol.ts';
import type { LimitMargin } from '../loading/assess.ts';
import { doubtShares, mostDoubtful, type DoubtShare } from '../loading/spread.ts';
import { figureText, NO_BREAK_SPACE } from '../units/figure-text.ts';
import type { LoadingReview } from './loading-review.ts';

/** Draws of which none left the limits leave a chance of about three in their number (the rule of three, 95 %). */
const RULE_OF_THREE = 3;
/** Standard errors by which a shown probability stays on the safe side: about 98 times in 100. */
const SAFE_ERRORS = 2;

/**
 * How probable it is that the whole flight stays inside, and by whose doubt it is not sure. It says nothing against the
 * verdict, which comes from the stated figures. Its doubt is that of the limit which decides the probability; that
 * limit is named where it is another than the one of least margin.
 *
 * The count in a thousand is rounded down, after twice the error of the draws is taken off. Nothing is said (null)
 * where no input is in doubt, where there is no verdict, and where the verdict is broken by what the draws do not ask: a
 * station, a group, left and right fuel, or fuel and reserve that do not last.
 * @param inputs from which the review came: how each mass is known
 * @source J. A. Hanley, A. Lippman-Hand, If nothing goes wrong, is everything all right?, JAMA 249, 1983 (rule of
 *         three; from memory)
 */
export function oddsSentence(review: LoadingReview, odds: InsideOdds, inputs: LoadingInputs): string | null {
  const { result } = review;
  if (result === null || !isAsked(review)) return null;
  const decides = mostDoubtful(result.model, result.margins);
  if (decides === null) return null;
  const shares = doubtShares(result.model, decides);
  const [first, second] = shares;
  if (first === undefined) return null;
  const named = (share: DoubtShare) => `${doubtName(share, inputs)} (${percent(share.share)})`;
  const doubt =
    second === undefined
      ? `all of the doubt is ${doubtName(first, inputs)}`
      : first.share + second.share > 0.5
        ? `most of the doubt is ${named(first)}, then ${named(second)}`
        : `the largest doubts are ${named(first)} and ${named(second)}`;
  const limit = decides === result.least ? '' : ` (most in doubt: ${limitName(decides)})`;
  return `The whole flight stays inside ${timesInThousand(odds)}${limit}; ${doubt}.`;
}

/**
 * Why there is no probability where more tanks are in doubt than draws can be spread over.
 * @param tankCount tanks whose contents are in doubt
 */
export function tooManyDoubtsSentence(tankCount: number): string {
  const most = SOBOL_MOST_DIMENSIONS - 2;
  return `How sure that is cannot be said: the fuel of ${String(tankCount)} tanks is in doubt, and at most ${String(most)} can be. The verdict takes the worst of each.`;
}

/** A limit that is not the one of the answer's least margin. */
function limitName({ limit }: LimitMargin): string {
  if (isOfCg(limit)) return `the ${limit.kind} limit`;
  return limit.kind === 'least' ? 'the least mass' : 'a maximum mass';
}

/** Whether a probability of keeping the limits of CG and mass answers the question that the verdict answers. */
export function isAsked({ result, reserve, verdict }: LoadingReview): boolean {
  if (result === null || verdict === 'not checked' || result.unchecked.length > 0) return false;
  if (result.fuelEndsS !== null || reserve?.kept === false) return false;
  return result.margins.every(
    ({ met, limit }) => met || (hasMargin(limit) && (isOfCg(limit) || 'phase' in limit)),
  );
}

/** "994 times in 1 000", "more than 999 times in 1 000", "at most 2 times in 1 000". */
export function timesInThousand({ insideProb, errorProb, drawCount }: InsideOdds): string {
  const thousand = figureText(1000, 0);
  const few = RULE_OF_THREE / drawCount;
  const leastProb = Math.min(insideProb - SAFE_ERRORS * errorProb, 1 - few);
  if (leastProb > 0.999) return `more than ${times(999)} in ${thousand}`;
  // A count that is whole but for its rounding is that count.
  const count = Math.floor(1000 * leastProb + 1e-9);
  if (count >= 1) return `${times(count)} in ${thousand}`;
  const mostProb = Math.max(insideProb + SAFE_ERRORS * errorProb, few);
  return `at most ${times(Math.ceil(1000 * mostProb - 1e-9))} in ${thousand}`;
}

function times(count: number): string {
  return count === 1 ? 'once' : `${String(count)}${NO_BREAK_SPACE}times`;
}

function percent(share: number): string {
  const rounded = Math.round(100 * share);
  return rounded === 0 ? `less than 1${NO_BREAK_SPACE}%` : `${String(rounded)}${NO_BREAK_SPACE}%`;
}

/** What is in doubt, by the greater part of its share: a weight or a place. */
function doubtName({ name, kind, share, armShare }: DoubtShare, inputs: LoadingInputs): string {
  const isPlace = armShare > share / 2;
  if (kind === 'empty') return isPlace ? 'the empty CG' : 'the empty weight';
  if (kind === 'density') return 'the density of the fuel';
  if (kind === 'fuel') return `the fuel in ${name}`;
  if (isPlace) return `the place of ${name}`;
  const known = inputs.loading.items
    .map((item) => loadFigures(item, inputs.people))
    .find((figures) => figures?.name === name)?.known;
  const weight = known === undefined || known === 'weighed' ? 'weight' : `${known} weight`;
  // One word is somebody's name; "Bag, tool roll" takes no possessive.
  return /\s/.test(name) ? `the ${weight} of ${name}` : `${name}\u2019s ${weight}`;
}
