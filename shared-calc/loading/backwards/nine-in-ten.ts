import { requireRange } from '../../problem.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import { SOBOL_MOST_DIMENSIONS } from '../../numeric/sobol.ts';
import { loadingModel } from '../model.ts';
import { dimensionsOf, insideOdds, type InsideOdds, type NormalDraws } from '../odds.ts';
import type { Asked } from './kept.ts';

/** So many places along a range are tried before the last stretch is halved. */
const PLACES = 12;
const HALVINGS = 8;
/** Standard errors by which a probability has to lie above what is asked. */
const SAFE_ERRORS = 2;

/**
 * Probability that a loading's flight keeps its limits of CG and mass; null where more is in doubt than draws can spread.
 * @param draws of any number of dimensions that suffices: makes them for the number asked, mostly from a store
 */
export function oddsOf(
  { aeroplane, loading }: Asked,
  draws: (dimensions: number) => NormalDraws,
): InsideOdds | null {
  const model = loadingModel(aeroplane, loading);
  const dimensions = dimensionsOf(model);
  return dimensions > SOBOL_MOST_DIMENSIONS ? null : insideOdds(model, draws(dimensions));
}

/**
 * The value in a range, nearest to one of its ends, with which the flight is inside with a given probability; null where
 * none of those tried is. Every answer was tried itself, so it holds; a nearer one may have been missed.
 * @param wantedProb above 0, below 1
 * @throws RangeProblem naming wantedProb; RangeProblem, InputProblem as loadingModel
 */
export function nearestSure(
  at: (x: number) => Asked,
  range: NumberRange,
  end: 'from' | 'to',
  wantedProb: number,
  draws: (dimensions: number) => NormalDraws,
): number | null {
  requireRange('wantedProb', wantedProb, 1e-6, 1 - 1e-6, '');
  const isSure = (x: number) => {
    const odds = oddsOf(at(x), draws);
    return odds !== null && odds.insideProb - SAFE_ERRORS * odds.errorProb >= wantedProb;
  };
  const start = range[end];
  const far = end === 'to' ? range.from : range.to;
  let doubtful = start;
  for (let i = 0; i <= PLACES; i++) {
    // Closer together where the end is near: that is where the answer mostly lies.
    let sure = start + (far - start) * (i / PLACES) ** 2;
    if (!isSure(sure)) {
      doubtful = sure;
      continue;
    }
    if (i === 0) return sure;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (sure + doubtful) / 2;
      if (isSure(middle)) sure = middle;
      else doubtful = middle;
    }
    return sure;
  }
  return null;
}
