import { seededNormals } from '../../numeric/seeded-normals.ts';
import { requireRange } from '../../problem.ts';
import { fitRows, type FillData, type FitRows } from './fill-data.ts';
import { NewtonFit } from './newton.ts';
import { refitMany, weightedModes, type Refits, type WeightedMode } from './refits.ts';

/** Fewer different readings between the stops than this draw no curve. */
export const LEAST_DISTINCT_READINGS = 3;
/** With fewer rows than this the band rests mostly on what was assumed before any reading, and says so. */
export const FEW_ROWS = 7;
export const REFIT_COUNT = 400;
/** One seed for all, so that the band does not flicker while something is dragged. */
const SEED = 20_260_509;
/**
 * What was poured had the same errors for whatever was read beside it: gauge and stick draw those alike, and all else
 * apart.
 */
const POURED_SEED = 20_260_510;

export interface GaugeFit {
  readonly enough: true;
  readonly rows: FitRows;
  readonly modes: readonly WeightedMode[];
  readonly refits: Refits;
  /** The band rests mostly on the prior. */
  readonly fewRows: boolean;
}

/** Not an error: the readings so far, and what is missing. */
export interface TooFewReadings {
  readonly enough: false;
  readonly distinctCount: number;
  readonly neededCount: number;
}

/**
 * Fit a gauge: usable litres over the needle's position, with 400 curves that the readings allow.
 *
 * The curve's slope is an exponential, so it always rises; smoothness and sticking are averaged over what the data
 * support; each of the curves redraws the data's errors, the smoothness and the centre of its penalty. The truth is
 * held by the 5 to 95 % band at about nine readings in ten over many simulated gauges (the tests measure it); for
 * one gauge it may lie wholly on one side. The flight manual, the dipstick and the placards decide.
 * @param seed of what is drawn for this fit alone; another for a second scale that was read beside the first
 * @returns the fit, or how many different readings there are and how many are needed
 * @throws RangeProblem for a volume, container, reading or start outside its range, or the seed
 */
export function fitGauge(
  data: FillData,
  refitCount = REFIT_COUNT,
  seed: number = SEED,
): GaugeFit | TooFewReadings {
  requireRange('refitCount', refitCount, 20, 10_000, '');
  const rows = fitRows(data);
  if (rows.distinctCount < LEAST_DISTINCT_READINGS)
    return { enough: false, distinctCount: rows.distinctCount, neededCount: LEAST_DISTINCT_READINGS };
  const fit = new NewtonFit(rows);
  const modes = weightedModes(fit);
  const refits = refitMany(fit, modes, refitCount, seededNormals(seed), POURED_SEED);
  return { enough: true, rows, modes, refits, fewRows: rows.rowCount < FEW_ROWS };
}
