import { requireRange } from '../problem.ts';

/**
 * What a shown figure answers. It decides the side to which the figure is rounded, here and nowhere else:
 * no screen, sheet or script chooses digits or a direction.
 *
 * Down: margin (how far inside a limit), allowance (what may be loaded), plan (fuel or endurance to plan on),
 * duration left (until a limit is met), available (runway, climb rate, gradient, odds of being inside).
 * Up: excess (by how much outside), needed (distances, the lowest height that reaches, fuel that a flight takes),
 * load (what counts against a limit: a mass with its maximum, a density altitude), until inside (time until a limit
 * is no longer exceeded), doubt (the half-width of an uncertainty).
 * Nearest: plain (readings, what was typed, positions), change (the same, always with its sign).
 */
export type Question =
  | 'margin'
  | 'allowance'
  | 'plan'
  | 'duration left'
  | 'available'
  | 'excess'
  | 'needed'
  | 'load'
  | 'until inside'
  | 'doubt'
  | 'plain'
  | 'change';

type Direction = 'down' | 'up' | 'nearest';

export const DIRECTION: Readonly<Record<Question, Direction>> = {
  margin: 'down',
  allowance: 'down',
  plan: 'down',
  'duration left': 'down',
  available: 'down',
  excess: 'up',
  needed: 'up',
  load: 'up',
  'until inside': 'up',
  doubt: 'up',
  plain: 'nearest',
  change: 'nearest',
};

/**
 * How much of a value (at least of one step) counts as noise of conversion: 36 mm kept as 0.036 m and read back as
 * 35.99999999999999 is 36, not 35. The same billionth by which a limit met exactly is met.
 */
export const NOISE = 1e-9;

/**
 * Round to a multiple of a step, to the side that is safe for the question. Down and up are towards minus and plus
 * infinity, so a margin of -3.6 mm becomes -4: further outside.
 * @param value      in the unit that is shown; magnitude to 1e15
 * @param resolution the step, 1e-9 to 1e9
 * @throws RangeProblem naming value or resolution
 * @example roundSafely(36.97, 1, 'margin') is 36; roundSafely(36.02, 1, 'excess') is 37
 */
export function roundSafely(value: number, resolution: number, question: Question): number {
  requireRange('value', value, -1e15, 1e15, '');
  requireRange('resolution', resolution, 1e-9, 1e9, '');
  const steps = value / resolution;
  const noise = NOISE * Math.max(1, Math.abs(steps));
  const direction = DIRECTION[question];
  let whole: number;
  if (direction === 'down') whole = Math.floor(steps + noise);
  else if (direction === 'up') whole = Math.ceil(steps - noise);
  // Halves away from zero, and what noise has put just below a half too.
  else whole = Math.sign(steps) * Math.floor(Math.abs(steps) + 0.5 + noise);
  // Dividing by a whole number of steps per unit gives the decimal nearest (369 / 10), multiplying by 0.1 need not.
  const perUnit = Math.round(1 / resolution);
  const rounded =
    resolution < 1 && Math.abs(perUnit * resolution - 1) < 1e-12 ? whole / perUnit : whole * resolution;
  return rounded === 0 ? 0 : rounded;
}
