import { normalCdf } from '../../../../shared-calc/numeric/normal.ts';
import { seededNormals, type NormalDraws } from '../../../../shared-calc/numeric/seeded-normals.ts';
import type { FillData } from '../../../../shared-calc/fuel/fit/fill-data.ts';

// The band once more, by a sampler on the exact likelihood, written apart from the product's fit: it shares only the
// input's type and the normal distribution. A reading says that the needle was in its cell (a rectangle with sticking's
// soft edges); nothing is linearised, nothing is eliminated, no mode is looked for.
// Sources: R. Nishihara, I. Murray, R. P. Adams, Parallel MCMC with generalized elliptical slice sampling, 2014;
// I. Murray, R. P. Adams, D. J. C. MacKay, Elliptical slice sampling, 2010.

const KNOTS = 16;
const CELLS = 128;
const SIGMAS = [0.05, 0.15, 0.35, 0.7, 1.3, 2.3, 4, 7];

interface Row {
  kind: 'scale' | 'emptyStop' | 'fullStop';
  nominalL: number;
  /** Litres for one standard deviation of each error. */
  loadings: Float64Array;
  positionRatio: number;
  sign: number;
}

/** Places in the vector of unknowns: a / C, level, increments, errors, lag, ln t. */
interface Model {
  data: FillData;
  rows: Row[];
  errorCount: number;
  dimension: number;
}

function modelOf(data: FillData): Model {
  const pourCount = data.runs.flatMap(({ rows }) => rows).filter(({ volumeL }) => volumeL > 0).length;
  const errorCount = data.runs.length + data.containers.length + pourCount;
  const rows: Row[] = [];
  let pour = data.runs.length + data.containers.length;
  data.runs.forEach((run, runIndex) => {
    const sign = run.direction === 'filling' ? 1 : -1;
    const loadings = new Float64Array(errorCount);
    loadings[runIndex] = run.startSdL;
    let nominalL = run.startUsableL;
    const ofRun: Row[] = [];
    for (const row of run.rows) {
      if (row.volumeL > 0) {
        const container = data.containers[row.container ?? 0];
        if (container === undefined) throw new Error('a pour has a container');
        const scale = data.runs.length + (row.container ?? 0);
        nominalL += sign * row.volumeL;
        loadings[scale] = (loadings[scale] ?? 0) + sign * row.volumeL * container.scaleSdRatio;
        loadings[pour++] = sign * (row.pourSdL ?? row.volumeL * container.pourSdRatio);
      }
      if (row.setAside) continue;
      ofRun.push({
        kind: row.reading.at,
        nominalL,
        loadings: loadings.slice(),
        positionRatio: row.reading.at === 'scale' ? row.reading.positionRatio : 0,
        sign,
      });
    }
    // All rows at a stop could stand; the tightest says all that they say together, but for the pours between them.
    const empties = ofRun.filter(({ kind }) => kind === 'emptyStop').sort((a, b) => b.nominalL - a.nominalL);
    const fulls = ofRun.filter(({ kind }) => kind === 'fullStop').sort((a, b) => a.nominalL - b.nominalL);
    rows.push(...ofRun.filter(({ kind }) => kind === 'scale'), ...empties.slice(0, 1), ...fulls.slice(0, 1));
  });
  return { data, rows, errorCount, dimension: 2 + KNOTS + errorCount + 2 };
}

/** f on the grid: a, then the integral of exp(w) with w linear between its knots. */
function volumes(x: Float64Array, capacityL: number, out: Float64Array): void {
  const w = new Float64Array(KNOTS + 1);
  let mean = 0;
  for (let k = 1; k <= KNOTS; k++) {
    w[k] = (w[k - 1] ?? 0) + (x[1 + k] ?? 0);
    mean += (w[k] ?? 0) / (KNOTS + 1);
  }
  const level = Math.log(capacityL) + (x[1] ?? 0) - mean;
  out[0] = capacityL * (x[0] ?? 0);
  const perKnot = CELLS / KNOTS;
  for (let cell = 0; cell < CELLS; cell++) {
    const k = Math.floor(cell / perKnot);
    const share = (cell - k * perKnot + 0.5) / perKnot;
    const slope = Math.exp(level + (1 - share) * (w[k] ?? 0) + share * (w[k + 1] ?? 0));
    out[cell + 1] = (out[cell] ?? 0) + slope / CELLS;
  }
}

function at(f: Float64Array, position: number): number {
  const scaled = Math.min(1, Math.max(0, position)) * CELLS;
  const cell = Math.min(CELLS - 1, Math.floor(scaled));
  return (f[cell] ?? 0) + (scaled - cell) * ((f[cell + 1] ?? 0) - (f[cell] ?? 0));
}

/** ln(Phi(high) - Phi(low)), where both are far on one side too. */
function logBetween(low: number, high: number): number {
  if (low > 0) return logBetween(-high, -low);
  const prob = normalCdf(high) - normalCdf(low);
  return prob > 1e-250 ? Math.log(prob) : -0.5 * high * high - Math.log(1 + Math.abs(high)) - 0.92;
}

function logBelow(z: number): number {
  return logBetween(-1e6, z);
}

/** Logarithm of prior times likelihood, but for constants, at one smoothness. */
function logDensity(
  { data, rows, errorCount }: Model,
  x: Float64Array,
  sigma: number,
  f: Float64Array,
): number {
  const c = data.capacityL;
  volumes(x, c, f);
  const lag = x[2 + KNOTS + errorCount] ?? 0;
  const t = Math.exp(x[3 + KNOTS + errorCount] ?? 0);
  let sum = -0.5 * (((x[0] ?? 0) - 0.05) / 0.25) ** 2 - 0.5 * ((x[1] ?? 0) / 0.7) ** 2;
  for (let k = 0; k < KNOTS; k++) sum -= (0.5 * KNOTS * (x[2 + k] ?? 0) ** 2) / sigma ** 2;
  for (let e = 0; e < errorCount; e++) sum -= 0.5 * (x[2 + KNOTS + e] ?? 0) ** 2;
  sum -= 0.5 * ((lag - data.gauge.lagRatio) / data.gauge.lagSdRatio) ** 2;
  sum -= 0.5 * ((Math.log(t) - Math.log(data.gauge.stickingSdRatio)) / 0.5) ** 2;
  sum += logBelow((f[0] ?? 0) / (0.01 * c)) + logBelow((c - (f[CELLS] ?? 0)) / (0.01 * c));
  const half = data.gauge.resolutionRatio / 2;
  for (const { kind, nominalL, loadings, positionRatio, sign } of rows) {
    let volumeL = nominalL;
    for (let e = 0; e < errorCount; e++) volumeL += (loadings[e] ?? 0) * (x[2 + KNOTS + e] ?? 0);
    if (kind === 'scale') {
      const low = Math.max(0, positionRatio - half + sign * lag);
      const high = Math.min(1, positionRatio + half + sign * lag);
      const lowL = at(f, low);
      const highL = at(f, high);
      const sd = Math.max(0.02 * c, (highL - lowL) / (high - low)) * t;
      sum += logBetween((lowL - volumeL) / sd, (highL - volumeL) / sd);
    } else {
      const edge = kind === 'emptyStop' ? half + sign * lag : 1 - half + sign * lag;
      const spanL = kind === 'emptyStop' ? at(f, half) - (f[0] ?? 0) : (f[CELLS] ?? 0) - at(f, 1 - half);
      const sd = Math.max(0.02 * c, spanL / half) * t;
      sum += logBelow(((kind === 'emptyStop' ? 1 : -1) * (at(f, edge) - volumeL)) / sd);
    }
  }
  return sum;
}

/** Which smoothness, given the increments, exactly: flat in sigma itself. */
function drawSigma(x: Float64Array, draws: NormalDraws): number {
  let squares = 0;
  for (let k = 0; k < KNOTS; k++) squares += (x[2 + k] ?? 0) ** 2;
  const logs = SIGMAS.map((s) => Math.log(s) - KNOTS * Math.log(s) - (KNOTS * squares) / (2 * s * s));
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  let left = draws.uniform() * weights.reduce((sum, weight) => sum + weight, 0);
  for (const [index, weight] of weights.entries()) {
    left -= weight;
    if (left <= 0) return index;
  }
  return SIGMAS.length - 1;
}

/** A normal distribution that stands in for the posterior: any will do, a close one mixes fast. */
interface StandIn {
  mean: Float64Array;
  /** Lower triangle R by rows, of the precision R R'. */
  root: Float64Array;
}

/** Wider than the curvature says: a stand-in that is too narrow keeps the chain from the tails. */
const INFLATION = 1.4;

/**
 * The misfits whose sum of squares is about minus twice the log density: readings as normal ones in the middle of their
 * cells, stops as hinges, the prior as it is.
 */
function misfits(
  { data, rows, errorCount }: Model,
  x: Float64Array,
  sigma: number,
  f: Float64Array,
): Float64Array {
  const c = data.capacityL;
  volumes(x, c, f);
  const lag = x[2 + KNOTS + errorCount] ?? 0;
  const logT = x[3 + KNOTS + errorCount] ?? 0;
  const half = data.gauge.resolutionRatio / 2;
  const out = [((x[0] ?? 0) - 0.05) / 0.25, (x[1] ?? 0) / 0.7];
  for (let k = 0; k < KNOTS; k++) out.push(((x[2 + k] ?? 0) * Math.sqrt(KNOTS)) / sigma);
  for (let e = 0; e < errorCount; e++) out.push(x[2 + KNOTS + e] ?? 0);
  out.push((lag - data.gauge.lagRatio) / data.gauge.lagSdRatio);
  out.push((logT - Math.log(data.gauge.stickingSdRatio)) / 0.5);
  out.push(Math.min(0, (f[0] ?? 0) / (0.01 * c)), Math.min(0, (c - (f[CELLS] ?? 0)) / (0.01 * c)));
  const readSd = Math.hypot((2 * half) / Math.sqrt(12), data.gauge.stickingSdRatio);
  for (const { kind, nominalL, loadings, positionRatio, sign } of rows) {
    let volumeL = nominalL;
    for (let e = 0; e < errorCount; e++) volumeL += (loadings[e] ?? 0) * (x[2 + KNOTS + e] ?? 0);
    if (kind === 'scale') {
      const low = Math.max(0, positionRatio - half + sign * lag);
      const high = Math.min(1, positionRatio + half + sign * lag);
      const slope = Math.max(0.02 * c, (at(f, high) - at(f, low)) / (high - low));
      out.push(((at(f, low) + at(f, high)) / 2 - volumeL) / (slope * readSd));
    } else {
      const edge = kind === 'emptyStop' ? half + sign * lag : 1 - half + sign * lag;
      const gap = (kind === 'emptyStop' ? 1 : -1) * (at(f, edge) - volumeL);
      out.push(Math.min(0, gap / (c * readSd)));
    }
  }
  return Float64Array.from(out);
}

/** Least squares by damped Gauss-Newton steps with differences for derivatives; its curvature is the precision. */
function standInAt(model: Model, sigma: number): StandIn {
  const { data, errorCount, dimension: n } = model;
  const f = new Float64Array(CELLS + 1);
  let x = new Float64Array(n);
  x[0] = 0.05;
  x[2 + KNOTS + errorCount] = data.gauge.lagRatio;
  x[3 + KNOTS + errorCount] = Math.log(data.gauge.stickingSdRatio);
  let damping = 1e-3;
  let now = misfits(model, x, sigma, f);
  const square = (r: Float64Array) => r.reduce((sum, value) => sum + value * value, 0);
  let precision = new Float64Array(n * n);
  for (let count = 0; count < 40; count++) {
    precision = new Float64Array(n * n);
    const pull = new Float64Array(n);
    const columns = Array.from({ length: n }, (_, i) => {
      const moved = x.slice();
      moved[i] = (moved[i] ?? 0) + 1e-5;
      return misfits(model, moved, sigma, f).map((value, row) => (value - (now[row] ?? 0)) / 1e-5);
    });
    for (let i = 0; i < n; i++) {
      for (let r = 0; r < now.length; r++) pull[i] = (pull[i] ?? 0) - (columns[i]?.[r] ?? 0) * (now[r] ?? 0);
      for (let j = 0; j <= i; j++) {
        let sum = 0;
        for (let r = 0; r < now.length; r++) sum += (columns[i]?.[r] ?? 0) * (columns[j]?.[r] ?? 0);
        precision[i * n + j] = sum;
      }
    }
    const before = square(now);
    for (let attempt = 0; attempt < 10; attempt++) {
      const damped = precision.slice();
      for (let i = 0; i < n; i++) damped[i * n + i] = (damped[i * n + i] ?? 0) * (1 + damping);
      const step = solve(rootOf(damped, n), pull);
      const trial = x.map((value, i) => value + (step[i] ?? 0));
      const after = misfits(model, trial, sigma, f);
      if (square(after) < before) {
        x = trial;
        now = after;
        damping = Math.max(1e-8, damping / 5);
        break;
      }
      damping *= 10;
    }
    if (before - square(now) < 1e-9) break;
  }
  for (let i = 0; i < precision.length; i++) precision[i] = (precision[i] ?? 0) / INFLATION;
  return { mean: x, root: rootOf(precision, n) };
}

function rootOf(matrix: Float64Array, n: number): Float64Array {
  const root = matrix.slice();
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = root[i * n + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (root[i * n + k] ?? 0) * (root[j * n + k] ?? 0);
      root[i * n + j] = i === j ? Math.sqrt(sum) : sum / (root[j * n + j] ?? 1);
    }
  return root;
}

/** (R R')^-1 b. */
function solve(root: Float64Array, b: Float64Array): Float64Array {
  const n = b.length;
  const y = b.slice();
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) y[i] = (y[i] ?? 0) - (root[i * n + j] ?? 0) * (y[j] ?? 0);
    y[i] = (y[i] ?? 0) / (root[i * n + i] ?? 1);
  }
  return backwards(root, y);
}

/** R'^-1 y: a draw of the stand-in about its mean, where y is a draw of standard normals. */
function backwards(root: Float64Array, y: Float64Array): Float64Array {
  const n = y.length;
  const x = y.slice();
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) x[i] = (x[i] ?? 0) - (root[j * n + i] ?? 0) * (x[j] ?? 0);
    x[i] = (x[i] ?? 0) / (root[i * n + i] ?? 1);
  }
  return x;
}

function logStandIn({ mean, root }: StandIn, x: Float64Array): number {
  const n = mean.length;
  let sum = 0;
  for (let j = 0; j < n; j++) {
    let z = 0;
    for (let i = j; i < n; i++) z += (root[i * n + j] ?? 0) * ((x[i] ?? 0) - (mean[i] ?? 0));
    sum -= 0.5 * z * z;
  }
  return sum;
}

export interface SampledBand {
  lowL: number[];
  bestL: number[];
  highL: number[];
}

const BURN_STEPS = 30;

/**
 * 5, 50 and 95 % of the volume at positions, over draws from the exact posterior.
 * @param chainCount chains, each begun by itself at a draw of the stand-in of a smoothness by turns
 * @param stepCount  draws kept of each, after the first thirty
 */
export function sampleBand(
  data: FillData,
  positions: readonly number[],
  chainCount: number,
  stepCount: number,
  seed: number,
): SampledBand {
  const model = modelOf(data);
  const draws = seededNormals(seed);
  const f = new Float64Array(CELLS + 1);
  const standIns = SIGMAS.map((sigma) => standInAt(model, sigma));
  const values = positions.map(() => new Float64Array(chainCount * stepCount));
  for (let chain = 0; chain < chainCount; chain++) {
    let sigmaIndex = chain % SIGMAS.length;
    const first = standIns[sigmaIndex];
    if (first === undefined) throw new Error('a stand-in for each smoothness');
    const around = backwards(
      first.root,
      Float64Array.from({ length: model.dimension }, () => 0.5 * draws.normal()),
    );
    const x = first.mean.map((value, i) => value + (around[i] ?? 0));
    for (let step = -BURN_STEPS; step < stepCount; step++) {
      const standIn = standIns[sigmaIndex];
      if (standIn === undefined) throw new Error('a stand-in for each smoothness');
      ellipticalStep(model, x, SIGMAS[sigmaIndex] ?? 1, standIn, draws, f);
      sigmaIndex = drawSigma(x, draws);
      if (step < 0) continue;
      volumes(x, data.capacityL, f);
      positions.forEach((position, index) => {
        const column = values[index];
        if (column !== undefined) column[chain * stepCount + step] = at(f, position);
      });
    }
  }
  const sorted = values.map((column) => column.sort());
  const quantile = (prob: number) =>
    sorted.map((column) => column[Math.round((column.length - 1) * prob)] ?? NaN);
  return { lowL: quantile(0.05), bestL: quantile(0.5), highL: quantile(0.95) };
}

/** One step that leaves the posterior as it is: a point on the ellipse through x and a draw of the stand-in. */
function ellipticalStep(
  model: Model,
  x: Float64Array,
  sigma: number,
  standIn: StandIn,
  draws: NormalDraws,
  f: Float64Array,
): void {
  const n = x.length;
  const { mean, root } = standIn;
  const other = backwards(
    root,
    Float64Array.from({ length: n }, () => draws.normal()),
  );
  const weightOf = (point: Float64Array) => logDensity(model, point, sigma, f) - logStandIn(standIn, point);
  const threshold = weightOf(x) + Math.log(1 - draws.uniform());
  let angle = 2 * Math.PI * draws.uniform();
  let low = angle - 2 * Math.PI;
  let high = angle;
  const trial = new Float64Array(n);
  for (;;) {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    for (let i = 0; i < n; i++)
      trial[i] = (mean[i] ?? 0) + ((x[i] ?? 0) - (mean[i] ?? 0)) * cos + (other[i] ?? 0) * sin;
    if (weightOf(trial) > threshold) break;
    if (angle < 0) low = angle;
    else high = angle;
    angle = low + (high - low) * draws.uniform();
  }
  x.set(trial);
}
