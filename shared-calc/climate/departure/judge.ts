import { InputProblem } from '../../problem.ts';

/** What can be asked of a departure or a landing, in the order in which an answer leads. */
export const LIMIT_NAMES = [
  'takeOff',
  'landing',
  'climbRate',
  'climbGradient',
  'densityAltitude',
  'crosswind',
  'tailwind',
  'gust',
] as const;
export type LimitName = (typeof LIMIT_NAMES)[number];

/** One limit with the figure of each row that is held against it. */
export interface LimitRows {
  readonly name: LimitName;
  /** NaN: no observation. Infinity (or minus infinity where `side` is 'least'): the manual answers nothing, not met. */
  readonly value: Float64Array;
  readonly limit: number;
  readonly side: 'most' | 'least';
}

/** What became of each row, all limits together. */
export interface Judged {
  /** 1 where every limit has its figure. */
  readonly observed: Uint8Array;
  /** A bit for each limit that is not met, in the order given; 0 where all are. Only of observed rows. */
  readonly failed: Uint8Array;
}

/** A limit met exactly is met: a billionth of it (at least of one) is rounding. */
const TOLERANCE = 1e-9;

/**
 * Hold every row against all limits at once. A row without the figure of any one limit is no observation; a row for
 * which the manual answers nothing (hotter, higher, heavier than its table) is an observation that fails.
 * @param limits at most 8, their columns alike in length
 * @throws InputProblem for no limit, too many, or columns of different lengths
 */
export function judge(limits: readonly LimitRows[]): Judged {
  const count = limits[0]?.value.length;
  if (count === undefined || limits.length > 8)
    throw new InputProblem('limits', `${String(limits.length)} were given; 1 to 8 can be judged`);
  const observed = new Uint8Array(count).fill(1);
  const failed = new Uint8Array(count);
  limits.forEach(({ name, value, limit, side }, index) => {
    if (value.length !== count)
      throw new InputProblem(name, `has ${String(value.length)} rows; ${String(count)} were expected`);
    const slack = TOLERANCE * Math.max(1, Math.abs(limit));
    const bit = 1 << index;
    for (let row = 0; row < count; row++) {
      const figure = value[row] ?? NaN;
      if (Number.isNaN(figure)) observed[row] = 0;
      else if (side === 'most' ? figure > limit + slack : figure < limit - slack)
        failed[row] = (failed[row] ?? 0) | bit;
    }
  });
  for (let row = 0; row < count; row++) if (observed[row] === 0) failed[row] = 0;
  return { observed, failed };
}
