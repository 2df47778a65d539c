import { rectangularSd, triangularSd } from '../../shared-calc/numeric/bounded-sd.ts';
import { isotonicMeans } from '../../shared-calc/numeric/isotonic-means.ts';
import { leastSquares } from '../../shared-calc/numeric/least-squares.ts';
import { monotoneCubic } from '../../shared-calc/numeric/monotone-cubic.ts';
import { studentQuantile } from '../../shared-calc/numeric/student.ts';
import { printedVolumeFactor } from './printed-volume-factor.ts';
import { alike, inputOf, numbered, publishedChecks, type PublishedCase } from './cases.ts';

/** A list that the case prints bare or with a unit. */
function listOf(published: PublishedCase, name: string): number[] {
  const input = published.inputs[name];
  const list = Array.isArray(input) ? input : (input as { value?: unknown } | undefined)?.value;
  if (!Array.isArray(list)) throw new Error(`${published.id} has no list called ${name}`);
  return list as number[];
}

function polynomialFit(published: PublishedCase, degree: number) {
  const design = listOf(published, 'x').map((x) => Array.from({ length: degree + 1 }, (_, k) => x ** k));
  return leastSquares(design, listOf(published, 'y'));
}

function isotonic(published: PublishedCase) {
  const y = listOf(published, 'y');
  return {
    fit: isotonicMeans(
      y,
      y.map(() => 1),
    ),
  };
}

publishedChecks('calibration', {
  'CAL-001': (c) => {
    const fit = polynomialFit(c, 1);
    const [B0 = NaN, B1 = NaN] = fit.coefficients;
    const y = listOf(c, 'y');
    const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
    const totalSs = y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return {
      B0,
      B1,
      sd_B0: Math.sqrt(fit.covariance?.[0]?.[0] ?? NaN),
      sd_B1: Math.sqrt(fit.covariance?.[1]?.[1] ?? NaN),
      residual_sd: fit.residualSd,
      r_squared: 1 - fit.residualSs / totalSs,
      residual_ss: fit.residualSs,
    };
  },
  'CAL-002': (c) => {
    const fit = polynomialFit(c, 5);
    return { B: fit.coefficients, residual_sd: fit.residualSd };
  },
  'CAL-003': (c) => {
    const fit = polynomialFit(c, 2);
    const [B0 = NaN, B1 = NaN, B2 = NaN] = fit.coefficients;
    return { B0, B1, B2, residual_sd: fit.residualSd, residual_ss: fit.residualSs };
  },
  'CAL-004': (c) => {
    const fit = leastSquares(
      listOf(c, 'x').map((x) => [x]),
      listOf(c, 'y'),
    );
    return {
      B1: fit.coefficients[0] ?? NaN,
      sd_B1: Math.sqrt(fit.covariance?.[0]?.[0] ?? NaN),
      residual_sd: fit.residualSd,
    };
  },
  'CAL-005': (c) => {
    const t0 = inputOf(c, 't0', 'degC');
    const fit = leastSquares(
      listOf(c, 't').map((t) => [1, t - t0]),
      listOf(c, 'b'),
    );
    const [y1 = NaN, y2 = NaN] = fit.coefficients;
    const u1 = Math.sqrt(fit.covariance?.[0]?.[0] ?? NaN);
    const u2 = Math.sqrt(fit.covariance?.[1]?.[1] ?? NaN);
    return {
      y1,
      y2,
      u_y1: u1,
      u_y2: u2,
      r_y1_y2: (fit.covariance?.[0]?.[1] ?? NaN) / (u1 * u2),
      residual_s: fit.residualSd,
      degrees_of_freedom: fit.degreesOfFreedom,
    };
  },
  'CAL-006': (c) => ({ u: rectangularSd(inputOf(c, 'lower'), inputOf(c, 'upper')) }),
  'CAL-007': (c) => ({ u: triangularSd(inputOf(c, 'lower'), inputOf(c, 'upper')) }),
  ...alike(numbered('CAL', 8, 11), (c) => ({
    t: studentQuantile((1 + inputOf(c, 'coverage')) / 2, inputOf(c, 'degrees_of_freedom')),
  })),
  'CAL-012': (c) => ({
    values: listOf(c, 'evaluate_at').map(monotoneCubic(listOf(c, 'x'), listOf(c, 'y'))),
  }),
  ...alike(numbered('CAL', 13, 14), isotonic),
  'CAL-015': (c) => {
    const factor = printedVolumeFactor(
      { at: 64, factor: inputOf(c, 'factor_at_64_API') },
      { at: 65, factor: inputOf(c, 'factor_at_65_API') },
      inputOf(c, 'api_gravity'),
    );
    return { factor, volume_at_60F: factor * inputOf(c, 'measured_volume') };
  },
});
