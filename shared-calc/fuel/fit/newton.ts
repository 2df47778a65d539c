import type { FitRows } from './fill-data.ts';
import { logNormalTail } from './log-normal-tail.ts';
import {
  addGradient,
  CURVE_UNKNOWNS,
  fillGradientGrid,
  fillGrid,
  GRID_CELLS,
  KNOT_INTERVALS,
  volumeOnGridL,
} from './slope-curve.ts';

/** Where the penalty pulls: fixed for the mode, redrawn for each refit. */
export interface Centre {
  /** Volume at the empty stop, litres. */
  startL: number;
  /** Mean of w: logarithm of litres for the whole sweep. */
  level: number;
  /** Differences of w between neighbouring knots. */
  readonly increments: Float64Array;
}

/** A curve with its errors: what a fit finds. */
export interface FitState {
  /** a, then w at the knots. */
  readonly curve: Float64Array;
  /** The independent standard errors of the data (start, scales, pours), then the lag's. */
  readonly errors: Float64Array;
}

/** What is held fixed within one fit and averaged over between fits. */
export interface Setting {
  /** Smoothness: standard deviation of w over the whole sweep. */
  readonly sigma: number;
  /** Sticking: standard deviation of where the needle rests, as a part of its sweep. */
  readonly stickingSdRatio: number;
}

/** What the prior believes before any reading, as parts of the usable capacity C and of w. */
const START_SD_RATIO = 0.25;
const LEVEL_SD = 0.7;
/** f(0) below 0 or f(1) above C is possible only within the softness of a stop and of the stated capacity. */
const BOUND_SD_RATIO = 0.01;
/** A needle hardly moves over a dead zone; without a least slope its reading would count as exact. */
const LEAST_SLOPE_RATIO = 0.02;
/** One step may change no slope by more than a factor of e to this. */
const LARGEST_STEP = 1.5;
const P = CURVE_UNKNOWNS;
const W = KNOT_INTERVALS + 1;

export function defaultCentre(capacityL: number): Centre {
  return {
    startL: 0.05 * capacityL,
    level: Math.log(capacityL),
    increments: new Float64Array(KNOT_INTERVALS),
  };
}

/** A straight gauge: where every search for a mode begins. */
export function straightState(rows: FitRows): FitState {
  const curve = new Float64Array(P).fill(Math.log(rows.capacityL));
  curve[0] = 0.05 * rows.capacityL;
  return { curve, errors: new Float64Array(rows.errorCount + 1) };
}

/**
 * Penalised generalised least squares on one set of rows, a damped Newton step at a time. The errors of the data
 * are eliminated from each step (their covariance is the design's), and carried as their conditional mean, which
 * the one-sided rows need. Arrays are made once: a fit takes some two thousand steps.
 */
export class NewtonFit {
  readonly rows: FitRows;
  private readonly n: number;
  private readonly k: number;
  private readonly volumes = new Float64Array(GRID_CELLS + 1);
  private readonly slopes = new Float64Array(GRID_CELLS);
  private readonly gradient = new Float64Array((GRID_CELLS + 1) * W);
  private readonly mean: Float64Array;
  private readonly variance: Float64Array;
  private readonly slopeSd: Float64Array;
  private readonly lagL: Float64Array;
  private readonly target: Float64Array;
  private readonly rowVariance: Float64Array;
  private readonly design: Float64Array;
  private readonly covariance: Float64Array;
  private readonly residual: Float64Array;
  private readonly information = new Float64Array(P * P);
  private readonly damped = new Float64Array(P * P);
  private readonly pull = new Float64Array(P);
  private readonly step = new Float64Array(P);
  private readonly trialCurve = new Float64Array(P);
  private readonly trialErrors: Float64Array;

  constructor(rows: FitRows) {
    this.rows = rows;
    this.n = rows.rowCount;
    this.k = rows.errorCount;
    this.mean = new Float64Array(this.n);
    this.variance = new Float64Array(this.n);
    this.slopeSd = new Float64Array(this.n);
    this.lagL = new Float64Array(this.n);
    this.target = new Float64Array(this.n);
    this.rowVariance = new Float64Array(this.n);
    this.design = new Float64Array(this.n * P);
    this.covariance = new Float64Array(this.n * this.n);
    this.residual = new Float64Array(this.n);
    this.trialErrors = new Float64Array(this.k + 1);
    this.trialMean = new Float64Array(this.n);
  }

  /** Standard deviation of each row's reading in litres, and litres for one sd of the lag, at the last step's curve. */
  rowErrors(): { sdL: Float64Array; lagL: Float64Array } {
    return { sdL: this.variance.map((variance) => Math.sqrt(variance)), lagL: this.lagL.slice() };
  }

  /**
   * Newton steps from `state`, which is changed, until they no longer matter.
   * @param nominalL the rows' volumes: the data's, or redrawn ones
   * @param setting  smoothness and sticking, fixed for this fit
   * @returns the objective (minus the log posterior but for constants) at the end
   */
  run(state: FitState, nominalL: Float64Array, setting: Setting, centre: Centre, mostSteps: number): number {
    let damping = 1e-6;
    let objective = Infinity;
    for (let count = 0; count < mostSteps; count++) {
      this.linearise(state, nominalL, setting.stickingSdRatio);
      const before = this.objective(state, nominalL, setting, centre);
      this.normalEquations(state, setting, centre);
      let after = before;
      let moved = 0;
      for (let attempt = 0; attempt < 8; attempt++) {
        moved = this.tryStep(state, damping);
        after = this.trialObjective(nominalL, setting, centre);
        if (after <= before + 1e-9 * Math.abs(before)) break;
        damping = Math.max(1e-3, damping * 10);
        moved = 0;
      }
      if (moved === 0) {
        objective = before;
        break;
      }
      state.curve.set(this.trialCurve);
      state.errors.set(this.trialErrors);
      damping = Math.max(1e-9, damping / 10);
      objective = after;
      if (moved < 1e-4) break;
    }
    return objective;
  }

  /**
   * Logarithm of the determinant of the whole Hessian at `state`: the curve's with the errors eliminated, and the
   * errors' own. For the Laplace approximation of how well a smoothness is supported.
   */
  logDeterminant(state: FitState, nominalL: Float64Array, setting: Setting, centre: Centre): number {
    this.linearise(state, nominalL, setting.stickingSdRatio);
    this.normalEquations(state, setting, centre);
    let sum = 0;
    for (let i = 0; i < this.n; i++)
      sum +=
        2 * Math.log(this.covariance[i * this.n + i] as number) - Math.log(this.rowVariance[i] as number);
    this.damped.set(this.information);
    cholesky(this.damped, P);
    for (let i = 0; i < P; i++) sum += 2 * Math.log(this.damped[i * P + i] as number);
    return sum;
  }

  /** Means, variances, gradients and lag of every row at a curve. */
  private linearise(state: FitState, nominalL: Float64Array, stickingSdRatio: number): void {
    const { rows, n } = this;
    fillGrid(state.curve, this.volumes, this.slopes);
    fillGradientGrid(this.slopes, this.gradient);
    this.design.fill(0);
    const reading = Math.sqrt(rows.gauge.resolutionRatio ** 2 / 12 + stickingSdRatio ** 2);
    const least = LEAST_SLOPE_RATIO * rows.capacityL;
    const half = rows.gauge.resolutionRatio / 2;
    for (let i = 0; i < n; i++) {
      const low = rows.cellLow[i] as number;
      const high = rows.cellHigh[i] as number;
      const kind = rows.kinds[i];
      if (kind === 'scale') {
        const lowL = volumeOnGridL(this.volumes, low);
        const highL = volumeOnGridL(this.volumes, high);
        const slope = Math.max(least, (highL - lowL) / (high - low));
        this.mean[i] = (lowL + highL) / 2;
        this.variance[i] = (slope * reading) ** 2;
        this.slopeSd[i] = slope;
        addGradient(this.gradient, low, 0.5, this.design, i * P);
        addGradient(this.gradient, high, 0.5, this.design, i * P);
      } else {
        const edgeL = volumeOnGridL(this.volumes, low);
        // The slope beside the stop, over the cell that cannot be told from it; the lag moves the edge, not this cell.
        const spanL =
          kind === 'emptyStop'
            ? volumeOnGridL(this.volumes, half) - (this.volumes[0] as number)
            : (this.volumes[GRID_CELLS] as number) - volumeOnGridL(this.volumes, 1 - half);
        const slope = Math.max(least, spanL / half);
        this.mean[i] = edgeL;
        this.variance[i] = (slope * stickingSdRatio) ** 2;
        this.slopeSd[i] = slope;
        addGradient(this.gradient, low, 1, this.design, i * P);
      }
      this.lagL[i] = -(rows.lagSigns[i] as number) * (this.slopeSd[i] as number) * rows.gauge.lagSdRatio;
    }
    this.targets(state, nominalL);
  }

  /** Volume of row i with its errors: nominal, plus what start, containers and pours add, plus the lag. */
  private volumeWithErrors(i: number, errors: Float64Array, nominalL: Float64Array): number {
    const { k } = this;
    let sum = (nominalL[i] as number) + (this.lagL[i] as number) * (errors[k] as number);
    const at = i * k;
    for (let e = 0; e < k; e++) sum += (this.rows.loadingsL[at + e] as number) * (errors[e] as number);
    return sum;
  }

  /** Rows at a stop enter a step as a measurement with the curvature and the pull that they have just now. */
  private targets(state: FitState, nominalL: Float64Array): void {
    for (let i = 0; i < this.n; i++) {
      const kind = this.rows.kinds[i];
      if (kind === 'scale') {
        this.target[i] = nominalL[i] as number;
        this.rowVariance[i] = this.variance[i] as number;
        continue;
      }
      const sd = Math.sqrt(this.variance[i] as number);
      const sign = kind === 'emptyStop' ? 1 : -1;
      const gap = (this.mean[i] as number) - this.volumeWithErrors(i, state.errors, nominalL);
      const z = (sign * gap) / sd;
      const { slope } = logNormalTail(z);
      // Where the side is certain the row says nothing; an enormous variance leaves it out of the sums.
      const curvature = Math.max(1e-12, slope * (z + slope));
      const variance = (sd * sd) / curvature;
      this.rowVariance[i] = variance;
      this.target[i] = (nominalL[i] as number) + gap + (sign * variance * slope) / sd;
    }
  }

  /** Information matrix and pull of the step, with the errors of the data eliminated. */
  private normalEquations(state: FitState, setting: Setting, centre: Centre): void {
    const { n, rows } = this;
    const { covariance, design, residual } = this;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j <= i; j++)
        covariance[i * n + j] =
          (rows.sharedCovarianceL2[i * n + j] as number) +
          (this.lagL[i] as number) * (this.lagL[j] as number);
      covariance[i * n + i] = (covariance[i * n + i] as number) + (this.rowVariance[i] as number);
      residual[i] = (this.target[i] as number) - (this.mean[i] as number);
    }
    cholesky(covariance, n);
    // Whiten residual and design in place: forward substitution by the factor.
    for (let i = 0; i < n; i++) {
      const pivot = covariance[i * n + i] as number;
      for (let j = 0; j < i; j++) {
        const factor = covariance[i * n + j] as number;
        residual[i] = (residual[i] as number) - factor * (residual[j] as number);
        const from = j * P;
        const to = i * P;
        for (let c = 0; c < P; c++)
          design[to + c] = (design[to + c] as number) - factor * (design[from + c] as number);
      }
      residual[i] = (residual[i] as number) / pivot;
      for (let c = 0; c < P; c++) design[i * P + c] = (design[i * P + c] as number) / pivot;
    }
    const { information, pull } = this;
    information.fill(0);
    pull.fill(0);
    for (let i = 0; i < n; i++) {
      const at = i * P;
      const r = residual[i] as number;
      for (let c = 0; c < P; c++) {
        const d = design[at + c] as number;
        pull[c] = (pull[c] as number) + d * r;
        for (let e = 0; e <= c; e++)
          information[c * P + e] = (information[c * P + e] as number) + d * (design[at + e] as number);
      }
    }
    this.addPenalty(state, setting, centre);
    for (let c = 0; c < P; c++)
      for (let e = 0; e < c; e++) information[e * P + c] = information[c * P + e] as number;
  }

  /** The prior's part of the information (lower half) and of the pull. */
  private addPenalty(state: FitState, setting: Setting, centre: Centre): void {
    const { information, pull, rows } = this;
    const { curve } = state;
    const add = (row: number, column: number, value: number) => {
      information[row * P + column] = (information[row * P + column] as number) + value;
    };
    const startWeight = 1 / (START_SD_RATIO * rows.capacityL) ** 2;
    add(0, 0, startWeight);
    pull[0] = (pull[0] as number) + startWeight * (centre.startL - (curve[0] as number));

    const levelWeight = 1 / LEVEL_SD ** 2;
    const short = centre.level - meanSlope(curve);
    for (let c = 1; c < P; c++) {
      pull[c] = (pull[c] as number) + (levelWeight * short) / W;
      for (let e = 1; e <= c; e++) add(c, e, levelWeight / (W * W));
    }

    const roughness = KNOT_INTERVALS / setting.sigma ** 2;
    for (let knot = 0; knot < KNOT_INTERVALS; knot++) {
      const left = knot + 1;
      const right = knot + 2;
      const off = (centre.increments[knot] as number) - ((curve[right] as number) - (curve[left] as number));
      add(left, left, roughness);
      add(right, right, roughness);
      add(right, left, -roughness);
      pull[left] = (pull[left] as number) - roughness * off;
      pull[right] = (pull[right] as number) + roughness * off;
    }

    // The soft bounds: one-sided rows of their own, without errors of the data. First f(0) at least 0.
    const sd = BOUND_SD_RATIO * rows.capacityL;
    const bottom = logNormalTail((curve[0] as number) / sd);
    const bottomZ = (curve[0] as number) / sd;
    add(0, 0, (bottom.slope * (bottomZ + bottom.slope)) / (sd * sd));
    pull[0] = (pull[0] as number) + bottom.slope / sd;
    // Then f(1) at most the capacity.
    const topZ = (rows.capacityL - (this.volumes[GRID_CELLS] as number)) / sd;
    const top = logNormalTail(topZ);
    const weight = (top.slope * (topZ + top.slope)) / (sd * sd);
    const end = GRID_CELLS * W;
    const slopeAt = (c: number) => (c === 0 ? 1 : (this.gradient[end + c - 1] as number));
    for (let c = 0; c < P; c++) {
      pull[c] = (pull[c] as number) - (top.slope / sd) * slopeAt(c);
      for (let e = 0; e <= c; e++) add(c, e, weight * slopeAt(c) * slopeAt(e));
    }
  }

  /** Solve for a step, cap it, and lay the trial beside the state. Gives the largest change of w. */
  private tryStep(state: FitState, damping: number): number {
    const { damped, information, step, pull, trialCurve } = this;
    damped.set(information);
    for (let c = 0; c < P; c++) damped[c * P + c] = (damped[c * P + c] as number) * (1 + damping);
    cholesky(damped, P);
    solveCholesky(damped, P, pull, step);
    let largest = 0;
    for (let c = 1; c < P; c++) largest = Math.max(largest, Math.abs(step[c] as number));
    const scale = largest > LARGEST_STEP ? LARGEST_STEP / largest : 1;
    for (let c = 0; c < P; c++) trialCurve[c] = (state.curve[c] as number) + scale * (step[c] as number);
    this.conditionalErrors(scale);
    return Math.max(largest * scale, Math.abs((step[0] as number) * scale) / this.rows.capacityL);
  }

  /** Conditional mean of the data's errors for the trial curve: loadings transposed, times the whitened misfit. */
  private conditionalErrors(scale: number): void {
    const { n, k, covariance, design, residual, step, trialErrors } = this;
    // Whitened misfit of the trial: L^-1 (target - mean - J step); then L^-T of it.
    const misfit = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let sum = residual[i] as number;
      for (let c = 0; c < P; c++) sum -= scale * (design[i * P + c] as number) * (step[c] as number);
      misfit[i] = sum;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = misfit[i] as number;
      for (let j = i + 1; j < n; j++) sum -= (covariance[j * n + i] as number) * (misfit[j] as number);
      misfit[i] = sum / (covariance[i * n + i] as number);
    }
    trialErrors.fill(0);
    for (let i = 0; i < n; i++) {
      const m = misfit[i] as number;
      for (let e = 0; e < k; e++)
        trialErrors[e] = (trialErrors[e] as number) - (this.rows.loadingsL[i * k + e] as number) * m;
      trialErrors[k] = (trialErrors[k] as number) - (this.lagL[i] as number) * m;
    }
  }

  private objective(state: FitState, nominalL: Float64Array, setting: Setting, centre: Centre): number {
    return (
      this.misfitTerm(state.errors, nominalL, this.mean) +
      this.priorTerm(state.curve, this.volumes[GRID_CELLS] as number, setting, centre)
    );
  }

  /** The objective of the trial, with rows' variances and lag held at those of the step. */
  private trialObjective(nominalL: Float64Array, setting: Setting, centre: Centre): number {
    const volumes = this.trialVolumes;
    fillGrid(this.trialCurve, volumes, this.trialSlopes);
    for (let i = 0; i < this.n; i++)
      this.trialMean[i] =
        (volumeOnGridL(volumes, this.rows.cellLow[i] as number) +
          volumeOnGridL(volumes, this.rows.cellHigh[i] as number)) /
        2;
    return (
      this.misfitTerm(this.trialErrors, nominalL, this.trialMean) +
      this.priorTerm(this.trialCurve, volumes[GRID_CELLS] as number, setting, centre)
    );
  }
  private readonly trialVolumes = new Float64Array(GRID_CELLS + 1);
  private readonly trialSlopes = new Float64Array(GRID_CELLS);
  private readonly trialMean: Float64Array;

  private misfitTerm(errors: Float64Array, nominalL: Float64Array, mean: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < this.n; i++) {
      const gap = (mean[i] as number) - this.volumeWithErrors(i, errors, nominalL);
      const variance = this.variance[i] as number;
      const kind = this.rows.kinds[i];
      if (kind === 'scale') sum += (gap * gap) / (2 * variance);
      else sum -= logNormalTail(((kind === 'emptyStop' ? 1 : -1) * gap) / Math.sqrt(variance)).logProb;
    }
    for (const error of errors) sum += (error * error) / 2;
    return sum;
  }

  private priorTerm(curve: Float64Array, fullL: number, setting: Setting, centre: Centre): number {
    const { capacityL } = this.rows;
    const sd = BOUND_SD_RATIO * capacityL;
    let sum = 0.5 * (((curve[0] as number) - centre.startL) / (START_SD_RATIO * capacityL)) ** 2;
    sum += 0.5 * ((meanSlope(curve) - centre.level) / LEVEL_SD) ** 2;
    for (let knot = 0; knot < KNOT_INTERVALS; knot++) {
      const change =
        (curve[knot + 2] as number) - (curve[knot + 1] as number) - (centre.increments[knot] as number);
      sum += (change * change * KNOT_INTERVALS) / (2 * setting.sigma ** 2);
    }
    sum -= logNormalTail((curve[0] as number) / sd).logProb;
    sum -= logNormalTail((capacityL - fullL) / sd).logProb;
    return sum;
  }
}

/** Mean of w over the knots. */
function meanSlope(curve: Float64Array): number {
  let sum = 0;
  for (let c = 1; c < P; c++) sum += curve[c] as number;
  return sum / W;
}

/** In place, lower half; the matrices here are sums of squares and never singular. */
function cholesky(matrix: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    const row = i * size;
    for (let j = 0; j <= i; j++) {
      const other = j * size;
      let sum = matrix[row + j] as number;
      for (let k = 0; k < j; k++) sum -= (matrix[row + k] as number) * (matrix[other + k] as number);
      matrix[row + j] = i === j ? Math.sqrt(sum) : sum / (matrix[other + j] as number);
    }
  }
}

function solveCholesky(factor: Float64Array, size: number, right: Float64Array, out: Float64Array): void {
  for (let i = 0; i < size; i++) {
    let sum = right[i] as number;
    for (let j = 0; j < i; j++) sum -= (factor[i * size + j] as number) * (out[j] as number);
    out[i] = sum / (factor[i * size + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = out[i] as number;
    for (let j = i + 1; j < size; j++) sum -= (factor[j * size + i] as number) * (out[j] as number);
    out[i] = sum / (factor[i * size + i] as number);
  }
}
