import { fitRows, type FillData } from './fill-data.ts';
import { NewtonFit } from './newton.ts';
import { SMOOTHNESS_GRID, weightedModes, type WeightedMode } from './refits.ts';

/**
 * How far the data want the curve to bend: for each smoothness of the grid, stiffest first, its share of the posterior.
 * What a person fixed is left out of account, so that the data's own choice can be shown beside it.
 * @param modes of a fit in which the smoothness was not fixed, to save fitting again
 * @throws RangeProblem as `fitRows`
 */
export function smoothnessShares(data: FillData, modes?: readonly WeightedMode[]): number[] {
  const found = modes ?? weightedModes(new NewtonFit(fitRows({ ...data, smoothness: null })));
  return SMOOTHNESS_GRID.map((sigma) =>
    found.reduce((sum, { setting, weightRatio }) => sum + (setting.sigma === sigma ? weightRatio : 0), 0),
  );
}
