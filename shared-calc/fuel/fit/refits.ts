import type { FitRows } from './fill-data.ts';
import type { NewtonFit } from './newton.ts';
import { defaultCentre, straightState, type Centre, type FitState, type Setting } from './newton.ts';
import { CURVE_UNKNOWNS, fillGrid, GRID_CELLS, KNOT_INTERVALS } from './slope-curve.ts';
import { seededNormals, type NormalDraws } from '../../numeric/seeded-normals.ts';

/** Smoothness that is tried: standard deviation of the slope's logarithm over the whole sweep. */
export const SMOOTHNESS_GRID = [0.05, 0.15, 0.35, 0.7, 1.3, 2.3, 4, 7] as const;
/**
 * Sticking that is tried, as multiples of what is expected, with the prior's weight: the three-point rule for a
 * logarithm that is normal with a standard deviation of 0.5 (Abramowitz and Stegun 25.4.46, Gauss-Hermite).
 */
const STICKING_GRID = [
  { factor: Math.exp(-0.5 * Math.sqrt(3)), weight: 1 / 6 },
  { factor: 1, weight: 2 / 3 },
  { factor: Math.exp(0.5 * Math.sqrt(3)), weight: 1 / 6 },
] as const;
const MODE_STEPS = 14;
const REFIT_STEPS = 5;
/** A mode with less of the posterior than this would be drawn less than once in many fits. */
const NEGLIGIBLE = 1e-4;

/** The best curve at one smoothness, and how well the data support that smoothness. */
export interface WeightedMode {
  readonly setting: Setting;
  readonly state: FitState;
  /** Share of the posterior, summing to 1 over the grid. */
  readonly weightRatio: number;
}

/** Many curves that the data allow: each a grid of volumes, with the errors that went with it. */
export interface Refits {
  readonly count: number;
  /** count x (GRID_CELLS + 1) usable litres on equal positions. */
  readonly volumesL: Float64Array;
  /** count x errorCount: start, container scales and pours in standard deviations. */
  readonly errors: Float64Array;
}

/**
 * Modes over the smoothness grid with their Laplace weights. The prior is flat in sigma itself (the + ln sigma on a
 * logarithmic grid): flat in ln sigma is too smooth and costs coverage. A smoothness that a person fixed stands alone.
 * @param near modes of rows that differ a little, as while a point is dragged: only their settings are tried, each from
 *   its mode instead of from a straight gauge
 * @source L. Tierney, J. B. Kadane, Accurate approximations for posterior moments and marginal densities, 1986
 */
export function weightedModes(fit: NewtonFit, near: readonly WeightedMode[] = []): WeightedMode[] {
  const { rows } = fit;
  const centre = defaultCentre(rows.capacityL);
  const scaleCount = rows.kinds.filter((kind) => kind === 'scale').length;
  const found = startsOf(rows, near).map(({ setting, state, priorRatio }) => {
    const { sigma } = setting;
    const objective = fit.run(state, rows.nominalL, setting, centre, MODE_STEPS);
    const determinant = fit.logDeterminant(state, rows.nominalL, setting, centre);
    // A reading's likelihood is that of a position: in litres the slope cancels, the position's spread stays.
    const spread = Math.log(rows.gauge.resolutionRatio ** 2 / 12 + setting.stickingSdRatio ** 2);
    const score =
      -objective -
      KNOT_INTERVALS * Math.log(sigma) -
      determinant / 2 -
      (scaleCount * spread) / 2 +
      Math.log(sigma) +
      Math.log(priorRatio);
    return { setting, state, score };
  });
  const best = Math.max(...found.map((mode) => mode.score));
  const total = found.reduce((sum, mode) => sum + Math.exp(mode.score - best), 0);
  return found
    .map(({ setting, state, score }) => ({ setting, state, weightRatio: Math.exp(score - best) / total }))
    .filter((mode) => mode.weightRatio > NEGLIGIBLE);
}

/** Every setting that is tried, with the state from which its mode is sought and its share of the prior. */
function startsOf(
  rows: FitRows,
  near: readonly WeightedMode[],
): { setting: Setting; state: FitState; priorRatio: number }[] {
  const tried = rows.smoothness === null ? SMOOTHNESS_GRID : [rows.smoothness];
  const all = tried.flatMap((sigma) =>
    STICKING_GRID.map(({ factor, weight }) => ({
      setting: { sigma, stickingSdRatio: rows.gauge.stickingSdRatio * factor },
      priorRatio: weight,
    })),
  );
  const nearest = ({ sigma, stickingSdRatio }: Setting) =>
    near.find(({ setting }) => setting.sigma === sigma && setting.stickingSdRatio === stickingSdRatio);
  const known = all.flatMap((each) => {
    const from = nearest(each.setting);
    if (from === undefined) return [];
    const state = straightState(rows);
    state.curve.set(from.state.curve);
    // One row more or fewer has other errors; they follow from the curve in the first step.
    if (from.state.errors.length === state.errors.length) state.errors.set(from.state.errors);
    return [{ ...each, state }];
  });
  return known.length > 0 ? known : all.map((each) => ({ ...each, state: straightState(rows) }));
}

/**
 * Refit with everything that is uncertain drawn anew: the smoothness by its weight, the data's errors, and the
 * centre of the penalty (without the last the curves know the noise but not the bias of smoothing, and the band
 * is too narrow).
 * @param draws      what is drawn for this fit alone
 * @param pouredSeed of the errors of starts, containers and pours, which a second fit to the same pours shares
 * @source J. M. Bardsley and others, Randomize-then-optimize, 2014 (the form of the draw)
 */
export function refitMany(
  fit: NewtonFit,
  modes: readonly WeightedMode[],
  count: number,
  draws: NormalDraws,
  pouredSeed: number,
): Refits {
  const { rows } = fit;
  const width = GRID_CELLS + 1;
  const volumesL = new Float64Array(count * width);
  const errors = new Float64Array(count * rows.errorCount);
  const slopes = new Float64Array(GRID_CELLS);
  const prepared = modes.map((mode) => ({ mode, ...modeErrors(fit, mode) }));
  const state: FitState = {
    curve: new Float64Array(CURVE_UNKNOWNS),
    errors: new Float64Array(rows.errorCount + 1),
  };
  const drawn = new Float64Array(rows.errorCount + 1);
  const nominalL = new Float64Array(rows.rowCount);
  for (let index = 0; index < count; index++) {
    const { mode, sdL, lagL } = pick(prepared, draws.uniform());
    drawErrors(rows, drawn, pouredSeed + index * ERROR_KINDS);
    drawn[rows.errorCount] = draws.normal();
    redraw(rows, drawn, sdL, lagL, draws, nominalL);
    state.curve.set(mode.state.curve);
    state.errors.set(mode.state.errors);
    fit.run(
      state,
      nominalL,
      mode.setting,
      redrawnCentre(rows.capacityL, mode.setting.sigma, draws),
      REFIT_STEPS,
    );
    fillGrid(state.curve, volumesL.subarray(index * width, (index + 1) * width), slopes);
    for (let e = 0; e < rows.errorCount; e++)
      errors[index * rows.errorCount + e] = (drawn[e] as number) + (state.errors[e] as number);
  }
  return { count, volumesL, errors };
}

/** Starts, scales and pours are counted apart, so that one more of a kind at its end moves none of the others. */
const ERROR_KINDS = 3;

/** The errors of starts, containers and pours, the same for every fit with the same seed. */
function drawErrors({ errorCount, scaleColumns }: FitRows, drawn: Float64Array, seed: number): void {
  const firstScale = scaleColumns[0] ?? errorCount;
  const firstPour = firstScale + scaleColumns.length;
  const ends = [firstScale, firstPour, errorCount];
  ends.forEach((end, kind) => {
    const draws = seededNormals(seed + kind);
    for (let e = kind === 0 ? 0 : (ends[kind - 1] ?? 0); e < end; e++) drawn[e] = draws.normal();
  });
}

/** Rows' reading errors at a mode: one step's worth of linearising, kept for every draw of that mode. */
function modeErrors(fit: NewtonFit, mode: WeightedMode): { sdL: Float64Array; lagL: Float64Array } {
  const state = { curve: mode.state.curve.slice(), errors: mode.state.errors.slice() };
  fit.run(state, fit.rows.nominalL, mode.setting, defaultCentre(fit.rows.capacityL), 1);
  return fit.rowErrors();
}

function pick<T extends { mode: WeightedMode }>(modes: readonly T[], uniform: number): T {
  let sum = 0;
  for (const entry of modes) {
    sum += entry.mode.weightRatio;
    if (uniform < sum) return entry;
  }
  return modes[modes.length - 1] as T;
}

/** Perturb around the data, not around the fit: the fit's own bias must not be drawn into every curve. */
function redraw(
  rows: FitRows,
  drawn: Float64Array,
  sdL: Float64Array,
  lagL: Float64Array,
  draws: NormalDraws,
  nominalL: Float64Array,
): void {
  const { errorCount: k } = rows;
  for (let i = 0; i < rows.rowCount; i++) {
    let sum = (rows.nominalL[i] as number) + (lagL[i] as number) * (drawn[k] as number);
    for (let e = 0; e < k; e++) sum += (rows.loadingsL[i * k + e] as number) * (drawn[e] as number);
    nominalL[i] = sum + (sdL[i] as number) * draws.normal();
  }
}

function redrawnCentre(capacityL: number, sigma: number, draws: NormalDraws): Centre {
  const centre = defaultCentre(capacityL);
  const increments = Float64Array.from(
    { length: KNOT_INTERVALS },
    () => (draws.normal() * sigma) / Math.sqrt(KNOT_INTERVALS),
  );
  return {
    startL: centre.startL + 0.25 * capacityL * draws.normal(),
    level: centre.level + 0.7 * draws.normal(),
    increments,
  };
}
