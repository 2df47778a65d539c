import { bracketedRoot } from '../../../shared-calc/numeric/bracketed-root.ts';
import { isotonicMeans } from '../../../shared-calc/numeric/isotonic-means.ts';
import { monotoneCubic } from '../../../shared-calc/numeric/monotone-cubic.ts';
import { rangesNotNegative } from '../../../shared-calc/numeric/ranges-not-negative.ts';
import type { RoomRefusals } from './table.ts';

const line = (x: number) => x;

export const refusals: RoomRefusals = {
  functions: [
    {
      of: bracketedRoot,
      ranges: [
        {
          field: 'from',
          min: -1e300,
          max: 1e300,
          call: (v) => bracketedRoot(v > 0 ? (x) => x - 1 : line, v, 1),
        },
        {
          field: 'to',
          min: -1e300,
          max: 1e300,
          call: (v) => bracketedRoot(v < 0 ? line : (x) => x + 1, v < 0 ? 1 : -1, v),
        },
        { field: 'tolerance', min: 0, max: 1e300, call: (v) => bracketedRoot(line, -1, 2, v) },
      ],
      refused: [
        {
          when: 'the same sign at both ends',
          call: () => bracketedRoot(line, 1, 2),
          sentence: /no change of sign between 1 and 2/,
        },
        {
          when: 'a function that is no number',
          call: () => bracketedRoot(Math.log, -1, 3),
          sentence: /is no number at -1/,
        },
      ],
    },
    {
      of: rangesNotNegative,
      ranges: [
        { field: 'from', min: -1e300, max: 1e300, call: (v) => rangesNotNegative(() => 1, v, 1e300, 0) },
        { field: 'to', min: 1, max: 1e300, call: (v) => rangesNotNegative(() => 1, 1, v, 0) },
        { field: 'steepest', min: 0, max: 1e300, call: (v) => rangesNotNegative(() => 1, 1, 1, v) },
      ],
    },
    {
      of: isotonicMeans,
      ranges: [
        { field: 'values[1]', min: -1e300, max: 1e300, call: (v) => isotonicMeans([0, v], [1, 1]) },
        { field: 'weights[0]', min: 1e-300, max: 1e300, call: (v) => isotonicMeans([0, 1], [v, 1]) },
      ],
      refused: [
        {
          when: 'a weight missing',
          call: () => isotonicMeans([1, 2], [1]),
          sentence: /weights: 1 for 2 values/,
        },
      ],
    },
    {
      of: monotoneCubic,
      ranges: [
        { field: 'x', min: 0, max: 2, call: (v) => monotoneCubic([0, 1, 2], [0, 1, 4])(v) },
        { field: 'ys[1]', min: -1e300, max: 1e300, call: (v) => monotoneCubic([0, 1], [0, v]) },
      ],
      refused: [
        { when: 'one point', call: () => monotoneCubic([0], [0]), sentence: /xs: has 1 points; at least 2/ },
        { when: 'a y missing', call: () => monotoneCubic([0, 1], [0]), sentence: /ys: 1 for 2 xs/ },
        {
          when: 'two points at one x',
          call: () => monotoneCubic([0, 0], [0, 1]),
          sentence: /xs\[1\]: is 0, not above/,
        },
      ],
    },
  ],
  takeNoNumber: [],
};
