import { theilSen } from '../../../shared-calc/numeric/theil-sen.ts';
import { firstAtLeast } from '../../../shared-calc/numeric/first-at-least.ts';
import { rectangularSd, triangularSd } from '../../../shared-calc/numeric/bounded-sd.ts';
import { cholesky, solveLower, solveLowerTransposed } from '../../../shared-calc/numeric/cholesky.ts';
import { generalisedLeastSquares, leastSquares } from '../../../shared-calc/numeric/least-squares.ts';
import {
  normalCdf,
  normalDensity,
  normalQuantile,
  normalQuantileWithin,
} from '../../../shared-calc/numeric/normal.ts';
import { quadraticRootsBetween } from '../../../shared-calc/numeric/quadratic.ts';
import { sobolPoints } from '../../../shared-calc/numeric/sobol.ts';
import { studentCdf, studentQuantile } from '../../../shared-calc/numeric/student.ts';
import { weightedQuantile } from '../../../shared-calc/numeric/weighted-quantile.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const z = { field: 'z', min: -1e150, max: 1e150, good: 0 };
const freedom = { field: 'degreesOfFreedom', min: 0.5, max: 1e6, good: 5 };
const bounds = [
  { field: 'lower', min: -1e300, max: 1e300, good: 1e300 },
  { field: 'upper', min: 1e300, max: 1e300, good: 1e300 },
];
const line = [
  [1, 0],
  [1, 1],
  [1, 2],
];

export const refusals: RoomRefusals = {
  functions: [
    byPosition(normalDensity, [z]),
    byPosition(normalCdf, [z]),
    byPosition(normalQuantile, [{ field: 'p', min: 1e-300, max: 1 - 1e-16, good: 0.5 }]),
    byPosition(studentCdf, [{ ...z, field: 't' }, freedom]),
    byPosition(studentQuantile, [{ field: 'p', min: 1e-6, max: 1 - 1e-6, good: 0.9 }, freedom]),
    byPosition(rectangularSd, bounds),
    byPosition(triangularSd, bounds),
    {
      of: cholesky,
      refused: [
        {
          when: 'an element that is none',
          call: () => cholesky([[NaN]]),
          sentence: /matrix\[0\]\[0\] is NaN/,
        },
        { when: 'a matrix that is not square', call: () => cholesky([[1, 2]]), sentence: /row 0 has 2 of 1/ },
        { when: 'one that is not positive definite', call: () => cholesky([[1, 2], [2, 1]]), sentence: /pivot 1 is -3/ }, // prettier-ignore
      ],
    },
    {
      of: solveLower,
      refused: [{ when: 'another length', call: () => solveLower([[1]], [1, 2]), sentence: /2 elements/ }],
    },
    {
      of: solveLowerTransposed,
      refused: [
        { when: 'another length', call: () => solveLowerTransposed([[1]], []), sentence: /0 elements/ },
      ],
    },
    {
      of: leastSquares,
      ranges: [
        { field: 'y[0]', min: -1e150, max: 1e150, call: (v) => leastSquares(line, [v, 0, 0]) },
        { field: 'design[0][1]', min: -1e150, max: 1e150, call: (v) => leastSquares([[1, v], [1, 0], [1, 1]], [1, 2, 3]) }, // prettier-ignore
        {
          field: 'weights[0]',
          min: 1e-150,
          max: 1e150,
          call: (v) => leastSquares(line, [1, 2, 3], [v, 1, 1]),
        },
      ],
      refused: [
        {
          when: 'fewer rows than unknowns',
          call: () => leastSquares([[1, 2]], [1]),
          sentence: /1 rows cannot give 2/,
        },
        { when: 'columns that depend on each other', call: () => leastSquares([[1, 2], [2, 4], [3, 6]], [1, 2, 3]), sentence: /column 1 follows/ }, // prettier-ignore
        {
          when: 'a column of zeros',
          call: () => leastSquares([[0], [0]], [1, 2]),
          sentence: /column 0 is zero/,
        },
        {
          when: 'another count of values',
          call: () => leastSquares(line, [1]),
          sentence: /1 values for 3 rows/,
        },
        {
          when: 'another count of weights',
          call: () => leastSquares(line, [1, 2, 3], [1]),
          sentence: /1 for 3/,
        },
      ],
    },
    {
      of: generalisedLeastSquares,
      refused: [
        {
          when: 'a covariance that is none',
          call: () => generalisedLeastSquares([[1], [1]], [1, 2], [[1, 2], [2, 1]]), // prettier-ignore
          sentence: /not positive definite/,
        },
      ],
    },
    {
      of: weightedQuantile,
      ranges: [
        { field: 'p', min: 0, max: 1, call: (p) => weightedQuantile([1, 2], [1, 1], p) },
        { field: 'weights[0]', min: 0, max: 1e300, call: (w) => weightedQuantile([1, 2], [w, 1], 0.5) },
        { field: 'values[0]', min: -1e300, max: 1e300, call: (v) => weightedQuantile([v, 2], [1, 1], 0.5) },
      ],
      refused: [
        { when: 'no value', call: () => weightedQuantile([], [], 0.5), sentence: /at least one value/ },
        { when: 'another count of weights', call: () => weightedQuantile([1], [], 0.5), sentence: /0 for 1/ },
      ],
    },
    byPosition(sobolPoints, [
      { field: 'dimensions', min: 1, max: 16, good: 2 },
      { field: 'count', min: 1, max: 2 ** 20, good: 4 },
      { field: 'seed', min: 0, max: 2 ** 32 - 1, good: 1 },
    ]),
    {
      of: theilSen,
      ranges: [
        { field: 'confidence', min: 0.5, max: 0.999, call: (v) => theilSen([1, 2, 3], [1, 2, 3], v) },
        { field: 'x[0]', min: -1e12, max: 1e12, call: (v) => theilSen([v, 2, 3], [1, 2, 3]) },
        { field: 'y[2]', min: -1e12, max: 1e12, call: (v) => theilSen([1, 2, 3], [1, 2, v]) },
      ],
      refused: [
        {
          when: 'two places only',
          call: () => theilSen([1, 2, 2], [1, 2, 3]),
          sentence: /three different values/,
        },
        {
          when: 'columns of unequal length',
          call: () => theilSen([1, 2, 3], [1, 2]),
          sentence: /2 values for 3/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [firstAtLeast, 'looks for any number in a rising column'],
    [quadraticRootsBetween, 'coefficients of any size are good; without a real root it gives none'],
    [normalQuantileWithin, 'promised a probability between 0 and 1, for millions of draws'],
  ],
};
